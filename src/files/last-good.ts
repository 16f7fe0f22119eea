import { join } from 'node:path';
import type { Finding } from '../finding/finding.ts';
import { type Disk, isMissing } from './disk.ts';
import { noProject } from './findings.ts';
import { KEPT_FOLDER, keepCopy } from './keep-copy.ts';
import { HAND_WRITTEN } from './project-folder.ts';

const READ = 'read';

/**
 * Keeps a file written by hand as it was read, where these bytes are not kept yet: every version that was ever worked with stays. A
 * disk that does not take it now keeps no one from working: nothing is written over it, and the next opening tries again.
 */
export async function keepAsRead(disk: Disk, folder: string, file: string, bytes: Uint8Array): Promise<void> {
  await keepCopy(disk, folder, { file, bytes, because: READ }).catch(() => {});
}

/** The latest version of a file that could be read, among the kept ones, from the top of the project; undefined where there is none. */
async function lastRead(disk: Disk, folder: string, file: string): Promise<string | undefined> {
  const names = await disk.list(join(folder, KEPT_FOLDER)).catch((error: unknown) => {
    if (isMissing(error)) return [];
    throw error;
  });
  const start = `${file.replaceAll('/', '-')}.${READ}.`;
  const numbers = names
    .filter((name) => name.startsWith(start))
    .map((name) => Number(name.slice(start.length)));
  return numbers.length === 0 ? undefined : `${KEPT_FOLDER}/${start}${Math.max(...numbers)}`;
}

/** Findings about a project's files written by hand, or that it has none, each with the newest version that could be read. */
export async function withLastRead(
  disk: Disk,
  folder: string,
  findings: readonly Finding[],
): Promise<readonly Finding[]> {
  return Promise.all(
    findings.map(async (finding) => {
      const file = fileOf(finding);
      const kept = file === undefined ? undefined : await lastRead(disk, folder, file).catch(() => undefined);
      if (kept === undefined) return finding;
      return {
        ...finding,
        remedy: `${finding.remedy} Versions that could be read are kept, the newest is ${kept}.`,
      };
    }),
  );
}

function fileOf({ code, place }: Finding): string | undefined {
  if (code === noProject.code) return HAND_WRITTEN.project;
  return Object.values(HAND_WRITTEN).find((each) => each === place.file);
}
