import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** The folder in which the first test file that needs the program as it is shipped bundles it for all of them. */
    bundleFolder: string;
  }
}

/** Makes the folder for the one bundle of a run and takes it away at the end; in watch mode each change asks for a new bundle. */
export default function setup(project: TestProject): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'offsider-program-'));
  const empty = () => {
    for (const name of readdirSync(folder)) rmSync(join(folder, name), { recursive: true, force: true });
  };
  project.onTestsRerun(async () => empty());
  project.provide('bundleFolder', folder);
  return () => rmSync(folder, { recursive: true, force: true });
}
