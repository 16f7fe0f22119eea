import * as z from 'zod';
import { gridSetting, mineGridSetting } from './norths/grid-settings.ts';

const metresOver0 = z.number().gt(0).max(5000);
const degreesOver0 = z.number().gt(0).max(90);

/** One-sigma errors of a class of tool. `random` differs from shot to shot, `systematic` is one for the whole run. */
const toolErrorSetting = z.strictObject({
  azimuthRandomDeg: z.number().min(0).max(45).describe('Azimuth, from shot to shot, in degrees'),
  azimuthSystematicDeg: z.number().min(0).max(45).describe('Azimuth, the same for a whole run, in degrees'),
  dipRandomDeg: z.number().min(0).max(45).describe('Dip, from shot to shot, in degrees'),
  dipSystematicDeg: z.number().min(0).max(45).describe('Dip, the same for a whole run, in degrees'),
  depthRandomM: z.number().min(0).max(50).describe('Depth, from shot to shot, in metres'),
  depthSystematicPerCent: z.number().min(0).max(10).describe('Per cent of the depth'),
});

/**
 * The part of project.json about directions, as written by hand: metres and degrees, all of it optional. What is not said
 * is filled in by {@link surveySettingsOf}.
 */
export const surveySettings = z
  .strictObject({
    grid: gridSetting.optional(),
    mineGrid: mineGridSetting.optional(),
    declination: z
      .strictObject({
        deg: z.number().min(-180).max(180).describe('Degrees, east positive'),
        source: z.string().min(1).describe('Where it is from, with its date'),
      })
      .optional()
      .describe('Declination to use instead of the World Magnetic Model'),
    firstShotM: metresOver0.optional().describe('Depth of the first shot, metres'),
    shotEveryM: metresOver0.optional().describe('Metres from one shot to the next'),
    longestGapM: metresOver0.optional().describe('Longest allowed gap between shots, metres'),
    steelM: metresOver0.optional().describe('Least distance of a magnetic sensor from steel, metres'),
    azimuthToleranceDeg: degreesOver0.optional().describe('Line-up: largest difference of azimuth, degrees'),
    dipToleranceDeg: degreesOver0
      .optional()
      .describe('Line-up: largest difference of dip (of direction, where steep), degrees'),
    compassNearestM: metresOver0
      .optional()
      .describe('Nearest to the rig that a compass is read, metres; 20 unless it is given'),
    compassAgreementDeg: degreesOver0
      .optional()
      .describe('Largest difference between compass readings at two distances, degrees'),
    magneticGround: z
      .boolean()
      .optional()
      .describe('true where the ground draws a compass: a compass alone is then no check'),
    collarToleranceM: metresOver0
      .optional()
      .describe('Largest distance of the collar from where it was planned, metres'),
    programReachM: z
      .number()
      .gt(0)
      .max(500_000)
      .optional()
      .describe('A collar further than this from the planned ones is questioned, metres'),
    fieldToleranceNt: z
      .number()
      .gt(0)
      .max(20_000)
      .optional()
      .describe('Largest difference of total field from the World Magnetic Model, nanotesla'),
    magneticDipToleranceDeg: degreesOver0
      .optional()
      .describe('Largest difference of magnetic dip from the World Magnetic Model, degrees'),
    jumpPer30m: degreesOver0.optional().describe('A sharper bend than this is questioned, degrees per 30 m'),
    miscloseDeg: degreesOver0.optional().describe('Largest difference of in and out runs, degrees'),
    severityLimitPer30m: degreesOver0
      .optional()
      .describe('Sharpest bend the hole can be steered or hoped to take, degrees per 30 m'),
    expectedToleranceM: metresOver0
      .optional()
      .describe('A contact logged further than this from where it should come is questioned, metres'),
    targetRadiusM: metresOver0.optional().describe('How near the target counts as through it, metres'),
    toolErrors: z
      .strictObject({
        magnetic: toolErrorSetting.optional().describe('A magnetic tool, one-sigma'),
        'gyro aligned at the collar': toolErrorSetting
          .optional()
          .describe('A gyro that inherits the direction it is aligned to, one-sigma'),
        'north-seeking gyro': toolErrorSetting
          .optional()
          .describe('A gyro that finds north itself, one-sigma'),
        'line-up': toolErrorSetting.optional().describe('The direction set at the collar, one-sigma'),
      })
      .optional()
      .describe("One-sigma errors by class of tool, from the makers' sheets or the site's own checks"),
  })
  .describe('Directions: grids, line-up, survey');
