import * as z from 'zod';
import { HOLE_NOUNS } from '../../hole/hole.ts';
import { stamp, words } from '../../hole/parts.ts';
import type { Document } from '../../record/document.ts';
import { own } from '../../record/json.ts';

const count = z.int().min(0).max(100_000);

/** The dispatch itself: table `dispatch`, one thing `dispatch`. */
const header = z.strictObject({
  laboratory: words.describe('Where the samples go'),
  madeAt: stamp,
  madeBy: words.describe('Who made the sacks up: the first hand of the chain'),
});
type DispatchHeader = Readonly<z.infer<typeof header>>;

/** A sack with the calicos in it, in the order of their numbers: table `sacks`. */
const sack = z.strictObject({
  sack: z.int().min(1).max(100_000).describe('Number of the sack, from 1'),
  bags: z.array(words).min(1),
  seal: words.optional().describe('Number of its seal'),
});
export type Sack = Readonly<z.infer<typeof sack>>;

/** Sacks passing from one hand to the next, a link of the chain of custody: table `transfers`. */
const transfer = z.strictObject({
  at: stamp,
  from: words.describe('Who gave them'),
  to: words.describe('Who took them'),
  sacks: count.describe('Sacks counted'),
  bags: count.optional().describe('Calicos counted, where the sacks were opened'),
  sealsWhole: z.boolean(),
  recordedBy: words,
});
export type Transfer = Readonly<z.infer<typeof transfer>>;

/** A laboratory's receipt as it came: table `receipts`. A later one stands over the earlier, which stays. */
const receipt = z.strictObject({
  at: stamp.describe('When it was taken in: an instant with its offset, ISO 8601 to the second'),
  takenInBy: words,
  file: words.describe('Name of the file it came in'),
  sha256: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .describe('SHA-256 of that file, hex'),
  numbers: z.array(words).describe('Numbers on it, in its order'),
});
export type Receipt = Readonly<z.infer<typeof receipt>>;

/** What is in each table of a dispatch. */
export const DISPATCH_NOUNS = {
  dispatch: header,
  sacks: sack,
  transfers: transfer,
  receipts: receipt,
  questions: HOLE_NOUNS.questions,
  accepted: HOLE_NOUNS.accepted,
} as const;

/** A dispatch of samples to the laboratory as it is read: its sacks in order, its chain of custody, the receipts. */
export interface Dispatch extends DispatchHeader {
  readonly name: string;
  readonly sacks: readonly Sack[];
  readonly transfers: readonly Transfer[];
  readonly receipts: readonly Receipt[];
}

/** The dispatch that a document of that kind holds. Throws where it has no header: reading a file refuses such a one. */
export function dispatchOf(document: Document): Dispatch {
  const found = own(own(document.tables, 'dispatch'), 'dispatch') as DispatchHeader | undefined;
  if (found === undefined) throw new Error(`dispatch ${document.id} has no header`);
  const all = <T>(table: string) =>
    Object.values(own(document.tables, table) ?? {}) as unknown as readonly T[];
  return {
    ...found,
    name: document.id,
    sacks: [...all<Sack>('sacks')].sort((a, b) => a.sack - b.sack),
    transfers: all<Transfer>('transfers'),
    receipts: all<Receipt>('receipts'),
  };
}

/** Every number of a dispatch, sack by sack. */
export function sentNumbers(dispatch: Pick<Dispatch, 'sacks'>): readonly string[] {
  return dispatch.sacks.flatMap((each) => each.bags);
}
