// Holds the lines of the house (DEVELOPERS.md): reads every module of src/, and first proves that it can fail, by planting a
// forbidden import in a scratch copy. A checker that reads nothing passes everything, so the module count is required too.
import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';

const top = resolve(import.meta.dirname, '..');
const depcruise = join(top, 'node_modules', 'dependency-cruiser', 'bin', 'dependency-cruise.mjs');

/** Runs the cruiser in a folder: its violations and how many modules of src it read. */
function cruise(folder) {
  const out = execFileSync(
    process.execPath,
    [depcruise, 'src', '--config', '.dependency-cruiser.cjs', '--output-type', 'json', '--no-progress'],
    {
      cwd: folder,
      encoding: 'utf8',
      maxBuffer: 256 * 1024 * 1024,
    },
  );
  const { summary, modules } = JSON.parse(out);
  return {
    violations: summary.violations,
    read: modules.filter((module) => module.source.startsWith('src/')).length,
  };
}

/** How many TypeScript files a folder holds, counted without the cruiser. */
function filesIn(folder) {
  return readdirSync(folder, { recursive: true, withFileTypes: true }).filter(
    (entry) => entry.isFile() && /\.tsx?$/.test(entry.name),
  ).length;
}

const scratch = mkdtempSync(join(top, '.tmp-lines-'));
try {
  for (const name of ['src', 'tsconfig.json', '.dependency-cruiser.cjs', 'package.json'])
    cpSync(join(top, name), join(scratch, name), { recursive: true });
  symlinkSync(join(top, 'node_modules'), join(scratch, 'node_modules'));
  writeFileSync(
    join(scratch, 'src', 'quantity', 'planted.ts'),
    "import type { Document } from '../record/document.ts';\nexport type Planted = Document;\n",
  );
  const planted = cruise(scratch);
  if (!planted.violations.some((violation) => violation.from === 'src/quantity/planted.ts')) {
    console.error(
      `lines: the planted import in src/quantity was not found (${planted.read} modules read): the check itself is broken`,
    );
    process.exit(1);
  }
} finally {
  rmSync(scratch, { recursive: true, force: true });
}

const { violations, read } = cruise(top);
for (const violation of violations)
  console.error(`lines: ${violation.from} → ${violation.to}: ${violation.rule.name}`);
const files = filesIn(join(top, 'src'));
if (read !== files) {
  console.error(`lines: ${read} modules read, but src/ holds ${files} files`);
  process.exit(1);
}
console.log(`lines: ${read} modules read, ${violations.length} forbidden imports; the planted one was found`);
process.exit(violations.length === 0 ? 0 : 1);
