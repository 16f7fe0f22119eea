import { heldBy } from '../../record/ancestry.ts';
import type { Document } from '../../record/document.ts';
import { outsideChanges } from '../../record/outside.ts';
import { settledAway } from '../../record/written.ts';
import type { LoggingSchema } from '../../schema/logging-schema.ts';
import { schemaChangesOf } from '../../standing/hole-schema.ts';
import { type OpenQuestion, questionWords } from '../../standing/questions.ts';
import {
  changeWords,
  dangersTaken,
  type TableChange,
  tableChanges,
  takesMuchAway,
  whoTookOut,
} from '../../standing/what-a-copy-did.ts';
import type { Desk } from '../contract.ts';
import { type Outcome, takeIn } from '../take-in.ts';
import { untilSaved } from '../until-saved.ts';
import type { ArrivedDocument } from './arrival.ts';

/** What came of one document that arrived. */
export type TakenArrival = { readonly name: string; readonly from: string } & (
  | {
      readonly ok: true;
      readonly outcome: Outcome;
      /** Things that were edited in it by another program than ours. */
      readonly edited: number;
      /** Cells that both copies changed: ours is kept. */
      readonly asked: readonly OpenQuestion[];
      /** What it did to ours, in words; empty where it changed nothing or was not here. */
      readonly did: string;
      /** What rows of it mean otherwise by our schema than they were logged with, where ours did not say so before. */
      readonly drift: readonly string[];
    }
  | { readonly ok: false; readonly problem: string }
  /** Not taken in: it takes much away, and no one said that it may. */
  | { readonly ok: 'ask'; readonly does: string; readonly who: string }
);

/**
 * Takes one document in and waits until it is on the medium. One that takes much away of ours, or a danger out of its log, is not taken unless `mayClear` says so: what it
 * would do is said instead.
 */
export async function takeArrival(
  desk: Desk,
  schema: LoggingSchema,
  { from, document }: ArrivedDocument,
  mayClear = false,
): Promise<TakenArrival> {
  const about = { name: `${document.kind} ${document.id}`, from };
  const before = desk.get(document);
  const asked = new Set(questionWords(schema, before ?? document).map(({ id }) => id));
  const would = before === undefined || mayClear ? undefined : changesOf(desk, before, document);
  if (before !== undefined && would !== undefined) {
    const dangers = dangersTaken(schema, before, would.after);
    if (takesMuchAway(would.unsettled) || dangers.asks)
      return {
        ...about,
        ok: 'ask',
        does: doesWords(would.all, dangers.rows),
        who: whoTookOut(before, document),
      };
  }
  const received = desk.receive(document);
  if (!received.ok) return { ...about, ok: false, problem: received.problem };
  const saved = await untilSaved(desk, received);
  if (!saved.ok) return { ...about, ok: false, problem: `it is not saved: ${saved.problem}` };
  const { outcome } = received;
  const taken = outcome !== 'same' && outcome !== 'older';
  return {
    ...about,
    ok: true,
    outcome,
    edited: taken ? outsideChanges(document).length : 0,
    asked: questionWords(schema, received.document).filter(({ id }) => !asked.has(id)),
    drift: driftOf(schema, before, received.document),
    did:
      before === undefined
        ? ''
        : doesWords(
            tableChanges(before.tables, received.document.tables),
            dangersTaken(schema, before, received.document).rows,
          ),
  };
}

/** What our schema changes for the rows of a hole that came, in words: its legend says what they were logged with. */
function driftOf(schema: LoggingSchema, before: Document | undefined, after: Document): readonly string[] {
  if (after.kind !== 'hole') return [];
  const words = (hole: Document) => schemaChangesOf(schema, hole).map(({ problem }) => problem);
  const known = new Set(before === undefined ? [] : words(before));
  return words(after).filter((each) => !known.has(each));
}

/** What a copy does, the dangers that its rows would no longer say first. */
function doesWords(changes: readonly TableChange[], dangers: readonly string[]): string {
  const lost = dangers.length === 0 ? '' : `takes a danger out of the log: ${dangers.join('; ')}. It `;
  return `${lost}${changeWords(changes)}`;
}

/**
 * What taking a copy in would do to ours, and of that what no settlement of two rows or two records of a rod did: the half that was
 * not kept was looked at beside the other one. Undefined where the copy would be refused.
 */
function changesOf(desk: Desk, ours: Document, copy: Document) {
  const deed = (what: string) => ({ edit: 'preview', at: desk.now(), by: desk.person, what });
  const taken = takeIn(ours, copy, deed);
  if (!taken.ok) return undefined;
  const bySettling = settledAway(copy, heldBy(ours.history));
  return {
    after: taken.document,
    all: tableChanges(ours.tables, taken.document.tables),
    unsettled: tableChanges(ours.tables, taken.document.tables, bySettling),
  };
}
