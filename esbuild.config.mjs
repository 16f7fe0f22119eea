// Builds the bundles: offsider.js and, beside it, what it loads when called for, the licences of what is in them and the bill of materials.
import { chmodSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { bundleOptions } from './.ci/bundle-options.mjs';
import { BILL, billOfMaterials, LICENCES, licencesText, packagesIn } from './.ci/shipped.mjs';

rmSync('dist', { recursive: true, force: true });
const { metafile } = await build({ ...bundleOptions('dist'), metafile: true });
const places = packagesIn(metafile);
writeFileSync(join('dist', LICENCES), licencesText('.', places));
writeFileSync(join('dist', BILL), billOfMaterials('.', places));
// Windows has no such right; the command that npm makes there needs none.
chmodSync('dist/offsider.js', 0o755);
