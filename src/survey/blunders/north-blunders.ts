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
  /** What to ask, and what to do then. */
  readonly remedy: string;
  readonly applies: (source: Source) => boolean;
  /** What it adds to every azimuth, degrees; undefined where an angle isn't known. */
  readonly addsDeg: (source: Source) => number | undefined;
  /** Its angle in words comes from this: the bearing of a north from another. */
  readonly angle: 'declination' | 'convergence' | 'mine grid rotation';
  /** How often, against a run recorded as it should be: rough, from memory. */
  readonly odds: number;
}

const magnetic = ({ toolClass }: Source) => toolClass === 'magnetic';
const gyro = ({ toolClass }: Source) =>
  toolClass === 'north-seeking gyro' || toolClass === 'gyro aligned at the collar';
const lineUp = ({ toolClass }: Source) => toolClass === 'line-up';
const from =
  (...norths: readonly North[]) =>
  ({ north }: Source) =>
    norths.includes(north);
const both =
  (...all: readonly ((source: Source) => boolean)[]) =>
  (source: Source) =>
    all.every((one) => one(source));

const times = (factor: number) => (source: Source) => {
  const deg = stepBetween('magnetic', 'true', source.angles);
  return deg === undefined ? undefined : factor * deg;
};
/** What it adds when azimuths are recorded as of one north and are of another. */
const reallyFrom = (north: North) => (source: Source) => stepBetween(source.north, north, source.angles);

const RECORD_AGAIN = 'reject these shots and record the run again';
const DECLINATION = { kind: declinationSlip, angle: 'declination' } as const;

/** Every blunder of norths that is looked for. A new one is one entry here. */
export const NORTH_BLUNDERS: readonly NorthBlunder[] = [
  {
    ...DECLINATION,
    reads: 'as if the declination was applied twice',
    remedy: `Does the tool give true azimuths already? If so, ${RECORD_AGAIN} as of true north.`,
    applies: both(magnetic, from('magnetic')),
    addsDeg: times(1),
    odds: 1 / 15,
  },
  {
    ...DECLINATION,
    reads: 'as if the declination was applied twice',
    remedy: `Was it put into the tool and added by hand too? If so, ${RECORD_AGAIN} as the tool gave it.`,
    applies: both(magnetic, from('true', 'grid', 'mine-grid')),
    addsDeg: times(1),
    odds: 1 / 25,
  },
  {
    ...DECLINATION,
    reads: 'as if the declination was left out',
    remedy: `Does the tool give magnetic azimuths? If so, ${RECORD_AGAIN} as of magnetic north.`,
    applies: both(magnetic, from('true', 'grid', 'mine-grid')),
    addsDeg: reallyFrom('magnetic'),
    odds: 1 / 15,
  },
  {
    ...DECLINATION,
    reads: 'as if the declination was left out',
    remedy: `Was the convergence applied without the declination? If so, ${RECORD_AGAIN} as the tool gave it.`,
    applies: both(magnetic, from('grid', 'mine-grid')),
    addsDeg: times(-1),
    odds: 1 / 25,
  },
  {
    ...DECLINATION,
    reads: 'as if the declination was applied with the wrong sign',
    remedy: `East is positive: true = magnetic + declination. Check the sign in the tool; if it is wrong, ${RECORD_AGAIN} as of magnetic north.`,
    applies: both(magnetic, from('true', 'grid', 'mine-grid')),
    addsDeg: times(-2),
    odds: 1 / 25,
  },
  {
    ...DECLINATION,
    reads: 'as if the declination was applied with the wrong sign',
    remedy:
      "East is positive: true = magnetic + declination. Check the sign of the project's declination, and of the one in the tool.",
    applies: both(magnetic, from('magnetic')),
    addsDeg: times(2),
    odds: 1 / 40,
  },
  {
    kind: northSlip,
    angle: 'declination',
    reads: 'as if true azimuths of a gyro were recorded as magnetic',
    remedy: `A gyro doesn't find magnetic north. Unless somebody turned its azimuths, ${RECORD_AGAIN} as of true north.`,
    applies: both(gyro, from('magnetic')),
    addsDeg: reallyFrom('true'),
    odds: 4,
  },
  {
    kind: northSlip,
    angle: 'declination',
    reads: 'as if grid azimuths of a gyro were recorded as magnetic',
    remedy: `A gyro doesn't find magnetic north. Unless somebody turned its azimuths, ${RECORD_AGAIN} as of grid north.`,
    applies: both(gyro, from('magnetic')),
    addsDeg: reallyFrom('grid'),
    odds: 1,
  },
  {
    kind: northSlip,
    angle: 'declination',
    reads: 'as if grid azimuths were recorded as magnetic',
    remedy: `Which north was the tool set to give? If grid, ${RECORD_AGAIN} as of grid north.`,
    applies: both(magnetic, from('magnetic')),
    addsDeg: reallyFrom('grid'),
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
      remedy: `Which north was the tool set to give? If ${named(really)}, ${RECORD_AGAIN} as of ${named(really)} north.`,
      applies: both((source) => !lineUp(source), from(recorded)),
      addsDeg: reallyFrom(really),
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
      remedy: `Which north was the rig set by? If ${named(really)}, make the line-up again as of ${named(really)} north.`,
      applies: both(lineUp, from(recorded)),
      addsDeg: reallyFrom(really),
      odds,
    },
  ];
}
