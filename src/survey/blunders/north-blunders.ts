import type { FindingKind } from '../../finding/finding.ts';
import type { North } from '../../quantity/azimuth.ts';
import { declinationSlip, northSlip } from '../findings.ts';
import { stepBetween } from '../norths/norths.ts';
import type { Source } from './evidence.ts';

/** A way in which azimuths get recorded from the wrong north: every one of a run turned by the same known angle. */
export interface NorthBlunder {
  readonly kind: FindingKind;
  /** What it reads as: `as if the declination was applied twice`. */
  readonly reads: string;
  /** What to ask before anything is changed. */
  readonly question: string;
  readonly applies: (source: Source) => boolean;
  /** What was done: azimuths of one north recorded as of another, or so many declinations too much put into them. */
  readonly slip: { readonly really: North } | { readonly declinations: number };
  /** Its angle in words comes from this: the bearing of a north from another. */
  readonly angle: 'declination' | 'convergence' | 'mine grid rotation';
  /** How often, against a run recorded as it should be: rough, from memory. */
  readonly odds: number;
}

/** What a blunder adds to every azimuth, degrees; undefined where an angle isn't known. */
export function addsDeg({ slip }: NorthBlunder, { north, angles }: Source): number | undefined {
  if ('really' in slip) return stepBetween(north, slip.really, angles);
  const deg = stepBetween('magnetic', 'true', angles);
  return deg === undefined ? undefined : slip.declinations * deg;
}

/** How the azimuths are recorded rightly: from which north, and what is added to each as it was recorded, degrees. */
export interface RecordedAgain {
  readonly north: North;
  readonly plusDeg: number;
}

/** What undoes a blunder: the same azimuths as of the north that they are really of, or freed of what was put into them. */
export function recordedAgain(blunder: NorthBlunder, source: Source): RecordedAgain {
  return 'really' in blunder.slip
    ? { north: blunder.slip.really, plusDeg: 0 }
    : { north: source.north, plusDeg: -(addsDeg(blunder, source) ?? 0) };
}

/** What to ask, and what to do then: words of {@link recordedAgain}. */
export function northRemedy(blunder: NorthBlunder, source: Source): string {
  const { north, plusDeg } = recordedAgain(blunder, source);
  if (source.toolClass === 'line-up')
    return `${blunder.question} make the line-up again as of ${named(north)} north.`;
  const plus =
    plusDeg === 0
      ? ''
      : `, ${Math.abs(plusDeg).toFixed(1)}° ${plusDeg > 0 ? 'added to' : 'taken off'} each azimuth`;
  const asTool =
    source.toolClass === 'magnetic' && blunder.reads.includes('gyro')
      ? ', the tool as a gyro'
      : source.toolClass !== 'magnetic' && north === 'magnetic'
        ? ', the tool as magnetic'
        : '';
  return `${blunder.question} reject these shots and record the run again as of ${named(north)} north${plus}${asTool}.`;
}

const magnetic = ({ toolClass }: Source) => toolClass === 'magnetic';
/** A gyro by its class; or by its name, where its class was given as magnetic. */
const gyro = (source: Source) =>
  source.toolClass === 'north-seeking gyro' ||
  source.toolClass === 'gyro aligned at the collar' ||
  (magnetic(source) && isCalledGyro(source));
const lineUp = ({ toolClass }: Source) => toolClass === 'line-up';
const from =
  (...norths: readonly North[]) =>
  ({ north }: Source) =>
    norths.includes(north);
const both =
  (...all: readonly ((source: Source) => boolean)[]) =>
  (source: Source) =>
    all.every((one) => one(source));

/** True where the name of a tool says that it is a gyro, whatever class it was given. */
export function isCalledGyro({ tool }: Pick<Source, 'tool'>): boolean {
  return /gyro/i.test(tool);
}

const DECLINATION = { kind: declinationSlip, angle: 'declination' } as const;

