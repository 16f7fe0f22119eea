import { dirname, join } from 'node:path';
import { bytesIfThere, whyRefused } from '../files/disk.ts';
import { editedOutside, unreadableFile } from '../files/findings.ts';
import { sameBytes } from '../files/journal.ts';
import { keepCopy } from '../files/keep-copy.ts';
import { HAND_WRITTEN } from '../files/project-folder.ts';
import { type JsonText, OTHER_LIMITS, readJsonText } from '../files/read-json.ts';
import { ensureFolder, writeDurably } from '../files/write-durably.ts';
import { type Result, refused } from '../finding/finding.ts';
import type { Done } from './contract.ts';
import { newToken } from './opening.ts';
import { type State, tell } from './state.ts';

const utf8 = new TextEncoder();

/** Replaces a file written by hand, the former text kept. Refused where it is no longer what was read, or is not JSON. */
export async function writeByHand(
  state: State,
  which: 'project' | 'logging',
  text: string,
): Promise<Result<JsonText>> {
  const { disk, random } = state.needs;
  const { folder } = state.base;
  const file = HAND_WRITTEN[which];
  const json = readJsonText(utf8.encode(text), file, OTHER_LIMITS);
  if (!json.ok) return json;
  try {
    const found = await bytesIfThere(disk, join(folder, file));
    const read = state.byHand[which];
    if (found !== undefined && (read === undefined || !sameText(found, read.text)))
      return refused(changed(file));
    if (found !== undefined) await keepCopy(disk, folder, { file, bytes: found, because: 'before' });
    await writeDurably(disk, join(folder, file), utf8.encode(text), newToken(random));
  } catch (error) {
    return refused(
      unreadableFile.at(
        { file },
        {
          problem: `it cannot be written: ${whyRefused(error)}`,
          remedy: 'Free space and try again. Nothing was changed.',
        },
      ),
    );
  }
  state.byHand[which] = json.value;
  tell(state);
  return json;
}

function sameText(bytes: Uint8Array, text: string): boolean {
  const plain = utf8.encode(text);
  return sameBytes(bytes, plain) || sameBytes(bytes, utf8.encode(`\uFEFF${text}`));
}

function changed(file: string): ReturnType<typeof editedOutside.at> {
  return editedOutside.at(
    { file },
    {
      problem: 'it was edited since it was read',
      remedy: 'Close and open the project again, then repeat the change. Nothing was changed.',
    },
  );
}

/** Writes a file for others (a report, a pack) below the project's folder, durably. Another file under that name is kept as it was. */
export async function writeOut(state: State, file: string, bytes: Uint8Array): Promise<Done> {
  const { disk, random } = state.needs;
  const path = join(state.base.folder, file);
  try {
    if (dirname(file) !== '.') await ensureFolder(disk, dirname(path));
    const found = await bytesIfThere(disk, path);
    if (found !== undefined && sameBytes(found, bytes)) return { ok: true };
    if (found !== undefined)
      await keepCopy(disk, state.base.folder, { file, bytes: found, because: 'before' });
    await writeDurably(disk, path, bytes, newToken(random));
    return { ok: true };
  } catch (error) {
    return { ok: false, problem: `${file} cannot be written: ${whyRefused(error)}` };
  }
}
