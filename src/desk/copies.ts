import { join } from 'node:path';
import { bytesIfThere, type Disk, whyRefused } from '../files/disk.ts';
import { JOURNAL_FOLDER } from '../files/journal.ts';
import { holdToShape } from '../files/json-shape.ts';
import { type JsonText, OTHER_LIMITS, readJsonText } from '../files/read-json.ts';
import { writeDurably } from '../files/write-durably.ts';
import {
  type KnownCopy,
  knownCopiesShape,
  type WrittenText,
  withCopy,
} from '../handover/bundle/known-copies.ts';
import type { Done } from './contract.ts';
import { readParents } from './load-project.ts';
import { newToken } from './opening.ts';
import type { State } from './state.ts';

const FILE = `${JOURNAL_FOLDER}/copies.json`;

/**
 * What is known of the project's other copies: none where the file is missing or can't be read. Nothing is lost by that: what is
 * packed then is whole.
 */
export async function knownCopies(disk: Disk, folder: string): Promise<readonly KnownCopy[]> {
  const bytes = await bytesIfThere(disk, join(folder, FILE), OTHER_LIMITS.bytes).catch(() => undefined);
  if (bytes === undefined) return [];
  const json = readJsonText(bytes, FILE, OTHER_LIMITS);
  if (!json.ok) return [];
  const held = holdToShape(json.value, knownCopiesShape);
  return held.ok ? held.value.copies : [];
}

/** Keeps what another copy says of itself, durably. */
export async function rememberCopy({ needs, base }: State, heard: KnownCopy): Promise<Done> {
  try {
    const copies = withCopy(await knownCopies(needs.disk, base.folder), heard);
    const text = `${JSON.stringify({ format: 1, copies })}\n`;
    await writeDurably(
      needs.disk,
      join(base.folder, FILE),
      new TextEncoder().encode(text),
      newToken(needs.random),
    );
    return { ok: true };
  } catch (error) {
    return { ok: false, problem: `${FILE} cannot be written: ${whyRefused(error)}` };
  }
}

/** The files of a project that people write: project.json, logging.json and, in order, what that starts from beside it. */
export async function writtenTexts(
  disk: Disk,
  folder: string,
  byHand: { readonly project: JsonText | undefined; readonly logging: JsonText | undefined },
): Promise<readonly WrittenText[]> {
  const { project, logging } = byHand;
  const parents = logging === undefined ? [] : [...(await readParents(disk, folder, logging)).values()];
  return [project, logging, ...parents].flatMap((each) =>
    each === undefined ? [] : [{ path: each.file, text: each.text }],
  );
}
