import { instantMs, localTime, type Stamp, stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { type Stretch, stretchesOf } from './align.ts';
import { shiftHeaderOf, shiftThings } from './shift.ts';
import { offsetsOf } from './shift-clock.ts';
import type { DrilledMetres } from './shift-record.ts';
import { activityNamed, type ShiftRules } from './shift-rules.ts';

/** Minutes that one cell of a timeline stands for. */
const CELL_MIN = 15;

/**
 * A shift as lines of text, a cell a quarter of an hour: hours, the record and the plod by the key of the activity (`.` nothing, `?`
 * not in the list, `+` two lines at once), metres by rod, and a mark under each cell in which the two differ: `^` another activity, `h`
 * another hole. No line tells anything by colour. A cell shows what takes most of it.
 */
export function timelineOf(
  shift: Document,
  metres: readonly DrilledMetres[],
  rules: ShiftRules,
  now: Stamp,
): readonly string[] {
  const { startsAt, endedAt } = shiftHeaderOf(shift);
  const first = Math.floor(instantMs(startsAt) / 60_000 / CELL_MIN) * CELL_MIN;
  const last = Math.floor(instantMs(endedAt ?? now) / 60_000);
  const cells = Math.min(96, Math.max(1, Math.ceil((last - first) / CELL_MIN)));
  const each = Array.from({ length: cells }, (_, index) => first + index * CELL_MIN);
  const stretches = stretchesOf(shift, now).map((one) => ({
    ...one,
    fromMin: Math.floor(instantMs(one.from) / 60_000),
    toMin: Math.floor(instantMs(one.to) / 60_000),
  }));
  const most = (cell: number) =>
    stretches
      .map((one) => ({ one, min: Math.min(cell + CELL_MIN, one.toMin) - Math.max(cell, one.fromMin) }))
      .filter(({ min }) => min > 0)
      .reduce<{ one: (typeof stretches)[number]; min: number } | undefined>(
        (best, next) => (best === undefined || next.min > best.min ? next : best),
        undefined,
      )?.one;
  const key = (code: string): string => activityNamed(rules, code)?.key ?? '?';
  const own = each.map((cell) => {
    const span = most(cell)?.own;
    return span === undefined ? '.' : key(span.activity);
  });
  const plod = each.map((cell) => {
    const [line, other] = most(cell)?.plod ?? [];
    if (other !== undefined) return '+';
    return line === undefined ? '.' : key(line.line.activity);
  });
  const drilled = each.map((cell) => {
    const mm = metres
      .filter(({ at }) => at !== undefined && inCell(at, cell))
      .reduce((sum, { fromMm, toMm }) => sum + toMm - fromMm, 0);
    const whole = Math.round(mm / 1000);
    return whole === 0 ? '.' : whole > 9 ? '*' : String(whole);
  });
  const hasTimes = plod.some((cell) => cell !== '.');
  const record = [`record  ${own.join('')}`];
  const sheet = hasTimes ? [`plod    ${plod.join('')}`] : [];
  const marks = hasTimes
    ? [
        `differs ${each
          .map((cell, index) => (own[index] === plod[index] ? (isOtherHole(most(cell)) ? 'h' : ' ') : '^'))
          .join('')}`,
      ]
    : [];
  return [
    rulerOf(each, offsetsOf([startsAt, ...stretches.map(({ from }) => from)])),
    ...record,
    ...sheet,
    `metres  ${drilled.join('')}`,
    ...marks,
  ].map((line) => line.trimEnd());
}

/** True where both sides name a hole over a stretch, and not the same. */
const isOtherHole = (stretch: Stretch | undefined): boolean => {
  const [ours, theirs] = [stretch?.own?.hole, stretch?.plod[0]?.line.hole];
  return ours !== undefined && theirs !== undefined && ours !== theirs;
};

const inCell = (at: Stamp, cell: number): boolean => {
  const minute = Math.floor(instantMs(at) / 60_000);
  return minute >= cell && minute < cell + CELL_MIN;
};

/** The hour above its first cell, as `06`. */
function rulerOf(cells: readonly number[], offsetAt: (ms: number) => number): string {
  const marks = cells.map((cell) => localTime(stamp(cell * 60_000, offsetAt(cell * 60_000))));
  let line = '        ';
  for (const [index, mark] of marks.entries()) {
    if (line.length > 8 + index) continue;
    line += mark.endsWith(':00') ? mark.slice(0, 2) : ' ';
  }
  return line;
}

/** The legend of a timeline in lines of a terminal, under its cells. */
export function timelineLegend(keys: string): readonly string[] {
  const lines: string[] = [];
  for (const part of keys.split(', ')) {
    const last = lines.at(-1);
    if (part === '') continue;
    if (last === undefined || last.length + part.length > 76) lines.push(`        ${part}`);
    else lines[lines.length - 1] = `${last}, ${part}`;
  }
  return lines;
}

/** Activities that are on a timeline with their keys, for its legend. */
export function timelineKeys(shift: Document, rules: ShiftRules): string {
  const codes = new Set([
    ...shiftThings(shift, 'activities').map(([, each]) => each.activity),
    ...shiftThings(shift, 'plodLines').map(([, each]) => each.activity),
  ]);
  const keys = rules.activities
    .filter((each) => codes.has(each.code))
    .map((each) => `${each.key} ${each.label.toLowerCase()}`);
  const hasSheet = shiftThings(shift, 'plodLines').some(([, each]) => each.startsAt !== undefined);
  return [...keys, ...(hasSheet ? ['under differs: ^ another activity, h another hole'] : [])].join(', ');
}
