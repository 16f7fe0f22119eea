import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import type { Shot } from '../../hole/direction.ts';
import type { Depth } from '../../quantity/depth.ts';
import type { Id } from '../../record/document.ts';
import {
  backBearingGiven,
  depthSlip,
  dipFromVertical,
  dipUpwards,
  magneticFieldOff,
  magneticInSteel,
  shotAlone,
  shotBelowDrilled,
} from '../findings.ts';
import { placeOfShot, type RunWithShots, stands } from './run-with-shots.ts';

/** A shot, or its azimuth alone, that the path leaves out, because a finding names it as wrong. */
export interface LeftOut {
  readonly run: Id;
  readonly depthMm: Depth;
  readonly part: 'shot' | 'azimuth';
}

/** Findings that name single shots as wrong: at a depth they weren't taken at, or with a dip or azimuth that isn't theirs. */
const WRONG_SHOT: ReadonlySet<string> = new Set(
  [depthSlip, dipFromVertical, dipUpwards, shotAlone, shotBelowDrilled].map(({ code }) => code),
);

/** Findings that name an azimuth alone as wrong: its dip is kept. */
const WRONG_AZIMUTH: ReadonlySet<string> = new Set(
  [backBearingGiven, magneticFieldOff, magneticInSteel].map(({ code }) => code),
);

/** The runs without the shots and azimuths that the findings name as wrong, for the path and all that rests on it. */
export function standingShots(
  runs: readonly RunWithShots[],
  findings: readonly Finding[],
  place: Place,
): { readonly runs: readonly RunWithShots[]; readonly leftOut: readonly LeftOut[] } {
  const wrong = findings.filter(({ code }) => WRONG_SHOT.has(code));
  const azimuths = findings.filter(({ code }) => WRONG_AZIMUTH.has(code));
  const leftOut: LeftOut[] = [];
  const left = runs.map((one) => ({
    ...one,
    shots: one.shots.flatMap((shot): readonly Shot[] => {
      if (shot.rejected !== undefined) return [shot];
      const { thing } = placeOfShot(place, one.run, shot);
      const isWrong = wrong.some((each) => each.place.thing === thing && names(each, shot));
      const isAzimuth = azimuths.some(
        (each) => (each.place.thing ?? thing) === thing && names(each, shot) && stands(shot),
      );
      if (isWrong || isAzimuth)
        leftOut.push({ run: one.id, depthMm: shot.depthMm, part: isWrong ? 'shot' : 'azimuth' });
      if (isWrong) return [];
      return isAzimuth ? [{ ...shot, azimuthRejected: 'marked as wrong' }] : [shot];
    }),
  }));
  return { runs: left, leftOut };
}

function names({ place: { fromMm, toMm = fromMm } }: Finding, { depthMm }: Shot): boolean {
  return fromMm !== undefined && toMm !== undefined && depthMm >= fromMm && depthMm <= toMm;
}
