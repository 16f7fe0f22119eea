import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { azimuth, type North } from '../../quantity/azimuth.ts';
import { dip } from '../../quantity/dip.ts';
import { angleBetweenDeg, type Direction } from '../direction.ts';
import { misclose } from '../findings.ts';
import { type NorthAngles, toNorth } from '../norths/norths.ts';
import type { SurveySettings } from '../settings.ts';
import { type RunWithShots, stands } from '../shots/run-with-shots.ts';
import { apartSigmaDeg } from './jump.ts';
import { azimuthUnusable } from './magnetic-in-steel.ts';

/** Shots of the two runs this near to each other are compared, millimetres. */
const SAME_PLACE_MM = 1000;
/** So many sigma of the two tools' errors are not yet a difference: the worst of many pairs is looked at. */
const SIGMAS = 4;

/** What two runs are compared in. */
export interface MiscloseSettings {
  readonly north: North;
  readonly anglesOf: (run: RunWithShots['run']) => NorthAngles;
  readonly settings: Pick<SurveySettings, 'miscloseDeg' | 'toolErrors' | 'steelM'>;
}

/**
 * Two runs over the same metres, whatever their tools: the largest angle in space between readings at one place, against what their own
 * errors allow, and never less than the project's misclose.
 */
export function checkMisclose(
  first: RunWithShots,
  second: RunWithShots,
  { north, anglesOf, settings }: MiscloseSettings,
  place: Place,
): readonly Finding[] {
  const directions = (run: RunWithShots) => directionsOf(run, north, anglesOf(run.run), settings.steelM);
  const others = directions(second);
  const apart = directions(first).flatMap((one) => {
    const other = others.find((each) => Math.abs(each.depthMm - one.depthMm) < SAME_PLACE_MM);
    if (other === undefined) return [];
    const deg = angleBetweenDeg(one.direction, other.direction);
    const sigma = apartSigmaDeg(
      { dip: one.direction.dip, toolClass: first.run.toolClass, run: first.id },
      { dip: other.direction.dip, toolClass: second.run.toolClass, run: second.id },
      settings.toolErrors,
    );
    return [{ depthMm: one.depthMm, deg, allowed: Math.max(settings.miscloseDeg, SIGMAS * sigma) }];
  });
  const [worst] = apart.sort((a, b) => b.deg - b.allowed - (a.deg - a.allowed));
  if (worst === undefined || worst.deg <= worst.allowed) return [];
  return [
    misclose.at(
      { ...place, fromMm: worst.depthMm, thing: nameOf(first) },
      {
        problem: `${nameOf(first)} and ${nameOf(second)} differ by up to ${worst.deg.toFixed(1)}°; ${worst.allowed.toFixed(1)}° is allowed`,
        remedy:
          'Ask the driller to run the tool again, slower and with longer stops, and reject the shots of the worse run.',
      },
    ),
  ];
}

const nameOf = ({ run }: RunWithShots) => (run.pass === 'single' ? run.tool : `${run.tool}, ${run.pass}`);

function directionsOf(
  { run, shots }: RunWithShots,
  north: North,
  angles: NorthAngles,
  steelM: number,
): readonly { readonly depthMm: number; readonly direction: Direction }[] {
  if (azimuthUnusable(run, steelM)) return [];
  return shots.filter(stands).flatMap((shot) => {
    const turned = toNorth(azimuth(shot.azimuthDeg ?? 0, run.north), north, angles);
    return turned === undefined
      ? []
      : [{ depthMm: shot.depthMm, direction: { azimuth: turned, dip: dip(shot.dipDeg) } }];
  });
}
