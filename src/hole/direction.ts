import * as z from 'zod';
import { azimuthDeg, depthMm, dipDeg, id, north, stamp, words } from './parts.ts';

/** Tools that measure where a hole goes, by what they sense. */
export const TOOL_CLASSES = ['magnetic', 'gyro aligned at the collar', 'north-seeking gyro'] as const;

/** A run of a survey tool: table `runs`. */
export const surveyRun = z.strictObject({
  tool: words.describe('Name or number of the tool'),
  toolClass: z.enum(TOOL_CLASSES),
  north: north.describe('The north that its azimuths are counted from'),
  pass: z.enum(['in', 'out', 'single']),
  inside: z.enum(['rods', 'open hole']),
  toolOffsetMm: z.int().min(0).max(50_000).describe('Bit depth less station depth, in whole millimetres'),
  steelMm: z
    .int()
    .min(0)
    .max(100_000)
    .optional()
    .describe('Distance of the sensor from steel above or below, in whole millimetres'),
  operator: words,
  at: stamp,
  rank: z.int().min(0).max(100).describe('Higher is better; the best at each depth makes the path'),
});
export type SurveyRun = Readonly<z.infer<typeof surveyRun>>;

/**
 * A shot: table `shots`. As the tool gave it: what is made of it is computed. A figure that was misheard or mistyped is corrected in
 * place, and `misread` keeps it.
 */
export const shot = z.strictObject({
  run: id,
  depthMm: depthMm.describe('Station depth (bit depth less tool offset), in whole millimetres'),
  azimuthDeg: azimuthDeg
    .optional()
    .describe('As read, from the north of the run; none where the tool gave none'),
  dipDeg,
  fieldNt: z.number().min(0).max(100_000).optional().describe('Total magnetic field, in nanotesla'),
  magneticDipDeg: z
    .number()
    .min(-90)
    .max(90)
    .optional()
    .describe('Magnetic dip, degrees, positive downwards'),
  azimuthRejected: words.optional().describe('Why its azimuth is not used; its dip is kept'),
  rejected: words.optional().describe('Why neither is used'),
  misread: words
    .optional()
    .describe('What was first typed, where a misheard or mistyped reading was corrected, when and by whom'),
  at: stamp,
  by: words,
});
export type Shot = Readonly<z.infer<typeof shot>>;

/** A line-up as set and checked: table `lineUps`. The accepted one made last is station 0. */
export const lineUp = z.strictObject({
  azimuthDeg,
  azimuthNorth: north,
  dipDeg,
  way: z.enum(['sight pegs', 'alignment device', 'compass']),
  accepted: z.boolean(),
  readings: z
    .array(
      z.strictObject({
        kind: z.enum(['compass', 'clinometer', 'crew']),
        deg: z.number(),
        distanceMm: z.int().min(0).optional().describe('Distance from the rig, in whole millimetres'),
        sightedBack: z.boolean().optional(),
      }),
    )
    .optional(),
  missMm: z.int().min(0).optional().describe('Miss at the target from the 3-D angle, in whole millimetres'),
  correction: words.optional().describe('What was requested of the driller'),
  cautionsReadBy: words.optional().describe('Who read the cautions; having read is not being inducted'),
  permissionBy: words
    .optional()
    .describe('Who of the crew permitted the checks: rig stopped, clear of exclusion zones and traffic'),
  because: words.optional().describe('Why it is accepted outside its tolerance'),
  at: stamp,
  by: words,
});
export type LineUp = Readonly<z.infer<typeof lineUp>>;
