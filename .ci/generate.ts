// Writes every generated file, or with --check says which of them is not as it would be written and exits 1.
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { generatedFiles } from './generated-files.ts';

const top = resolve(import.meta.dirname, '..');
const check = process.argv.includes('--check');
const files = generatedFiles();
const stale = files.filter(({ path, text }) => {
  const at = join(top, path);
  return !existsSync(at) || readFileSync(at, 'utf8') !== text;
});
if (!check) for (const { path, text } of stale) writeFileSync(join(top, path), text);
for (const { path } of stale)
  console.log(check ? `${path} is not as it is generated: run npm run generate` : `wrote ${path}`);

// The grids come out of a package that isn't installed here, so the table is held to the digest that it was made with.
const EPSG = 'src/survey/norths/epsg-table.ts';
const [head = '', ...rest] = readFileSync(join(top, EPSG), 'utf8').split(/(?<=\*\/\n)/);
const digest = createHash('sha256').update(rest.join('')).digest('hex');
const asMade = head.includes(`SHA-256 of all below this comment: ${digest}\n`);
if (!asMade) console.log(`${EPSG} was changed by hand: make it again, as .ci/epsg-table.mjs says`);

console.log(`generate: ${files.length + 1} files, ${stale.length} ${check ? 'stale' : 'written'}`);
process.exit(!asMade || (check && stale.length > 0) ? 1 : 0);
