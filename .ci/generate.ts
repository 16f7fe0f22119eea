// Writes every generated file, or with --check says which of them is not as it would be written and exits 1.
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
console.log(`generate: ${files.length} files, ${stale.length} ${check ? 'stale' : 'written'}`);
process.exit(check && stale.length > 0 ? 1 : 0);
