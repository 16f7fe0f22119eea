import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import type { Shot } from '../../hole/direction.ts';
import { degreesBetween } from '../../quantity/azimuth.ts';
import { formatDepth, metres } from '../../quantity/depth.ts';
import { inheritsLineUp } from '../blunders/evidence.ts';
import { angleBetweenDeg, radians } from '../direction.ts';
import { jump, shotAlone } from '../findings.ts';
import { BEND_LENGTH_M } from '../path/severity.ts';
import type { SurveySettings } from '../settings.ts';
import { placeOfShot, type RunWithShots } from '../shots/run-with-shots.ts';
import type { RankedStation } from '../shots/runs.ts';

/** An angle this small is the noise of two readings, however close together they are, degrees. */
const NOISE_DEG = 1;
/** So many sigma of the two readings' errors are not yet a jump: a hole has many pairs of stations, and each may be the one. */
const SIGMAS = 3.5;

/**
 * Neighbouring stations (in order of depth, one north) whose angle in space is more than rods bend over their distance, allowing for
 * the errors of both readings: the line-up's own at the first shot, the systematic ones too where two runs meet. One station between two that
 * agree is named as standing alone, by its run.
 */
export function checkJumps(
  stations: readonly RankedStation[],
  settings: JumpSettings,
  place: Place,
  runs: readonly RunWithShots[] = [],
): readonly Finding[] {
  const alone = new Map(
    [...aloneAmong(stations, settings)].flatMap((index) => {
      const found = shotAloneAt(stations, index, runs, place);
      return found === undefined ? [] : [[index, found] as const];
    }),
  );
  // What stands alone is named once: its neighbours are good, and no jump is between them.
  const others = stations.filter((_, index) => !alone.has(index));
  const jumps = others.slice(1).flatMap((to, index) => {
    const from = others[index]!;
    const { angle, allowed, lengthM, isJump } = between(from, to, settings);
    if (!isJump) return [];
    return [
      jump.at(
        { ...place, fromMm: from.depthMm, toMm: to.depthMm },
        {
          problem: `the direction changes by ${angle.toFixed(1)}° in ${lengthM.toFixed(0)} m; no more than ${allowed.toFixed(1)}° is expected${to === stations.at(-1) ? deepestWords(from, to, runs) : ''}`,
          remedy: 'Check the digits of both readings. Ask the driller to take the deeper shot again.',
        },
      ),
    ];
  });
  return [...alone.values(), ...jumps];
}

type JumpSettings = Pick<SurveySettings, 'jumpPer30m' | 'toolErrors'>;

function between(from: RankedStation, to: RankedStation, settings: JumpSettings) {
  const lengthM = metres(to.depthMm - from.depthMm);
  const angle = angleBetweenDeg(from, to);
  const bend = (settings.jumpPer30m * lengthM) / BEND_LENGTH_M;
  const allowed = Math.max(
    NOISE_DEG,
    Math.hypot(bend, SIGMAS * apartSigmaDeg(from, to, settings.toolErrors)),
  );
  return { angle, allowed, lengthM, isJump: lengthM > 0 && angle > allowed };
}

/** Stations with a jump on either side, whose neighbours agree with each other: places among `stations`. */
function aloneAmong(stations: readonly RankedStation[], settings: JumpSettings): ReadonlySet<number> {
  const alone = new Set<number>();
  for (let index = 1; index < stations.length - 1; index += 1) {
    const [above, one, below] = stations.slice(index - 1, index + 2) as [
      RankedStation,
      RankedStation,
      RankedStation,
    ];
    const isAway = between(above, one, settings).isJump && between(one, below, settings).isJump;
    if (isAway && !alone.has(index - 1) && !between(above, below, settings).isJump) alone.add(index);
  }
  return alone;
}

/** A guess at a misread reading has to come this near to the line of its neighbours, degrees. */
const NEAR_DEG = 2;

function shotAloneAt(
  stations: readonly RankedStation[],
  index: number,
  runs: readonly RunWithShots[],
  place: Place,
): Finding | undefined {
  const [above, one, below] = stations.slice(index - 1, index + 2) as [
    RankedStation,
    RankedStation,
    RankedStation,
  ];
  const { run, shot } = readingOf(one, runs);
  if (run === undefined || shot === undefined) return undefined;
  const part = (one.depthMm - above.depthMm) / (below.depthMm - above.depthMm);
  const turn = degreesBetween(below.azimuth.deg, above.azimuth.deg);
  const likely = likelyWords(shot, {
    turn: degreesBetween(above.azimuth.deg + part * turn, one.azimuth.deg),
    dip: above.dip + part * (below.dip - above.dip) - one.dip,
  });
  return shotAlone.at(placeOfShot(place, run, shot), {
    problem: `it points ${angleBetweenDeg(above, one).toFixed(1)}° away from the one above and ${angleBetweenDeg(one, below).toFixed(1)}° from the one below, which agree${likely}`,
    remedy: `Check its digits on the sheet or in the tool. If it was misread, correct it: ;shot ${formatDepth(one.depthMm)}, the right figures, then corrects (or c on F6). If the tool reads so, reject it.`,
  });
}