/** Every blunder of norths that is looked for. A new one is one entry here. */
export const NORTH_BLUNDERS: readonly NorthBlunder[] = [
  {
    ...DECLINATION,
    reads: 'as if the declination was applied twice',
    question: 'Does the tool give true azimuths already? If so,',
    applies: both(magnetic, from('magnetic')),
    slip: { really: 'true' },
    odds: 1 / 15,
  },
  {
    ...DECLINATION,
    reads: 'as if the declination was applied twice',
    question: 'Was it put into the tool and added by hand too? If so,',
    applies: both(magnetic, from('true', 'grid', 'mine-grid')),
    slip: { declinations: 1 },
    odds: 1 / 25,
  },
  {
    ...DECLINATION,
    reads: 'as if the declination was left out',
    question: 'Does the tool give magnetic azimuths? If so,',
    applies: both(magnetic, from('true', 'grid', 'mine-grid')),
    slip: { really: 'magnetic' },
    odds: 1 / 15,
  },
  {
    ...DECLINATION,
    reads: 'as if the declination was left out',
    question: 'Was the convergence applied without the declination? If so,',
    applies: both(magnetic, from('grid', 'mine-grid')),
    slip: { declinations: -1 },
    odds: 1 / 25,
  },
  {
    ...DECLINATION,
    reads: 'as if the declination was applied with the wrong sign',
    question:
      'East is positive: true = magnetic + declination. Check the sign in the tool or on the sheet; if it is wrong,',
    applies: both(magnetic, from('true', 'grid', 'mine-grid')),
    slip: { declinations: -2 },
    odds: 1 / 25,
  },
  {
    ...DECLINATION,
    reads: 'as if the declination was applied with the wrong sign',
    question:
      "East is positive: true = magnetic + declination. Where the sign of the project's declination is wrong, turn it; else",
    applies: both(magnetic, from('magnetic')),
    slip: { declinations: 2 },
    odds: 1 / 40,
  },
  {
    ...DECLINATION,
    reads: 'as if the declination was taken off its magnetic azimuths',
    question: 'Was it taken off by hand, or is the tool set to do so? If so,',
    applies: both(magnetic, from('magnetic')),
    slip: { declinations: -1 },
    odds: 1 / 60,
  },
  {
    ...DECLINATION,
    reads: 'as if the declination was left out',
    question: 'Does the tool find magnetic north, or is it set to give it? If so,',
    applies: both(({ toolClass }) => toolClass === 'north-seeking gyro', from('true', 'grid', 'mine-grid')),
    slip: { really: 'magnetic' },
    odds: 1 / 60,
  },
  {
    kind: northSlip,
    angle: 'declination',
    reads: 'as if true azimuths of a gyro were recorded as magnetic',
    question: "A gyro doesn't find magnetic north. Unless someone turned its azimuths,",
    applies: both(gyro, from('magnetic')),
    slip: { really: 'true' },
    odds: 4,
  },
  {
    kind: northSlip,
    angle: 'declination',
    reads: 'as if grid azimuths of a gyro were recorded as magnetic',
    question: "A gyro doesn't find magnetic north. Unless someone turned its azimuths,",
    applies: both(gyro, from('magnetic')),
    slip: { really: 'grid' },
    odds: 1,
  },
  {
    kind: northSlip,
    angle: 'declination',
    reads: 'as if grid azimuths were recorded as magnetic',
    question: 'Which north was the tool set to give? If grid,',
    applies: both(magnetic, from('magnetic')),
    slip: { really: 'grid' },
    odds: 1 / 150,
  },
  ...mixedUp('true', 'grid', 'convergence', 1 / 10),
  ...mixedUp('grid', 'true', 'convergence', 1 / 10),
  ...mixedUp('grid', 'mine-grid', 'mine grid rotation', 1 / 100),
  ...mixedUp('mine-grid', 'grid', 'mine grid rotation', 1 / 100),
  ...mixedUp('mine-grid', 'true', 'mine grid rotation', 1 / 150),
  ...mixedUp('true', 'mine-grid', 'mine grid rotation', 1 / 150),
  ...lineUpMixedUp('magnetic', 'true', 'declination', 1 / 150),
  ...lineUpMixedUp('magnetic', 'grid', 'declination', 1 / 150),
  ...lineUpMixedUp('grid', 'magnetic', 'declination', 1 / 200),
  ...lineUpMixedUp('true', 'magnetic', 'declination', 1 / 200),
  ...lineUpMixedUp('grid', 'true', 'convergence', 1 / 100),
  ...lineUpMixedUp('true', 'grid', 'convergence', 1 / 100),
];

function named(north: North): string {
  return north === 'mine-grid' ? 'mine grid' : north;
}

/** Azimuths of one north recorded as of another, whatever the tool. */
function mixedUp(
  recorded: North,
  really: North,
  angle: NorthBlunder['angle'],
  odds: number,
): readonly NorthBlunder[] {
  return [
    {
      kind: northSlip,
      angle,
      reads: `as if ${named(really)} azimuths were recorded as ${named(recorded)}`,
      question: `Which north was the tool set to give? If ${named(really)},`,
      applies: both((source) => !lineUp(source), from(recorded)),
      slip: { really },
      odds,
    },
  ];
}

/** The same of the line-up. */
function lineUpMixedUp(
  recorded: North,
  really: North,
  angle: NorthBlunder['angle'],
  odds: number,
): readonly NorthBlunder[] {
  return [
    {
      kind: northSlip,
      angle,
      reads: `as if its ${named(really)} azimuth was recorded as ${named(recorded)}`,
      question: `Which north was the rig set by? If ${named(really)},`,
      applies: both(lineUp, from(recorded)),
      slip: { really },
      odds,
    },
  ];
}
