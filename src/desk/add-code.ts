import type { Disk } from '../files/disk.ts';
import { realDisk } from '../files/real-disk.ts';
import { type Result, refused } from '../finding/finding.ts';
import { addProvisionalCode } from '../schema/add-code.ts';
import type { CodeEntry } from '../schema/file-entries.ts';
import type { Desk } from './contract.ts';
import { type LoadedProject, loadProject, noProjectHere, parentsOf } from './load-project.ts';

/**
 * Adds a code met on the rig to a list of logging.json, marked provisional, and gives the project that has it: durable before
 * any row that uses it. Refused, with nothing changed, where the check of the schema finds a new fault in it, where the
 * file was edited since it was read, and where it can't be written.
 */
export async function addCodeOnRig(
  desk: Pick<Desk, 'folder' | 'project' | 'logging' | 'writeByHand'>,
  list: string,
  entry: CodeEntry,
  disk: Disk = realDisk,
): Promise<Result<LoadedProject>> {
  const logging = desk.logging();
  if (logging === undefined) {
    return refused(
      noProjectHere.at(
        { file: desk.folder() },
        { problem: 'its logging.json cannot be read', remedy: 'Mend it, then open the project again.' },
      ),
    );
  }
  const parents = await parentsOf(disk, desk.folder(), logging);
  const changed = addProvisionalCode({ file: logging.file, text: logging.text }, list, entry, parents);
  if (!changed.ok) return changed;
  const written = await desk.writeByHand('logging', changed.value.text);
  if (!written.ok) return written;
  return loadProject({ folder: desk.folder(), project: desk.project(), logging: written.value }, disk);
}
