// Builds into dist: offsider.js and the program that it starts, the program's compiled code, the licences of what is in it and the bill of materials.
import { chmodSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { bundle } from './.ci/bundle-options.mjs';
import { compiledCode } from './.ci/compiled-code.mjs';
import { BILL, billOfMaterials, LICENCES, licencesText, packagesIn } from './.ci/shipped.mjs';

rmSync('dist', { recursive: true, force: true });
const places = packagesIn(await bundle('dist'));
writeFileSync(join('dist', LICENCES), licencesText('.', places));
writeFileSync(join('dist', BILL), billOfMaterials('.', places));
// Windows has no such right; the command that npm makes there needs none.
chmodSync('dist/offsider.js', 0o755);
if (!(await compiledCode('dist'))) console.warn('no compiled code made: the first sitting makes it');
