import * as z from 'zod';
import { conditionSchema } from '../condition/condition.ts';
import { azimuthDeg, coordinateMm, depthMm, dipDeg, north, stamp, words } from './parts.ts';

/** The states of a hole, in the trade's words. */
const HOLE_STATES = ['planned', 'drilling', 'suspended', 'abandoned', 'complete'] as const;
export type HoleState = (typeof HOLE_STATES)[number];

/** True of a hole that is drilled and logged no more, unless it is reopened. */
export function isOver(state: HoleState): boolean {
  return state === 'abandoned' || state === 'complete';
}

/** Why a hole is beside or below another. */
const PARENT_REASONS = ['redrill', 'deepening', 'tail'] as const;

/** The hole itself: table `hole`, one thing `hole`. */
export const header = z.strictObject({
  name: words.describe('What the hole is called on the rig'),
  plannedName: words.optional().describe('What the program called it'),
  state: z.enum(HOLE_STATES),
  unplanned: z.literal(true).optional().describe('Made on the rig, not in the program'),
  parent: z
    .strictObject({
      hole: words.describe('Permanent id of the other hole'),
      reason: z.enum(PARENT_REASONS),
      because: words,
    })
    .optional(),
  imported: z
    .strictObject({
      depthMm: depthMm.describe('Final depth, in whole millimetres: what lies above was logged by others'),
      at: stamp,
      by: words,
      files: z
        .array(z.strictObject({ file: words, sha256: z.string().regex(/^[0-9a-f]{64}$/) }))
        .describe('The tables that it came from: name and SHA-256, hex'),
    })
    .optional()
    .describe('Taken from tables of others: never logged here'),
  notLinedUp: z
    .strictObject({ because: words, at: stamp, by: words })
    .optional()
    .describe('Why it is drilled without a line-up'),
  stateReason: words.optional().describe('Why it was suspended or abandoned'),
  logFromMm: depthMm.describe('Where logging starts, in whole millimetres: 0, or the bottom of a pre-collar'),
  intervalMm: z.int().min(100).max(10_000).describe('Usual length of a logged row, in whole millimetres'),
  rodMm: z.int().min(1000).max(20_000).describe('Length of a rod, in whole millimetres'),
  firstRodOffsetMm: z
    .int()
    .min(-10_000)
    .max(10_000)
    .describe('Added to rods × length for the drilled depth (stick-up negative), in whole millimetres'),
});
export type Header = Readonly<z.infer<typeof header>>;

/** The plan: table `plan`, one thing `plan`. Amended by history, never a second one. */
export const plan = z.strictObject({
  azimuthDeg,
  azimuthNorth: north,
  dipDeg,
  depthMm: depthMm.describe('Planned depth, in whole millimetres'),
  targetMm: depthMm
    .optional()
    .describe('Depth of the target along the hole as planned, in whole millimetres'),
  target: words.optional().describe('What the hole is for'),
  expects: z
    .array(
      z.strictObject({
        name: words,
        fromMm: depthMm,
        toMm: depthMm.optional(),
        hazard: z.enum(['fibre', 'void']).optional(),
        seen: conditionSchema.optional().describe('What in a logged row tells it'),
      }),
    )
    .optional()
    .describe('Contacts and zones that the plan expects, by depth along the planned hole'),
});
export type Plan = Readonly<z.infer<typeof plan>>;

/** Ranks of a collar position, best last. All are kept; the best there is is used. */
export const COLLAR_RANKS = ['planned', 'handheld', 'surveyed'] as const;

/** A position of the collar: table `collars`. */
export const collar = z.strictObject({
  rank: z.enum(COLLAR_RANKS),
  eastingMm: coordinateMm,
  northingMm: coordinateMm,
  elevationMm: coordinateMm.describe('Height in whole millimetres'),
  grid: words.describe('Name of the grid, as in project.json'),
  source: words.describe('Where the position is from'),
  fix: z
    .strictObject({
      scatterMm: z
        .int()
        .min(0)
        .describe('Root mean square distance of the fixes from their mean, in whole millimetres'),
      fewestSatellites: z
        .int()
        .min(0)
        .optional()
        .describe('Fewest satellites of a fix, where the receiver said so'),
      worstDilutionPercent: z
        .int()
        .min(0)
        .optional()
        .describe('Worst horizontal dilution of precision (HDOP) times 100, where the receiver said so'),
    })
    .optional()
    .describe('How good the fix of a GPS was that the position is from'),
  at: stamp,
  by: words,
});
export type Collar = Readonly<z.infer<typeof collar>>;

/** A stretch of drilling by one method, bit and rig: table `drilling`. */
export const drillingInterval = z.strictObject({
  method: words.describe('RC, or the method of a pre-collar or tail'),
  rig: words,
  fromMm: depthMm,
  toMm: depthMm.optional().describe('Foot, when it is known; while it is drilled there is none'),
  bitMm: z.number().min(50).max(500).optional().describe('Bit diameter as measured, in millimetres'),
  startedAt: stamp,
  endedAt: stamp.optional(),
});
export type DrillingInterval = Readonly<z.infer<typeof drillingInterval>>;
