import { z } from 'zod';
import { stamp, words } from '../hole/parts.ts';

const count = z.int().min(0).max(100_000);

/** A sack with the calicos in it, in the order of their numbers. */
const sack = z.strictObject({
  sack: z.int().min(1).describe('Number of the sack, from 1'),
  bags: z.array(words).min(1),
  seal: words.optional().describe('Number of its seal'),
});
export type Sack = Readonly<z.infer<typeof sack>>;

/** Sacks passing from one hand to the next: a link of the chain of custody. */
const transfer = z.strictObject({
  at: stamp,
  from: words.describe('Who gave them'),
  to: words.describe('Who took them'),
  sacks: count.describe('Sacks counted'),
  bags: count.optional().describe('Calicos counted, where the sacks were opened'),
  sealsWhole: z.boolean(),
});
export type Transfer = Readonly<z.infer<typeof transfer>>;

/** A dispatch of samples to the laboratory, with its chain of custody. */
export const dispatch = z.strictObject({
  name: words.describe('Number or name of the dispatch'),
  laboratory: words,
  sacks: z.array(sack).min(1),
  transfers: z.array(transfer),
  receivedAt: stamp.optional(),
  received: z.array(words).optional().describe("Numbers on the laboratory's receipt"),
});
export type Dispatch = Readonly<z.infer<typeof dispatch>>;
