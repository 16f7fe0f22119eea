import * as z from 'zod';
import { depthMm, id, stamp, words } from './parts.ts';

/** Kinds of a sample, in the trade's words. */
export const BAG_KINDS = ['primary', 'field duplicate', 'standard', 'blank', 'spoiled', 'no sample'] as const;

/** A stretch of numbers labelled for this hole: table `bagRuns`. Numbered is not issued. */
export const bagRun = z.strictObject({
  first: words.describe('First number, with its prefix'),
  last: words.describe('Last number, with its prefix'),
  rig: words,
  at: stamp,
});
export type BagRun = Readonly<z.infer<typeof bagRun>>;

/** A bag that was filled: table `bags`. A fact: no amendment of the log renumbers it. A number is used once, ever. */
export const bag = z.strictObject({
  number: words.describe('Number on the calico, with its prefix'),
  // A spoiled bag was once written "void", a word that is kept for cavities now. History is never rewritten, so files still hold it.
  kind: z.enum([...BAG_KINDS, 'void']).describe('"void" is read as "spoiled": older files have it'),
  fromMm: depthMm
    .optional()
    .describe('Top of what is in it, in whole millimetres; none for a standard or blank'),
  toMm: depthMm.optional(),
  rank: z.enum(['metre', 'composite']).optional(),
  of: words.optional().describe('Number of the primary that a duplicate repeats'),
  method: z.enum(['second chute', 'spear']).optional().describe('How a duplicate was taken'),
  material: words.optional().describe('Lot of the standard, or kind of the blank'),
  rod: id.optional().describe('The rod done event that issued it, or the rod that it is with'),
  byHand: z.literal(true).optional().describe('Placed by hand: it never moves the stream of numbers'),
  filled: z
    .literal(true)
    .optional()
    .describe('Someone said that there is a bag, though its metre gave no return'),
  reason: words.optional().describe('Why it is spoiled, or why it was placed by hand'),
});
export type Bag = Readonly<Omit<z.infer<typeof bag>, 'kind'>> & { readonly kind: (typeof BAG_KINDS)[number] };

/** A bag as a file holds it, in today's words. */
export function bagOf(stored: Readonly<z.infer<typeof bag>>): Bag {
  return { ...stored, kind: stored.kind === 'void' ? 'spoiled' : stored.kind };
}

/** A control put off: table `putOff`. Its number stays reserved for it until it is placed. */
export const putOff = z.strictObject({
  number: words,
  kind: z.enum(BAG_KINDS),
  of: words.optional().describe('Number of the primary that a duplicate is to repeat'),
  reason: words,
  at: stamp,
  placedAt: stamp.optional(),
});
export type PutOff = Readonly<z.infer<typeof putOff>>;

/** A calico ticked off: table `ticks`. Someone held it in hand and its label is right. */
export const tick = z.strictObject({
  number: words.describe('Number on the calico, with its prefix'),
  at: stamp,
  by: words,
});

/** A chip tray as filled: table `trays`. */
export const tray = z.strictObject({
  tray: z.int().min(1),
  fromMm: depthMm,
  toMm: depthMm,
  photo: words.optional().describe('File name of its photograph'),
});
export type Tray = Readonly<z.infer<typeof tray>>;

/** Kinds that a number can be given by choice: a control wanted here, or `primary` where a control was reserved. */
const CHOSEN_KINDS = ['primary', 'field duplicate', 'standard', 'blank'] as const;

/** What someone chose for one number, over what the scheme reserves it for: table `controlChoices`. */
export const controlChoice = z.strictObject({
  number: words.describe('Number on the calico, with its prefix'),
  kind: z.enum(CHOSEN_KINDS),
  reason: words,
  at: stamp,
});
export type ControlChoice = Readonly<z.infer<typeof controlChoice>>;