export type SurveySettingsFile = Readonly<z.infer<typeof surveySettings>>;

/** One-sigma errors of a class of tool, degrees, metres and % of depth. */
export type ToolErrors = Readonly<z.infer<typeof toolErrorSetting>>;

/** Where a direction comes from, as far as its errors go. */
export type ErrorClass = 'magnetic' | 'gyro aligned at the collar' | 'north-seeking gyro' | 'line-up';

/** The usual figures, common practice, used where the project says nothing. Tool errors are placeholders of the right size. */
const USUAL = {
  firstShotM: 12,
  shotEveryM: 30,
  longestGapM: 40,
  steelM: 6,
  azimuthToleranceDeg: 1,
  dipToleranceDeg: 0.5,
  // 20 m: the usual stand-off from the steel of a heavy rig (common practice).
  compassNearestM: 20,
  compassAgreementDeg: 2,
  magneticGround: false,
  collarToleranceM: 5,
  programReachM: 20_000,
  fieldToleranceNt: 1000,
  magneticDipToleranceDeg: 1,
  jumpPer30m: 3,
  miscloseDeg: 1,
  severityLimitPer30m: 3,
  targetRadiusM: 10,
  expectedToleranceM: 5,
} as const;

const usualErrors = (azimuthRandomDeg: number, azimuthSystematicDeg: number): ToolErrors => ({
  azimuthRandomDeg,
  azimuthSystematicDeg,
  dipRandomDeg: 0.2,
  dipSystematicDeg: 0.1,
  depthRandomM: 0.1,
  depthSystematicPerCent: 0.1,
});

const USUAL_ERRORS: Readonly<Record<ErrorClass, ToolErrors>> = {
  magnetic: usualErrors(0.5, 0.5),
  'gyro aligned at the collar': usualErrors(0.3, 1),
  'north-seeking gyro': usualErrors(0.3, 0.3),
  'line-up': { ...usualErrors(0, 1), dipRandomDeg: 0, dipSystematicDeg: 0.5, depthRandomM: 0 },
};

/** The settings with nothing left unsaid; grids and declination make the site, see `siteOf`. */
export interface SurveySettings {
  readonly firstShotM: number;
  readonly shotEveryM: number;
  readonly longestGapM: number;
  readonly steelM: number;
  readonly azimuthToleranceDeg: number;
  readonly dipToleranceDeg: number;
  readonly compassNearestM: number;
  readonly compassAgreementDeg: number;
  readonly magneticGround: boolean;
  readonly collarToleranceM: number;
  readonly programReachM: number;
  readonly fieldToleranceNt: number;
  readonly magneticDipToleranceDeg: number;
  readonly jumpPer30m: number;
  readonly miscloseDeg: number;
  readonly severityLimitPer30m: number;
  readonly targetRadiusM: number;
  readonly expectedToleranceM: number;
  readonly toolErrors: Readonly<Record<ErrorClass, ToolErrors>>;
}

/** The settings of a project, the usual figures standing in for what it doesn't say. */
export function surveySettingsOf(file: SurveySettingsFile = {}): SurveySettings {
  const { grid: _grid, mineGrid: _mineGrid, declination: _declination, toolErrors, ...said } = file;
  return {
    ...USUAL,
    ...defined(said),
    toolErrors: { ...USUAL_ERRORS, ...defined(toolErrors ?? {}) },
  };
}

/** The members that are there. */
function defined<T extends object>(members: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(members).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]: Exclude<T[K], undefined>;
  };
}
