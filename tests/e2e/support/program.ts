import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bundle } from '../../../.ci/bundle-options.mjs';

/** The program as it is shipped, bundled into a folder of its own. */
export interface Program {
  /** Path of the bundle, for node. */
  readonly path: string;
  remove(): void;
}

/** Bundles the program the way `npm run build` does, outside of this folder. */
export async function bundleOffsider(): Promise<Program> {
  const folder = mkdtempSync(join(tmpdir(), 'offsider-program-'));
  const root = join(import.meta.dirname, '../../..');
  await bundle(join(folder, 'dist'), root);
  return {
    path: join(folder, 'dist', 'offsider.js'),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
