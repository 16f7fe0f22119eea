import { chmodSync, mkdirSync, mkdtempSync, readdirSync, rmSync, statfsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** The folder in which the first test file that needs the program as it is shipped bundles it for all of them. */
    bundleFolder: string;
  }
}

/** A gigabyte: less is no place for the folders of tests. */
const ENOUGH_BYTES = 2 ** 30;

/**
 * Makes one folder for all that a run writes, and takes it away at the end. It is in memory where the system has a place there (Linux), for on a
 * disk each folder is waited for, on a loaded machine for minutes; what a disk does is tried by the long run, on a disk. In watch mode each change
 * asks for a new bundle.
 */
export default function setup(project: TestProject): () => void {
  const isLongRun = project.config.env.OFFSIDER_LONG_RUN === 'yes';
  const all = mkdtempSync(join((isLongRun ? undefined : folderInMemory()) ?? tmpdir(), 'offsider-tests-'));
  // A test that acts as another user has to come to its own folder in it.
  chmodSync(all, 0o711);
  process.env.TMPDIR = all;
  const bundle = join(all, 'bundle');
  mkdirSync(bundle);
  project.onTestsRerun(async () => {
    for (const name of readdirSync(bundle)) rmSync(join(bundle, name), { recursive: true, force: true });
  });
  project.provide('bundleFolder', bundle);
  return () => rmSync(all, { recursive: true, force: true });
}

function folderInMemory(): string | undefined {
  try {
    const { bavail, bsize } = statfsSync('/dev/shm');
    return bavail * bsize > ENOUGH_BYTES ? '/dev/shm' : undefined;
  } catch {
    return undefined;
  }
}
