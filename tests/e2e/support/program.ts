import { existsSync, mkdirSync, renameSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { inject } from 'vitest';
import { bundle } from '../../../.ci/bundle-options.mjs';
import { compiledCode } from '../../../.ci/compiled-code.mjs';

const ROOT = join(import.meta.dirname, '../../..');

/**
 * The program as `npm run build` makes it, with its compiled code and the sample projects beside it, outside of this folder: the path of
 * offsider.js, for node. Made once a run, by the first test file that asks; the others wait for it. Nothing may be written there.
 */
export async function offsiderBundle(): Promise<string> {
  const folder = inject('bundleFolder');
  const dist = join(folder, 'dist');
  if (begins(folder)) {
    const building = join(folder, 'building');
    await bundle(building, ROOT);
    if (!(await compiledCode(building))) throw new Error('the bundle made no compiled code');
    symlinkSync(join(ROOT, 'sample-projects'), join(folder, 'sample-projects'));
    renameSync(building, dist);
  }
  // A build that failed is the failure of the file that made it; this one then ends at the time limit of its hook.
  while (!existsSync(dist)) await pause(50);
  return join(dist, 'offsider.js');
}

/** True for one caller of a run: whoever makes this folder bundles. */
function begins(folder: string): boolean {
  try {
    mkdirSync(join(folder, 'begun'));
    return true;
  } catch {
    return false;
  }
}
