import type { Disk } from '../files/disk.ts';
import { realDisk } from '../files/real-disk.ts';
import type { Result } from '../finding/finding.ts';
import { addProvisionalCode } from '../schema/change/add-code.ts';
import { type CodeChange, changeCode } from '../schema/change/edit-code.ts';
import { changeField, type FieldChange } from '../schema/change/edit-field.ts';
import type { CodeEntry } from '../schema/read/file-entries.ts';
import { resolveSchema } from '../schema/read/resolve.ts';
import { changeLogging, type LoggingDesk, type MakeChange } from './change-logging.ts';
import type { LoadedProject } from './load-project.ts';

/**
 * Adds a code met on the rig to a list of logging.json, marked provisional, and gives the project that has it: durable before
 * any row that uses it. Refused, with nothing changed, where the check of the schema finds a new fault in it.
 */
export function addCodeOnRig(
  desk: LoggingDesk,
  list: string,
  entry: CodeEntry,
  disk: Disk = realDisk,
): Promise<Result<LoadedProject>> {
  return changeLogging(desk, (file, parents) => addProvisionalCode(file, list, entry, parents), disk);
}

/**
 * Changes a code of a list in logging.json, and gives the project that has it. Refused, with nothing changed, where the check
 * finds a new fault in it, and where rows of an open hole would come to say something else.
 */
export function changeCodeOnRig(
  desk: LoggingDesk,
  list: string,
  code: string,
  change: CodeChange,
  disk: Disk = realDisk,
): Promise<Result<LoadedProject>> {
  return changeLogging(desk, (file, parents) => changeCode(file, list, code, change, parents), disk);
}

/** Changes a field of the log sheet in logging.json, as a code is changed: nothing where a fault would come of it. */
export function changeFieldOnRig(
  desk: LoggingDesk,
  field: string,
  change: FieldChange,
  disk: Disk = realDisk,
): Promise<Result<LoadedProject>> {
  const make: MakeChange = (file, parents) => {
    const resolved = resolveSchema(file, parents);
    return resolved.ok ? changeField(file, resolved.value.schema, field, change, parents) : resolved;
  };
  return changeLogging(desk, make, disk);
}