/** Of the deepest shot what two swapped digits would make of it, as none below it says more yet. */
function deepestWords(above: RankedStation, one: RankedStation, runs: readonly RunWithShots[]): string {
  const { shot } = readingOf(one, runs);
  if (shot === undefined) return '';
  const turn = degreesBetween(above.azimuth.deg, one.azimuth.deg);
  return likelyWords(shot, { turn, dip: above.dip - one.dip }).replace(' its ', " the deeper shot's ");
}

/** The run and the shot that a station was read in; none for the line-up. */
function readingOf(
  one: RankedStation,
  runs: readonly RunWithShots[],
): { readonly run?: RunWithShots['run']; readonly shot?: Shot } {
  const found = runs.find(({ id }) => id === one.run);
  const shot = found?.shots.find((each) => each.rejected === undefined && each.depthMm === one.depthMm);
  return found === undefined || shot === undefined ? {} : { run: found.run, shot };
}

/** What two swapped digits would make of a reading that is off by `turn` and `dip` degrees, where that brings it into line. */
function likelyWords(
  { azimuthDeg, dipDeg }: Shot,
  wanted: { readonly turn: number; readonly dip: number },
): string {
  const isNear = (added: number, by: number): boolean => Math.abs(added - by) <= NEAR_DEG;
  const azimuthMeant =
    azimuthDeg === undefined || Math.abs(wanted.dip) > NEAR_DEG
      ? undefined
      : digitsSwapped(azimuthDeg).find((each) => isNear(degreesBetween(each, azimuthDeg), wanted.turn));
  if (azimuthMeant !== undefined)
    return `; with two digits swapped its azimuth would be ${azimuthMeant.toFixed(1)}°, in line`;
  const dipMeant =
    azimuthDeg !== undefined && Math.abs(wanted.turn) > NEAR_DEG
      ? undefined
      : digitsSwapped(dipDeg).find((each) => isNear(each - dipDeg, wanted.dip));
  return dipMeant === undefined
    ? ''
    : `; with two digits swapped its dip would be ${dipMeant.toFixed(1)}°, in line`;
}

/** A reading with two of its digits the other way round, the decimal among them: 92.4 for 29.4. */
function digitsSwapped(deg: number): readonly number[] {
  const digits = [...Math.abs(deg).toFixed(1).replace('.', '')];
  return digits.flatMap((_, first) =>
    digits.slice(first + 1).flatMap((__, apart) => {
      const second = first + 1 + apart;
      const swapped = digits.with(first, digits[second] ?? '').with(second, digits[first] ?? '');
      return digits[first] === digits[second] ? [] : [(Math.sign(deg) * Number(swapped.join(''))) / 10];
    }),
  );
}

/** One sigma, degrees in space, of the difference of two readings by their tools' errors alone: the larger of dip and turn. */
export function apartSigmaDeg(
  a: Pick<RankedStation, 'dip' | 'toolClass' | 'run'>,
  b: Pick<RankedStation, 'dip' | 'toolClass' | 'run'>,
  errors: SurveySettings['toolErrors'],
): number {
  const [own, other] = [errors[a.toolClass], errors[b.toolClass]];
  // What is systematic in a run is the same in both of its readings.
  const apart = a.run === b.run ? 0 : 1;
  const turned = (one: typeof a) =>
    one.toolClass === 'line-up' ? 0 : apart * errors[one.toolClass].azimuthSystematicDeg;
  const azimuthDeg = Math.hypot(
    own.azimuthRandomDeg,
    other.azimuthRandomDeg,
    turned(a),
    turned(b),
    // A gyro aligned to the line-up is off as the line-up is, so that between the two it does not show.
    inheritsLineUp(a) === inheritsLineUp(b) ? 0 : errors['line-up'].azimuthSystematicDeg,
  );
  const dipDeg = Math.hypot(
    own.dipRandomDeg,
    other.dipRandomDeg,
    apart * own.dipSystematicDeg,
    apart * other.dipSystematicDeg,
  );
  return Math.max(dipDeg, azimuthDeg * Math.cos(radians((a.dip + b.dip) / 2)));
}
