import { ok, type Result, refused } from '../finding/finding.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import type { Shot } from '../hole/direction.ts';
import { REFUSALS } from '../hole/findings.ts';
import { holeThings } from '../hole/hole.ts';
import { type Depth, formatDepth } from '../quantity/depth.ts';
import { localTime } from '../quantity/stamp.ts';
import type { Change, Document, Id, Thing } from '../record/document.ts';
import { placeOf } from '../standing/survey.ts';
import { openRun, type ShotRead } from './shot.ts';

/** The readings of the run in hand at a depth: the one that is used, and those rejected. */
export function readingsAt(
  hole: Document,
  depthMm: Depth,
): {
  readonly used: readonly [Id, Shot] | undefined;
  readonly rejected: readonly (readonly [Id, Shot])[];
} {
  const run = openRun(hole)?.[0];
  const here = holeThings(hole, 'shots').filter(([, each]) => each.run === run && each.depthMm === depthMm);
  return {
    used: here.find(([, each]) => each.rejected === undefined),
    rejected: here.filter(([, each]) => each.rejected !== undefined),
  };
}

/**
 * The reading of a shot corrected where it stands: it was misheard or mistyped, and the tool was run once. What was first typed is kept
 * with it. One that was rejected for it is used again; where the right one had been recorded as a second shot, the two become one, for
 * a shot is paid by the run of the tool.
 */
export function correctShot(hole: Document, read: ShotRead, maker: Maker): Result<Made> {
  const { used, rejected } = readingsAt(hole, read.depthMm);
  const [id, shot] = used ?? rejected.at(-1) ?? [];
  const place = { ...placeOf(hole), fromMm: read.depthMm };
  if (id === undefined || shot === undefined)
    return refused(
      REFUSALS.notThere.at(place, {
        problem: `the run has no shot at ${formatDepth(read.depthMm)} m to correct`,
        remedy: 'Give the depth of the shot as F6 has it; leave out "corrects" for a new shot.',
      }),
    );
  const others = used === undefined ? [] : rejected;
  const first = others.at(-1)?.[1] ?? shot;
  const { depthMm: _depth, ...reading } = read;
  if (isSame(first, reading) && others.length === 0 && shot.rejected === undefined)
    return refused(
      REFUSALS.notThere.at(place, {
        problem: 'the shot has these figures already',
        remedy: 'Type the depth and the figures as they should be, then "corrects".',
      }),
    );
  const misread = `${readingWords(first)}; corrected ${localTime(maker.at)} by ${maker.by}`;
  const set = {
    ...reading,
    misread: [shot.misread, misread].filter((each) => each !== undefined).join('; '),
  };
  const unset = (['rejected', 'azimuthRejected'] as const).filter((field) => shot[field] !== undefined);
  return ok({
    what: `shot at ${formatDepth(read.depthMm)} m corrected: ${readingWords(reading)}, first typed as ${readingWords(first)}`,
    changes: [
      { patch: ['shots', id], set: set as Thing, ...(unset.length === 0 ? {} : { unset }) },
      ...others.map(([other]): Change => ({ remove: ['shots', other] })),
    ],
  });
}

const isSame = (shot: Shot, reading: Omit<ShotRead, 'depthMm'>): boolean =>
  Object.entries(reading).every(([key, value]) => shot[key as keyof typeof reading] === value);

/** `dip -59.7°, azimuth 268.9°`, of an azimuth as it was read. */
function readingWords({ dipDeg, azimuthDeg }: Pick<Shot, 'dipDeg' | 'azimuthDeg'>): string {
  const dip = `dip ${dipDeg.toFixed(1)}°`;
  return azimuthDeg === undefined ? dip : `${dip}, azimuth ${azimuthDeg.toFixed(1)}°`;
}
