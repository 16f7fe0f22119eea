import * as z from 'zod';
import { NORTHS } from '../quantity/azimuth.ts';
import { DEEPEST_M, type Depth } from '../quantity/depth.ts';
import { parseStamp, type Stamp } from '../quantity/stamp.ts';

/** A depth in a file: whole millimetres from the collar, 0 to the deepest accepted. */
export const depthMm = z
  .int()
  .min(0)
  .max(DEEPEST_M * 1000)
  .describe('Depth along the hole from the collar, in whole millimetres') as unknown as z.ZodType<Depth>;

/** A stamp in a file. */
export const stamp = z
  .string()
  .refine(
    (text) => parseStamp(text) !== undefined,
    'must be an instant with its offset, like 2026-03-14T07:42:10+08:00',
  )
  .describe(
    'Instant with the offset of the clock that stamped it, ISO 8601 to the second; a real date and time',
  ) as unknown as z.ZodType<Stamp>;

/** A text a person wrote: not empty, bounded. */
export const words = z.string().min(1).max(2000);

/** An id of this project (replica and counter). */
export const id = z.string().min(1).max(64).describe('Permanent id: replica and counter');

/** The name of a north. */
export const north = z.enum(NORTHS).describe('The north that an azimuth is counted from');

/** Degrees clockwise from north. */
export const azimuthDeg = z
  .number()
  .min(0)
  .lt(360)
  .describe('Degrees clockwise from the north stated beside it, 0 to under 360');

/** Degrees from horizontal, negative downwards. */
export const dipDeg = z
  .number()
  .min(-90)
  .max(90)
  .describe('Degrees from horizontal, negative downwards (-90 is vertically down)');

/** A coordinate in a file. */
export const coordinateMm = z.int().describe('Grid coordinate in whole millimetres');
