import { readNamedFile } from '../files/read-file.ts';
import { OTHER_LIMITS } from '../files/read-json.ts';
import { realDisk } from '../files/real-disk.ts';
import { ok, type Result, refused } from '../finding/finding.ts';
import { wrongUse } from './findings.ts';

/** The text of a CSV that someone names, which has to be UTF-8. */
export async function csvTextOf(file: string): Promise<Result<string>> {
  const bytes = await readNamedFile(realDisk, file, OTHER_LIMITS);
  if (!bytes.ok) return bytes;
  try {
    return ok(new TextDecoder('utf-8', { fatal: true }).decode(bytes.value));
  } catch {
    const problem = 'it is not UTF-8 text';
    return refused(wrongUse.at({ file }, { problem, remedy: 'Give a CSV, saved as "CSV UTF-8".' }));
  }
}
