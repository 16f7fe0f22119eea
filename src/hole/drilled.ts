import * as z from 'zod';
import { depthMm, id, stamp, words } from './parts.ts';

/** A rod done: table `rods`. The latest one made is the drilled head. */
export const rodDone = z.strictObject({
  at: stamp,
  rod: z.int().min(0).max(2000).describe('Rods in the hole'),
  depthMm: depthMm.describe('Depth drilled, in whole millimetres'),
  lastBag: words.optional().describe('Number on the last calico'),
  bags: z.int().min(0).max(200).optional().describe('Bags counted since the rod before'),
  read: z
    .literal(true)
    .optional()
    .describe('The last calico or the count was read, and agreed or was settled'),
  mismatch: words.optional().describe('Code of the mismatch that the check named'),
  unmended: z
    .literal(true)
    .optional()
    .describe('The mismatch is noted and still open: the bags are recorded as expected'),
});
export type RodDone = Readonly<z.infer<typeof rodDone>>;

/** The moistures of a sample as it comes off the splitter. */
export const MOISTURES = ['dry', 'moist', 'wet'] as const;
/** Recovery by eye, when not every bag is weighed. */
export const RECOVERIES = ['full', 'good', 'fair', 'poor', 'none'] as const;

/** What was seen at the drilled head over some metres: table `stream`. Never part of the entry line. */
export const streamFact = z.strictObject({
  fromMm: depthMm,
  toMm: depthMm,
  moisture: z.enum(MOISTURES).optional(),
  recovery: z.enum(RECOVERIES).optional(),
  water: z.enum(['injected', 'groundwater']).optional(),
  contaminated: z.literal(true).optional(),
  unsampled: words.optional().describe('Why no sample was taken of these metres'),
  bulkG: z.int().min(0).max(500_000).optional().describe('Mass of the bulk bag, in whole grams'),
  splitG: z.int().min(0).max(100_000).optional().describe('Mass of the calico, in whole grams'),
  duplicateG: z.int().min(0).max(100_000).optional().describe('Mass of the second split, in whole grams'),
  waterPermille: z
    .int()
    .min(0)
    .max(500)
    .optional()
    .describe(
      'Water in what was weighed, in thousandths of its mass, where an oven or the laboratory gave it',
    ),
  remark: words.optional(),
});
export type StreamFact = Readonly<z.infer<typeof streamFact>>;

/** What a driller feels at the bit: the rods ran steady, or they dropped into a cavity. */
export const FELT = ['solid', 'cavity'] as const;

/**
 * What the driller felt over some metres, in his word: table `feltByDriller`. It is not a log: no one saw chips of these metres. Of words on one
 * metre the one recorded last counts; but no later word takes back a cavity ({@link wordAt}): the record of it is taken out by hand.
 */
export const feltByDriller = z.strictObject({
  fromMm: depthMm,
  toMm: depthMm,
  felt: z.enum(FELT).describe('solid: nothing dropped, no cavity felt. cavity: the rods dropped'),
  driller: words.optional().describe('Who said it, where a name was given; else the driller at the rig'),
  at: stamp,
  by: words.describe('Who recorded it'),
});
export type FeltByDriller = Readonly<z.infer<typeof feltByDriller>>;

/**
 * What counts of the driller's words, in the order recorded, on metres that no edge of theirs cuts: a cavity, whatever was said after it, else the
 * last one. That none was felt is said of a whole rod by habit.
 */
export function wordAt<Word extends Pick<FeltByDriller, 'fromMm' | 'toMm' | 'felt'>>(
  words: readonly Word[],
  { fromMm, toMm }: Pick<FeltByDriller, 'fromMm' | 'toMm'>,
): Word | undefined {
  const here = words.filter((each) => each.fromMm <= fromMm && each.toMm >= toMm);
  return here.findLast(({ felt }) => felt === 'cavity') ?? here.at(-1);
}

/** The bit measured while the hole deepens: table `bits`. It wears, and a metre holds less rock for it. */
export const bitMeasured = z.strictObject({
  depthMm: depthMm.describe('Depth drilled when it was measured, in whole millimetres'),
  bitMm: z.number().min(50).max(500).describe('Bit diameter as measured, in millimetres'),
  at: stamp,
  by: words,
});

/** Hygiene looked at once a rod: table `hygiene`, by the rod event. */
export const hygiene = z.strictObject({
  rod: id.describe('The rod done event'),
  cycloneClean: z.boolean().optional(),
  splitterClean: z.boolean().optional(),
  splitterLevel: z.boolean().optional(),
  holeBlownClean: z.boolean().optional(),
});
export type Hygiene = Readonly<z.infer<typeof hygiene>>;
