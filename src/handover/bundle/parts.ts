import * as z from 'zod';
import { type Finding, ok, type Result, refused } from '../../finding/finding.ts';
import { hashBytes } from '../../record/hash.ts';
import { bundleAltered } from '../findings.ts';
import { dosTimeOf } from '../zip/layout.ts';
import { ZIP_LIMITS } from '../zip/limits.ts';
import { damaged, type Inflate } from '../zip/looked-at.ts';
import { readZip } from '../zip/read-zip.ts';
import { writeZip } from '../zip/write-zip.ts';
import type { Bundle } from './make-bundle.ts';
import { manifestShape } from './manifest.ts';

/** The two files of a part: what it is, and its bytes of the bundle. */
const PART = 'part.json';
const BYTES = 'part.bin';

const MOST_PARTS = 999;

/** part.json of a part: which bundle it is of, and which of its parts. */
export const partShape = z.strictObject({
  format: z.literal(1).describe('Format of this file'),
  kind: z.literal('part'),
  project: manifestShape.shape.project,
  bundle: z
    .string()
    .regex(/^[A-Z0-9][A-Z0-9_-]{0,79}$/)
    .describe('Name of the bundle that it is a part of'),
  at: manifestShape.shape.at,
  sha256: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .describe('SHA-256 of the whole bundle'),
  bytes: z.int().min(1).max(ZIP_LIMITS.archiveBytes).describe('Bytes of the whole bundle'),
  part: z.int().min(1).max(MOST_PARTS).describe('Which part it is, from 1'),
  of: z.int().min(2).max(MOST_PARTS).describe('How many parts there are'),
});
export type PartHeader = Readonly<z.infer<typeof partShape>>;

/** A part of a bundle: what it says of itself, and its bytes of the bundle. */
export interface Part {
  readonly header: PartHeader;
  readonly bytes: Uint8Array;
}

/** The file of a part: `MULGARA-BEND_2026-03-14_0930_0D4CEED3_2OF3.zip`. */
export function partName({ bundle, part, of }: Pick<PartHeader, 'bundle' | 'part' | 'of'>): string {
  return `${bundle}_${part}OF${of}.zip`;
}

/** A bundle cut into files of at most so many bytes of it each, every one an archive by itself: its name and its bytes. */
export function partsOf(
  { name, bytes, sha256, manifest: { project, at } }: Bundle,
  most: number,
): readonly { readonly name: string; readonly bytes: Uint8Array }[] {
  const of = Math.min(MOST_PARTS, Math.ceil(bytes.length / most));
  const size = Math.ceil(bytes.length / of);
  return Array.from({ length: of }, (_, index) => {
    const header: PartHeader = {
      format: 1,
      kind: 'part',
      project,
      bundle: name,
      at,
      sha256,
      bytes: bytes.length,
      part: index + 1,
      of,
    };
    const text = new TextEncoder().encode(`${JSON.stringify(header, null, 2)}\n`);
    const files = [
      { name: PART, bytes: text },
      { name: BYTES, bytes: bytes.subarray(index * size, (index + 1) * size) },
    ];
    return { name: partName(header), bytes: writeZip(files, at) };
  });
}

/** True of an archive whose first file is that of a part. */
export function looksLikePart(bytes: Uint8Array): boolean {
  return PART === String.fromCharCode(...bytes.subarray(30, 30 + PART.length));
}

/** The two files of a part, neither believed yet: part.json is still to be held to its shape. */
export function openPart(
  bytes: Uint8Array,
  file: string,
  inflate: Inflate,
): Result<{ readonly header: Uint8Array; readonly bytes: Uint8Array; readonly dosTime: number }> {
  const nameFault = (name: string) =>
    name === PART || name === BYTES ? undefined : 'no part of a bundle holds such a file';
  const entries = readZip({ bytes, file, limits: ZIP_LIMITS, nameFault, inflate });
  if (!entries.ok) return entries;
  const [header, content, ...more] = entries.value;
  if (header?.name !== PART || content?.name !== BYTES || more.length > 0)
    return refused(damaged(file, 'it does not hold what a part of a bundle does'));
  return ok({ header: header.bytes, bytes: content.bytes, dosTime: header.dosTime });
}

/** What is wrong with a part that says so of itself; none where it can be one. */
export function partFaults({ header, bytes }: Part, dosTime: number, file: string): readonly Finding[] {
  const { at, part, of, bytes: all } = header;
  const size = Math.ceil(all / of);
  const expected = Math.min(size, all - (part - 1) * size);
  if (part <= of && bytes.length === expected && dosTime === dosTimeOf(at)) return [];
  return [
    altered(file, `it says that it is part ${part} of ${of}, and its bytes are not those of such a part`),
  ];
}

/** The bundle of all its parts, in whatever order they came; refused where they do not give the bundle that they say. */
export function joinedParts(parts: readonly Part[], file: string): Result<Uint8Array> {
  const sorted = [...parts].sort((a, b) => a.header.part - b.header.part);
  const [first] = sorted;
  if (first === undefined) throw new Error('a bundle without parts');
  const whole = new Uint8Array(sorted.reduce((sum, { bytes }) => sum + bytes.length, 0));
  let at = 0;
  for (const { bytes } of sorted) {
    whole.set(bytes, at);
    at += bytes.length;
  }
  if (hashBytes(whole) === first.header.sha256) return ok(whole);
  return refused(altered(file, 'put together, its parts do not give it: one of them is not what was packed'));
}

function altered(file: string, problem: string): Finding {
  return bundleAltered.at(
    { file },
    { problem, remedy: 'Have every part of it sent again. Nothing was changed.' },
  );
}
