import { guessOf } from '../../src/schema/change/guessable.ts';
import { proposeStrokes } from '../../src/schema/change/propose-strokes.ts';
import { withStrokes } from '../../src/schema/change/with-strokes.ts';
import type { LoggingSchema } from '../../src/schema/logging-schema.ts';
import { type Stroke, strokesOf } from '../../src/schema/strokes.ts';
import { STYLES } from '../../src/schema/styles/index.ts';
import { parseLine } from '../../src/shorthand/parse.ts';
import { codeNamed } from '../../src/shorthand/slots.ts';
import { writeLine } from '../../src/shorthand/write.ts';
import type { RowSaid } from '../../src/value/row.ts';
import { resolveStyle } from '../support/styles.ts';
import { changesIn, floorOf, placed } from './shorthand-costs.ts';
import { slipsOver } from './shorthand-errors.ts';
import { generatedLog } from './shorthand-log.ts';

/** Terms that are logged most and must all be guessed by their first letter and their order. */
const COMMON = 20;
const HOLES = 4;
const METRES = 80;
/** What it is worth that a slip doesn't read as something else, from nothing up: the points of the curve. */
const WORTHS = [0, 1, 2, 3, 5, 8] as const;

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
const share = <T>(all: readonly T[], holds: (each: T) => boolean): number =>
  all.length === 0 ? 1 : all.filter(holds).length / all.length;

/** How often a thing that strokes can name is typed in the shortest lines of some rows. */
function usesIn(
  schema: LoggingSchema,
  logs: readonly (readonly RowSaid[])[],
): (part: Stroke['part']) => number {
  const counts = new Map<string, number>();
  const count = (name: string): void => void counts.set(name, (counts.get(name) ?? 0) + 1);
  for (const { row, context } of logs.flatMap((rows) => placed(schema, rows, false))) {
    const parsed = parseLine(writeLine(row, context), context);
    for (const item of parsed.kind === 'row' ? parsed.said : []) {
      const { field, says } = item;
      const list = 'quality' in says ? says.list : 'list' in field ? field.list : undefined;
      const code = 'quality' in says ? says.quality : codeNamed(item);
      count(list === undefined || code === undefined ? field.name : `${list} ${code}`);
    }
  }
  return (part) =>
    counts.get('field' in part ? part.field : 'list' in part ? `${part.list} ${part.code}` : '') ?? 0;
}

/** How far pairs can be guessed, against the slips that pass in silence, of one choice of strokes. */
function pointOf(schema: LoggingSchema, logs: readonly (readonly RowSaid[])[]): string {
  const uses = usesIn(schema, logs);
  const pairs = strokesOf(schema)
    .filter(({ is, code }) => is === 'pair' && code?.retiredSince === undefined)
    .toSorted((a, b) => uses(b.part) - uses(a.part))
    .map((stroke) => guessOf(stroke.label, stroke.strokes));
  const common = pairs.slice(0, COMMON);
  const bare = logs.flatMap((rows) => placed(schema, rows, false));
  const gloved = logs.flatMap((rows) => placed(schema, rows, true));
  const [slips, gloveSlips] = [slipsOver(bare), slipsOver(gloved)];
  const keys = bare.reduce((sum, { row, context }) => sum + writeLine(row, context).length + 1, 0);
  const floor = bare.reduce((sum, each) => sum + floorOf(changesIn(each)), 0);
  return [
    `first letter ${percent(share(pairs, ({ first }) => first))} (aim 95)`,
    `both in order ${percent(share(pairs, ({ inOrder }) => inOrder))} (aim 85)`,
    `of the ${COMMON} most used ${common.filter(({ first, inOrder }) => first && inOrder).length}`,
    `silent ${percent(slips.silent / slips.slips)} (aim 2), noted ${percent(slips.noted / slips.slips)}`,
    `gloves ${percent(gloveSlips.silent / gloveSlips.slips)} (aim 1)`,
    `keys ${(keys / floor).toFixed(3)} × the floor (aim 1.15)`,
  ].join('; ');
}

/** Of each style the strokes that it has, then those that would be proposed, from guessed at any price to apart at any price. */
export function guessingLines(): readonly string[] {
  return Object.keys(STYLES).flatMap((name) => {
    const style = resolveStyle(name);
    if (style === undefined) return [];
    const logs = Array.from({ length: HOLES }, (_, index) =>
      generatedLog(style, 100 + index, 'ordinary', METRES),
    );
    const uses = usesIn(style, logs);
    const curve = WORTHS.map((apart) => {
      const chosen = proposeStrokes(style, { again: true, apart, uses });
      return `  ${name}, proposed, a slip weighed ${apart}: ${pointOf(withStrokes(style, chosen), logs)}`;
    });
    return [`  ${name}, as it is: ${pointOf(style, logs)}`, ...curve];
  });
}
