import * as z from 'zod';
import type { Document } from '../record/document.ts';
import { hashJson } from '../record/hash.ts';
import { own } from '../record/json.ts';
import { questionsIn } from '../record/questions.ts';
import { stamp, words } from './parts.ts';

const text = z.string().min(1).max(8000);

/** A finding of a document that someone accepted as it is. */
export const accepted = z
  .strictObject({
    code: words.describe('Code of the finding'),
    place: words.describe('Where, in words, as it was listed'),
    problem: text.describe('What it said'),
    facts: z
      .string()
      .length(64)
      .describe('Hash of what it said in full: a finding that says anything else is not accepted'),
    reason: words.describe('Why it is accepted as it is'),
    by: words,
    at: stamp,
  })
  .describe('A finding of check that was accepted, by whom and why');
export type Accepted = Readonly<z.infer<typeof accepted>>;

/** The word of camp on a hole: it is checked and final, or it is opened again. The last one counts. */
export const signOff = z
  .strictObject({
    state: z.enum(['signed off', 'opened again']),
    seal: z
      .string()
      .length(64)
      .optional()
      .describe('Hash of the tables as they were signed off, but for questions, accepted findings and these'),
    accepted: z.int().min(0).optional().describe('How many findings stood accepted'),
    reason: words.optional().describe('Why it is opened again; of a sign-off what was to be said of it'),
    by: words,
    at: stamp,
  })
  .describe('A hole signed off at camp, or opened again with the reason');
export type SignOff = Readonly<z.infer<typeof signOff>>;

/** The tables that a hole signed off still takes: they say something of it and nothing of the ground. */
const BESIDE: ReadonlySet<string> = new Set(['accepted', 'signOffs', 'questions']);

/** The findings accepted in a document of any kind, in the order in which they were. */
export function acceptedIn(document: Document): readonly (readonly [string, Accepted])[] {
  return Object.entries(own(document.tables, 'accepted') ?? {}) as unknown as readonly (readonly [
    string,
    Accepted,
  ])[];
}

/** The sign-off that holds of a hole; undefined for one that was never signed off or was opened again, and while two copies differ in that. */
export function signedOff(hole: Document): SignOff | undefined {
  if (questionsIn(hole.tables).some(([, { table, state }]) => table === 'signOffs' && state === 'open'))
    return undefined;
  const last = Object.values(own(hole.tables, 'signOffs') ?? {}).at(-1) as SignOff | undefined;
  return last?.state === 'signed off' ? last : undefined;
}

/** The hash of what a sign-off seals. */
export function sealOf(hole: Document): string {
  return hashJson(
    Object.fromEntries(
      Object.entries(hole.tables).filter(
        ([table, things]) => !BESIDE.has(table) && Object.keys(things).length > 0,
      ),
    ),
  );
}

/** Why a change of some tables is not taken into a hole that is signed off; undefined where it is. */
export function whySealed(document: Document, tables: readonly string[]): string | undefined {
  const by = document.kind === 'hole' ? signedOff(document) : undefined;
  if (by === undefined || tables.every((table) => BESIDE.has(table))) return undefined;
  return `it was signed off by ${by.by} on ${by.at.slice(0, 10)}. Open it again first, with the reason: ;open-again reason, or offsider check ${document.id} --open-again reason`;
}
