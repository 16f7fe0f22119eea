import type { EntryFigures } from './shorthand-figures.ts';

/** An aim of the entry line, and what is in its way where it is missed. */
type Aim = {
  readonly what: string;
  readonly holds: (figures: EntryFigures) => boolean;
  readonly inTheWay: (figures: EntryFigures) => string;
};

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

const overWords = ({ over }: EntryFigures): string =>
  over.map(({ cause, share }) => `${cause} ${percent(share)}`).join(', ');

const askWords = ({ rules }: EntryFigures): string =>
  rules
    .filter(({ asked }) => asked > 0)
    .map(
      ({ about, asked, caught }) =>
        `${about} ${percent(asked)} of rows, catching ${percent(caught)} of slips`,
    )
    .join('; ');

/** Where the floor itself costs more than the share of another form that is aimed at, no line can reach the aim. */
function floorWords(figures: EntryFigures, others: number): string {
  const { floorMean, likeness } = figures;
  const still = `${percent(likeness.unchanged)} of rows say nothing new: two keys against four`;
  return floorMean > others / 3
    ? `the floor itself, ${floorMean.toFixed(2)} keys, is 1/${(others / floorMean).toFixed(2)}; ${still}`
    : `over the floor: ${overWords(figures)}; ${still}`;
}

const AIMS: readonly Aim[] = [
  {
    what: 'keys at most 1.15 × the floor',
    holds: (each) => each.keysMean <= 1.15 * each.floorMean,
    inTheWay: (each) => `over the floor: ${overWords(each)}`,
  },
  {
    what: 'keys at most 1/6 of a spreadsheet row (up to 2.5 changes a row)',
    holds: (each) => each.changesPerRow > 2.5 || each.keysMean <= each.spreadsheetKeys / 6,
    inTheWay: (each) => `over the floor: ${overWords(each)}`,
  },
  {
    what: 'keys at most 1/3 of copy-down',
    holds: (each) => each.keysMean <= each.copyDownKeys / 3,
    inTheWay: (each) => floorWords(each, each.copyDownKeys),
  },
  {
    what: 'silent slips at most 2 %',
    holds: (each) => each.silent <= 0.02,
    inTheWay: (each) => `asked: ${askWords(each)}`,
  },
  {
    what: 'silent slips in gloves mode at most 1 %',
    holds: (each) => each.gloveSilent <= 0.01,
    inTheWay: (each) => `${percent(each.gloveAsked)} of rows are asked in gloves mode`,
  },
  {
    what: 'wrong rock at most 0.1 %',
    holds: (each) => each.wrongRock <= 0.001,
    inTheWay: () => 'pairs of rocks one slip from something else: see the check of the schema',
  },
  {
    what: 'asked at most 7 % of rows',
    holds: (each) => each.asked <= 0.07,
    inTheWay: (each) => `asked: ${askWords(each)}`,
  },
];

/** A line for each aim that is missed, with what is in its way. */
export function missedLines(figures: EntryFigures): readonly string[] {
  return AIMS.filter(({ holds }) => !holds(figures)).map(
    ({ what, inTheWay }) => `  AIM MISSED: ${what}. In the way: ${inTheWay(figures)}`,
  );
}
