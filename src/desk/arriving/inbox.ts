import { join } from 'node:path';
import { type Disk, isMissing } from '../../files/disk.ts';
import type { Result } from '../../finding/finding.ts';
import { joinedParts, type PartHeader, partName } from '../../handover/bundle/parts.ts';
import type { Desk, Done } from '../contract.ts';
import type { ArrivedPart } from './arrival.ts';
import { fromPart } from './from-part.ts';

/** Where parts of bundles wait for the others. */
export const INBOX = 'inbox';

/** Keeps a part until the others are there, durably. */
export function keepPart(desk: Desk, { header, archive }: ArrivedPart): Promise<Done> {
  return desk.writeOut(`${INBOX}/${partName(header)}`, archive);
}

/** A bundle of which parts are there: its bytes once all of them are, else the numbers of those that are missing. */
export type Gathered =
  | { readonly whole: Result<Uint8Array>; readonly files: readonly string[] }
  | { readonly missing: readonly number[] };

/** The parts of a bundle that wait in the inbox, put together where all of them are there. One that is damaged counts as missing. */
export async function gatherParts(disk: Disk, desk: Desk, of: PartHeader): Promise<Gathered> {
  const parts: ArrivedPart[] = [];
  const names = new Set(await namesIn(disk, join(desk.folder(), INBOX)));
  for (let part = 1; part <= of.of; part += 1) {
    const name = partName({ ...of, part });
    if (!names.has(name)) continue;
    const bytes = await disk.readFile(join(desk.folder(), INBOX, name)).catch(() => undefined);
    const read = bytes === undefined ? undefined : fromPart(bytes, name, of);
    const [found] = read?.ok === true ? (read.value.parts ?? []) : [];
    if (found?.header.sha256 === of.sha256 && found.header.part === part) parts.push(found);
  }
  if (parts.length === of.of)
    return {
      whole: joinedParts(parts, `${of.bundle}.zip`),
      files: parts.map(({ header }) => `${INBOX}/${partName(header)}`),
    };
  const here = new Set(parts.map(({ header }) => header.part));
  const all = Array.from({ length: of.of }, (_, index) => index + 1);
  return { missing: all.filter((each) => !here.has(each)) };
}

/** Takes parts away whose bundle was taken in. One that stays does no harm: taken in again, it changes nothing. */
export async function clearParts(disk: Disk, desk: Desk, files: readonly string[]): Promise<void> {
  for (const file of files) await disk.unlink(join(desk.folder(), file)).catch(() => {});
}

async function namesIn(disk: Disk, folder: string): Promise<readonly string[]> {
  try {
    return await disk.list(folder);
  } catch (error) {
    if (isMissing(error)) return [];
    throw error;
  }
}
