import * as z from 'zod';
import { ok, type Result, refused } from '../finding/finding.ts';
import type { Document } from '../record/document.ts';
import type { Increment } from '../record/increment.ts';
import { documentKind, FORMAT, formatNeeded, formatOf, newer, OLDEST_FORMAT } from './document-file.ts';
import { wrongShape } from './findings.ts';
import { holdToShape } from './json-shape.ts';
import type { JsonText } from './read-json.ts';
import { entryShape, nameShape } from './record-shapes.ts';

const hash = z.string().regex(/^[0-9a-f]{64}$/);

/** What a document holds beyond the last entry that its receiver has, as a bundle carries it. */
const incrementShape = z.strictObject({
  format: z.int().min(OLDEST_FORMAT).max(FORMAT).describe('Format of the document'),
  kind: z.literal('increment'),
  of: nameShape,
  onto: hash.describe('Hash of the entry of its history that it goes on from'),
  entries: z.array(
    z
      .looseObject({ incoming: z.array(z.union([hash, entryShape])).optional() })
      .describe('An entry of its history'),
  ),
});

/** An increment as text, one entry a line. */
export function printIncrement(document: Document, { onto, entries }: Increment): string {
  const { kind, id } = document;
  const head = { format: formatNeeded(document), kind: 'increment', of: { kind, id }, onto };
  return `${JSON.stringify(head).slice(0, -1)},"entries":[\n${entries.map((each) => JSON.stringify(each)).join(',\n')}\n]}\n`;
}

/**
 * Reads an increment. Its entries are held to their shape when the document is made of it, as a file of the project would be; here only what
 * is needed to put them together.
 */
export function readIncrement(json: JsonText): Result<Increment> {
  const format = formatOf(json.value);
  if (typeof format === 'number' && format > FORMAT) return refused(newer(json.file, format));
  const held = holdToShape(json, incrementShape);
  if (!held.ok) return held;
  const { of, onto, entries } = held.value;
  if (documentKind(of.kind) !== undefined)
    return ok({ kind: of.kind, id: of.id, onto, entries: entries as unknown as Increment['entries'] });
  return refused(
    wrongShape.at(
      { file: json.file },
      { problem: `offsider keeps no ${of.kind}`, remedy: 'Have the bundle sent again. Nothing was changed.' },
    ),
  );
}
