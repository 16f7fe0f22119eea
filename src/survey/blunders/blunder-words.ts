import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { gyroDrift, gyroMisaligned, lineUpOff, magneticInSteel, runsDisagree } from '../findings.ts';
import { formatEastWest, stepBetween } from '../norths/norths.ts';
import type { Evidence, Source } from './evidence.ts';
import { type BlunderName, isNearCollar } from './hypotheses.ts';
import { northRemedy } from './north-blunders.ts';
import type { Found } from './weigh.ts';

/** A mix-up of norths that the readings could not show, were it there: too small beside what is known. */
export interface Unseen {
  readonly angle: 'declination' | 'convergence' | 'mine grid rotation';
  readonly tool: string;
  readonly effectDeg: number;
  /** One sigma of what is known. */
  readonly sigmaDeg: number;
}

type Kind = 'azimuth' | 'dip';

/** What was found wrong with readings, as a finding: what it reads as, by how much, against what, and what to ask. */
export function blunderFinding(
  found: Found<BlunderName>,
  evidence: Evidence,
  kind: Kind,
  place: Place,
): Finding {
  const sources = found.hypothesis.of.filter((one): one is Source => 'id' in one);
  const at = placeOf(sources, evidence, place);
  const others = othersBeside(sources, evidence);
  const off = offWords(found, kind);
  const { name } = found.hypothesis;
  switch (name.what) {
    case 'north': {
      const [source] = sources;
      const angle = source === undefined ? '' : angleWords(name.blunder.angle, source);
      return name.blunder.kind.at(at, {
        excerpt: `${off} of ${others}; ${angle}`,
        problem: `${subject(sources)} reads ${name.blunder.reads}`,
        remedy: `${source === undefined ? name.blunder.question : northRemedy(name.blunder, source)}${asWell(found)}${steelAsWell(sources, evidence)}`,
      });
    }
    case 'gyro misaligned':
      return gyroMisaligned.at(at, {
        excerpt: `${off} of ${others}`,
        problem: 'the gyro reads as if it was misaligned at the collar',
        remedy: `Which azimuth was it aligned to? Reject these shots. Ask the driller to have it aligned and run again.${asWell(found)}`,
      });
    case 'drift':
      return gyroDrift.at(at, driftWords(found, name.run, kind));
    case 'drift beside':
      return gyroDrift.at(at, driftBesideWords(found, name.beside));
    case 'steel':
      return steelFinding(found, sources, evidence, at);
    case 'line-up off':
      return lineUpOff.at(at, {
        excerpt: `${kind} ${off} of ${others}`,
        problem: `the ${kind} of the line-up is off what was measured down the hole`,
        remedy: 'Check the line-up, and that the rig was not moved after it; the first metres hang on it.',
      });
    default:
      return runsDisagree.at(at, {
        excerpt: `${kind} ${off} of ${others}`,
        problem: `${offAllTheWay(sources, evidence, kind)}, and no usual cause fits`,
        remedy: `Check the tool's settings and that it is this hole's run. Ask the driller to survey again, or reject the worse run.${steelAsWell(sources, evidence)}`,
      });
  }
}

/** Which of the two runs drifts, as far as they show it: the out run is the worse one whether the in run drifts too or not. */
function driftWords(found: Found<BlunderName>, run: 'both' | 'in' | 'out', kind: Kind) {
  const size = (times: number) =>
    `${(times * Math.abs(found.size)).toFixed(1)}° ± ${(times * found.sizeSigma).toFixed(1)}° of ${kind}`;
  const again = 'Ask the driller to run it again, with longer stops to let it settle';
  if (run === 'in')
    return {
      excerpt: `${size(1)} from the collar to the bottom, in the in run alone`,
      problem: 'the runs in and out part more and more towards the bottom: the gyro drifts in the in run',
      remedy: `Reject the in run. Keep the out run. ${again} where it matters.`,
    };
  const problem = 'the runs in and out part more and more towards the collar: the gyro drifts';
  const open = found.others.some(
    ({ hypothesis: { name } }) => name.what === 'drift' && name.run !== 'in' && name.run !== run,
  );
  if (open)
    return {
      excerpt: `the out run is ${size(run === 'both' ? 2 : 1)} off at the collar; whether the in run drifts too is not known`,
      problem,
      remedy: `Reject the out run. ${again}: a third run shows whether the in run drifted.`,
    };
  return run === 'out'
    ? {
        excerpt: `${size(1)} from the bottom to the collar, in the out run alone`,
        problem: `${problem} in the out run`,
        remedy: `Reject the out run. Keep the in run. ${again} where it matters.`,
      }
    : {
        excerpt: `${size(1)} from the collar to the bottom, as much again on the way out`,
        problem,
        remedy: `Reject the out run, the worse of the two. ${again}: the in run is off at the bottom.`,
      };
}

/** A gyro aligned at the collar that parts from tools that find north. */
function driftBesideWords({ size, sizeSigma }: Found<BlunderName>, beside: readonly Source[]) {
  const others = [...new Set(beside.map(nameOf))].join(' and ');
  return {
    excerpt: `${Math.abs(size).toFixed(1)}° ± ${sizeSigma.toFixed(1)}° ${size > 0 ? 'right' : 'left'} of ${others} at its deepest shot`,
    problem: `the gyro drifts: with depth it parts more and more from ${others}`,
    remedy: `Reject these shots, and keep ${others}. Ask the driller to run the gyro again, with longer stops to let it settle, where it matters.`,
  };
}

/** A drawn azimuth is named where steel adds more than this to it, degrees: about twice what one magnetic reading is off by itself. */
const DRAWN_DEG = 1.5;

