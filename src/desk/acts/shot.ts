import { ok, type Result, refused } from '../../finding/finding.ts';
import { recordRun, recordShot } from '../../hole/commands/direction.ts';
import type { Made, Maker } from '../../hole/commands/made.ts';
import type { SurveyRun } from '../../hole/direction.ts';
import { headerOf, holeThings } from '../../hole/hole.ts';
import { REFUSALS } from '../../hole/refusals.ts';
import { type Depth, formatDepth } from '../../quantity/depth.ts';
import type { Document } from '../../record/document.ts';
import { headsOf } from '../../standing/heads.ts';

/** A shot as the driller read it out. */
export interface ShotRead {
  readonly depthMm: Depth;
  readonly dipDeg: number;
  readonly azimuthDeg?: number;
}

/** What a tool is where nobody said: a single-shot run of a north-seeking gyro inside the rods, its azimuths from true north. */
const USUAL_RUN = {
  tool: 'not named',
  toolClass: 'north-seeking gyro',
  north: 'true',
  pass: 'single',
  inside: 'rods',
  toolOffsetMm: 0,
  operator: 'driller',
  rank: 50,
} as const satisfies Omit<SurveyRun, 'at'>;

/** Records a shot in the run of single shots that is open, or in a new one. Refused below the drilled depth, or where one stands at its depth. */
export function recordShotRead(hole: Document, read: ShotRead, maker: Maker): Result<Made> {
  const { drilledMm } = headsOf(hole);
  if (read.depthMm > drilledMm) {
    return refused(
      REFUSALS.notThere.at(
        { hole: headerOf(hole).name, fromMm: read.depthMm },
        {
          problem: `the hole is ${formatDepth(drilledMm)} m deep by the last rod done`,
          remedy: 'Read the depth again, or record the rod first.',
        },
      ),
    );
  }
  const run = holeThings(hole, 'runs').findLast(([, each]) => each.pass === 'single');
  const { depthMm, dipDeg, azimuthDeg } = read;
  const seen = { depthMm, dipDeg, ...(azimuthDeg === undefined ? {} : { azimuthDeg }) };
  const shot = { ...seen, at: maker.at, by: maker.by };
  if (run === undefined) return ok(recordRun({ ...USUAL_RUN, at: maker.at }, [shot], maker));
  const there = holeThings(hole, 'shots').find(
    ([, each]) => each.run === run[0] && each.depthMm === read.depthMm && each.rejected === undefined,
  );
  if (there !== undefined) {
    return refused(
      REFUSALS.overlap.at(
        { hole: headerOf(hole).name, fromMm: read.depthMm },
        {
          problem: 'the run has a shot at this depth',
          remedy: 'Reject that one first, or record the new one as a run of its own.',
        },
      ),
    );
  }
  return ok(recordShot({ ...shot, run: run[0] }, maker));
}
