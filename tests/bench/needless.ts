import type { LoggingSchema } from '../../src/schema/logging-schema.ts';
import { parseLine } from '../../src/shorthand/parse.ts';
import { isNewRock } from '../../src/shorthand/rock.ts';
import { type RowSaid, sameObservation } from '../../src/value/row.ts';
import { resolveStyle } from '../support/styles.ts';
import { HANDS, type Hand, typedBy } from './believable-lines.ts';
import { believableLog } from './believable-log.ts';
import { type Placed, placed } from './shorthand-costs.ts';
import { slipsIn } from './shorthand-errors.ts';
import { generatedLog, seeded } from './shorthand-log.ts';

const STYLES_SHOWN = ['orogenic-gold', 'porphyry-copper-gold', 'lithium-pegmatite'] as const;
const HOLES = 6;
const METRES = 100;

/** Where logs are from: ours, which the rules were set on, and the ones that no rule was set on. Fresh seeds for both. */
const LOGS: { readonly [from: string]: (schema: LoggingSchema, hole: number) => readonly RowSaid[] } = {
  'held out': (schema, hole) => believableLog(schema, 2500 + hole, METRES),
  ours: (schema, hole) => generatedLog(schema, 2500 + hole, 'restless', METRES),
};

/** A question of a line: its rule, and whether the line brings a new rock. */
type Question = { readonly about: string; readonly atContact: boolean };

/** Points of the curve: questions that would not be asked any more. The first asks all that is asked today. */
const POINTS: { readonly [point: string]: (question: Question) => boolean } = {
  'as it is': () => false,
  'percents jump freely at a contact': ({ about, atContact }) => about === 'percent step' && atContact,
  'any percent, on the ladder or off': ({ about }) => about === 'off the ladder',
  'both of these': ({ about, atContact }) =>
    about === 'off the ladder' || (about === 'percent step' && atContact),
  'percents are never asked': ({ about }) => about === 'off the ladder' || about === 'percent step',
  'nothing is asked': () => true,
};

type Point = { needless: number; silent: number; noted: number };

/** What a line is stopped for; undefined where it is refused, which no point lets through. */
function questionsOf(line: string, { context }: Placed) {
  const read = parseLine(line, context);
  if (read.kind !== 'row') return undefined;
  const atContact = isNewRock(context.schema, context.above, read.row.cells);
  return { ...read, questions: read.asks.map(({ about }): Question => ({ about, atContact })) };
}

/** Every point of the curve for one way of typing, as shares of rows and of slips. */
function curveOf(rows: readonly Placed[], hand: Hand): readonly (readonly [point: string, Point])[] {
  const random = seeded(11);
  const points = Object.keys(POINTS).map((name): readonly [string, Point] => [
    name,
    { needless: 0, silent: 0, noted: 0 },
  ]);
  let slips = 0;
  for (const each of rows) {
    const line = typedBy(hand, each, random);
    const right = questionsOf(line, each);
    const wrong = slipsIn(line).map((slip) => questionsOf(slip, each));
    slips += wrong.length;
    for (const [name, point] of points) {
      const stops = (asked: readonly Question[]) => asked.some((question) => !POINTS[name]?.(question));
      if (right === undefined || stops(right.questions)) point.needless += 1;
      for (const read of wrong) {
        if (read === undefined || stops(read.questions) || sameObservation(read.row, each.row)) continue;
        point[read.notes.length > 0 ? 'noted' : 'silent'] += 1;
      }
    }
  }
  return points.map(([name, { needless, silent, noted }]) => [
    name,
    { needless: needless / rows.length, silent: silent / slips, noted: noted / slips },
  ]);
}

const percent = (share: number): string => `${(100 * share).toFixed(2)} %`;

/**
 * Needless stops against silent slips, point by point: of each the mean of the hands, and hand by hand. "Strict" counts a slip that only a note in
 * the echo gives away as silent; the other figure counts it as said.
 */
export function needlessCurve(): readonly string[] {
  return STYLES_SHOWN.flatMap((style) => {
    const schema = resolveStyle(style);
    if (schema === undefined) throw new Error(`no style is called ${style}`);
    return Object.entries(LOGS).flatMap(([from, log]) =>
      [false, true].flatMap((gloves) => {
        const rows = Array.from({ length: HOLES }, (_, hole) =>
          placed(schema, log(schema, hole), gloves),
        ).flat();
        const curves = HANDS.map((hand) => curveOf(rows, hand));
        return [
          `${style}, ${from}${gloves ? ', gloves mode' : ''}: needless stops · silent slips, strict · silent, notes counted as said`,
          ...Object.keys(POINTS).map((name, index) => {
            const hands = curves.map((curve) => curve[index]?.[1] ?? { needless: 0, silent: 0, noted: 0 });
            const shown = (of: (point: Point) => number) =>
              `${percent(hands.reduce((sum, point) => sum + of(point), 0) / hands.length)} (${hands.map((point) => percent(of(point))).join(', ')})`;
            return `  ${name}: ${shown((point) => point.needless)} · ${shown(({ silent, noted }) => silent + noted)} · ${shown(({ silent }) => silent)}`;
          }),
        ];
      }),
    );
  });
}
