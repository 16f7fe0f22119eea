// Packs the tarball as npm does, unpacks it elsewhere and looks at what whoever installs it gets: the program, which runs there with no
// node_modules; the licences of what is in it; the bill of materials; and nothing that is not meant for them.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { BILL, LICENCES } from './shipped.mjs';

const SHELL = process.platform === 'win32';
const faults = [];
const must = (holds, words) => {
  if (!holds) faults.push(words);
};

const folder = mkdtempSync(join(tmpdir(), 'offsider-tarball-'));
try {
  const packed = execFileSync('npm', ['pack', '--json', '--ignore-scripts', '--pack-destination', folder], {
    encoding: 'utf8',
    shell: SHELL,
  });
  const [{ filename }] = JSON.parse(packed);
  execFileSync('tar', ['-xzf', filename], { cwd: folder });
  const top = join(folder, 'package');
  const text = (...path) => readFileSync(join(top, ...path), 'utf8');
  const files = readdirSync(top, { recursive: true }).filter((file) => statSync(join(top, file)).isFile());

  must(/permission|license/i.test(text('LICENSE')), 'LICENSE is not a licence');
  const bill = JSON.parse(text('dist', BILL));
  must(bill.bomFormat === 'CycloneDX' && bill.specVersion === '1.6', `dist/${BILL} is not a CycloneDX 1.6`);
  const inside = bill.components.filter((each) => each.scope === 'required');
  must(inside.length > 40, `dist/${BILL} names ${inside.length} packages in the program`);
  const licences = text('dist', LICENCES);
  for (const { group, name, version } of inside) {
    const called = group === undefined ? name : `${group}/${name}`;
    must(
      licences.includes(`\n${called} ${version} (`),
      `dist/${LICENCES} has no licence of ${called} ${version}`,
    );
  }
  for (const file of files)
    must(
      /^(?:dist|schemas|sample-projects)[\\/]|^(?:package\.json|README\.md|LICENSE)$/.test(file),
      `${file} is in the tarball`,
    );
  const run = (...argv) =>
    execFileSync(process.execPath, [join(top, 'dist', 'offsider.js'), ...argv], {
      cwd: folder,
      encoding: 'utf8',
    });
  const { version } = JSON.parse(text('package.json'));
  must(run('--version').trim().endsWith(version), 'the program says another version than package.json');
  run('new', 'a-project', '--style', 'orogenic-gold');
  must(
    /No holes|no hole/i.test(run('holes', '--project', 'a-project')),
    'the program lists no holes of a new project',
  );
  console.log(`${files.length} files, ${inside.length} packages in the program, each with its licence`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
for (const fault of faults) console.error(`tarball: ${fault}`);
process.exitCode = faults.length === 0 ? 0 : 1;