/** A magnetic run whose shallow azimuths are drawn, less and less with depth; of a single shot nothing shows that it is less below. */
function steelFinding(
  { hypothesis, size, sizeSigma, others }: Found<BlunderName>,
  sources: readonly Source[],
  { readings }: Evidence,
  at: Place,
): Finding {
  const own = readings.filter((one) => sources.includes(one.source));
  const first = own.reduce((a, b) => (b.depthMm < a.depthMm ? b : a));
  const drawn = own.filter((one) => one === first || Math.abs(size * hypothesis.adds(one)) >= DRAWN_DEG);
  const toMm = Math.max(...drawn.map((one) => one.depthMm));
  const { fromMm: _from, toMm: _to, ...where } = at;
  const away = `${Math.abs(size).toFixed(1)}° ± ${sizeSigma.toFixed(1)}° ${size > 0 ? 'right' : 'left'} at ${formatDepth(first.depthMm)} m`;
  const [other] = others;
  const name = other?.hypothesis.name;
  return magneticInSteel.at(
    { ...where, fromMm: first.depthMm, ...(toMm > first.depthMm ? { toMm } : {}) },
    {
      excerpt: own.length > 1 ? `${away}, less and less with depth` : away,
      problem:
        drawn.length > 1
          ? 'the azimuths of these shots look drawn by steel near the collar (casing, rods, the rig)'
          : 'the azimuth of this shot looks drawn by steel near the collar (casing, rods, the rig)',
      remedy: `Reject ${drawn.length > 1 ? 'these azimuths' : 'the azimuth'} alone: the dip is kept. Ask the driller to survey again with a gyro, or below the steel.${
        name?.what === 'north'
          ? ` Fits about as well: the run reads ${name.blunder.reads}; the next shot tells.`
          : ''
      }`,
    },
  );
}

/** One shot can't be off all the way. */
function offAllTheWay(sources: readonly Source[], { readings }: Evidence, kind: Kind): string {
  return readings.filter((one) => sources.includes(one.source)).length > 1
    ? `the ${kind} of the run is off by about the same all the way`
    : `the ${kind} of the shot is off`;
}

const subject = ([first]: readonly Source[]) => (first?.toolClass === 'line-up' ? 'the line-up' : 'the run');

/** Where a run is: its tool, and from its first shot to its last. */
function placeOf(sources: readonly Source[], { readings }: Evidence, place: Place): Place {
  const [first, ...more] = sources;
  if (first === undefined) return place;
  const depths = readings.filter((one) => sources.includes(one.source)).map((one) => one.depthMm);
  const fromMm = Math.min(...depths);
  const toMm = Math.max(...depths);
  return {
    ...place,
    fromMm,
    ...(toMm > fromMm ? { toMm } : {}),
    thing: more.length > 0 ? first.tool : nameOf(first),
  };
}

const nameOf = ({ tool, pass }: Source) => (pass === 'single' ? tool : `${tool}, ${pass}`);

/** What the evidence is beside: the other runs, the line-up, or the plan. */
function othersBeside(sources: readonly Source[], { readings }: Evidence): string {
  const others = [...new Set(readings.map((one) => one.source))].filter((one) => !sources.includes(one));
  if (others.length === 0) return 'the plan';
  const names = others.map((one) => (one.id === 'line-up' ? 'the line-up' : nameOf(one)));
  return [...new Set(names)].join(' and ');
}

/** `5.8° ± 0.6° right`: how far off, by all that is known. */
function offWords({ hypothesis, size, sizeSigma }: Found<BlunderName>, kind: Kind): string {
  const per = hypothesis.name.what === 'north' ? hypothesis.name.addsDeg : 1;
  const deg = size * per;
  const way = kind === 'azimuth' ? (deg > 0 ? 'right' : 'left') : deg > 0 ? 'shallower' : 'steeper';
  return `${Math.abs(deg).toFixed(1)}° ± ${Math.abs(sizeSigma * per).toFixed(1)}° ${way}`;
}

function angleWords(angle: Unseen['angle'], { angles }: Source): string {
  const deg =
    angle === 'declination'
      ? angles.declinationDeg
      : angle === 'convergence'
        ? angles.convergenceDeg
        : stepBetween('mine-grid', 'grid', angles);
  return `${angle} ${deg === undefined ? 'not known' : formatEastWest(deg)}`;
}

/** Another blunder that fits about as well. */
function asWell({ others }: Found<BlunderName>): string {
  const [other] = others;
  const name = other?.hypothesis.name;
  return name?.what === 'north' ? ` Fits about as well: ${name.blunder.reads}.` : '';
}

/** One magnetic shot near the collar says nothing of why it is off: steel shows alike, and less at the next one. */
function steelAsWell(sources: readonly Source[], { readings }: Evidence): string {
  const [only, ...more] = readings.filter((one) => sources.includes(one.source));
  return only?.source.toolClass === 'magnetic' && more.length === 0 && isNearCollar(only.depthMm)
    ? ' Or steel near the collar (casing, rods) draws it: the next shot tells.'
    : '';
}

/** `grid and true north mixed up (0.4°) can't be seen in tool 7: one sigma is 1.2°`: said where nothing is doubtful, so that silence isn't taken for proof. */
export function unseenWords({ angle, tool, effectDeg, sigmaDeg }: Unseen): string {
  const what =
    angle === 'declination'
      ? 'A slip of the declination'
      : angle === 'convergence'
        ? 'Grid and true north mixed up'
        : 'Mine grid and map grid mixed up';
  return `${what} would be ${effectDeg.toFixed(1)}° and can't be seen in ${tool}: one sigma of what is known is ${sigmaDeg.toFixed(1)}°.`;
}
