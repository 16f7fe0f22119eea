import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { type Depth, parseDepth } from '../quantity/depth.ts';
import { formatInterval, type Interval, lengthMm, overlaps, within } from '../quantity/interval.ts';
import {
  formatMinutes,
  instantMs,
  localTime,
  minutesBetween,
  offsetMin,
  type Stamp,
  stamp,
} from '../quantity/stamp.ts';
import { SHIFT_REFUSALS } from './findings.ts';
import type { LineWords } from './record-line.ts';
import type { Plod, PlodLine } from './shift.ts';
import { AHEAD_MS, firstFrom, minuteOfClock } from './shift-clock.ts';

/** A line of a plod before the sheet that it is on is recorded. */
export type NewPlodLine = Omit<PlodLine, 'plod'>;

/** What a line of a plod says, from whatever it was typed or read; times are minutes of the local day. */
export interface PlodParts {
  readonly from?: number;
  readonly to?: number;
  /** Minutes, where the sheet has hours and no times. */
  readonly minutes?: number;
  readonly activity?: string;
  readonly hole?: string;
  readonly fromMm?: Depth;
  readonly toMm?: Depth;
  /** The metres that the sheet calls wet: all that the line claims, or some of them. */
  readonly wet?: 'all' | Interval;
  readonly shots?: number;
  readonly beside?: readonly string[];
  readonly used?: readonly { readonly item: string; readonly count: number }[];
  readonly remark?: string;
}

/** What a line of a plod is read against: the words, the shift's hours, the lines above it, how deep each hole is. */
export interface PlodContext extends LineWords {
  readonly startsAt: Stamp;
  readonly endsAt: Stamp;
  /** Now, where the shift may go on: hours that have not come are no hours yet. */
  readonly now?: Stamp;
  /** Stamps of the shift: where a change of the clock is among them, times on either side are read by their own clock. */
  readonly stamps: readonly Stamp[];
  readonly above: readonly NewPlodLine[];
  /** Metres drilled by rod count, by hole. */
  readonly drilledMm: ReadonlyMap<string, Depth>;
}

/** What is said of a sheet as a whole, on a line of its own. */
export type SheetPart = Pick<Plod, 'crew' | 'remark'>;

/** Reads `crew Bo Hale, Cy Tan` or `remark no rods left`; undefined where the line is about something else. */
export function parseSheetPart(text: string): Result<SheetPart> | undefined {
  const [, word, rest = ''] = /^(crew|remark)\b *(.*)$/i.exec(text.trim()) ?? [];
  if (word === undefined) return undefined;
  if (word.toLowerCase() === 'remark')
    return rest === ''
      ? refused(unread(text, 'remark needs words', 'Type remark no rods left.'))
      : ok({ remark: rest });
  const crew = rest
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '');
  return crew.length === 0
    ? refused(unread(text, 'crew needs names', 'Type crew Bo Hale, Cy Tan.'))
    : ok({ crew });
}

/** How long after the end of a shift a line of its plod may end: overtime, not another day. */
const PAST_END_MS = 4 * 3_600_000;

/** How a line of a plod is typed, for the help. */
export const PLOD_FORMS: readonly (readonly [form: string, does: string])[] = [
  ['06:00-07:30 d ZQRC014 0-54', 'times, activity or its key, hole, metres'],
  ['-1100 d -72', 'from where the line above ended'],
  ['1:30h standby', 'hours, where the sheet has no times'],
  ['-1120 v 2sh', 'two survey shots'],
  ['-1500 d -96 wet', 'its metres are wet; wet80-96, some of them'],
  ['-1500 d -96 +booster', 'what ran beside it, paid by the hour'],
  ['-1200 m used 1 hammer bit: worn', 'consumables, then a remark after a colon'],
  ["-1200 'daywork'", 'an activity that is not in our list'],
  ['crew Bo Hale, Cy Tan', 'the crew; remark … for the whole sheet'],
  ['… =', 'as the sheet says, though it looks wrong'],
];

/**
 * Reads one line of a plod as typed, and holds it against the shift and the lines above. Refused where it can't be read, runs
 * backward, overlaps, or claims metres that the hole hasn't got; a last `=` takes the last two as the sheet has them.
 */
export function parsePlodLine(text: string, context: PlodContext): Result<NewPlodLine> {
  const insisted = / *=$/.test(text.trimEnd());
  const line = insisted ? text.trimEnd().replace(/ *=$/, '') : text;
  const parts = parsePlodParts(line, context);
  return parts.ok ? plodLineOf(parts.value, context, line, insisted) : parts;
}

/** The line that parts make, whatever they were read from. `excerpt` is what was typed. */
export function plodLineOf(
  parts: PlodParts,
  context: PlodContext,
  excerpt: string,
  insisted: boolean,
): Result<NewPlodLine> {
  const fault = (problem: string, remedy: string): Result<never> => refused(unread(excerpt, problem, remedy));
  if (parts.activity === undefined)
    return fault(
      'no activity is named',
      `Name one: ${context.activities.map((each) => each.code).join(', ')}.`,
    );
  const times = timesOf(parts, context);
  if (typeof times === 'string')
    return fault(times, 'Give the time it started, then the time it ended: 06:00-07:30.');
  const hole = parts.hole ?? (needsHole(parts) ? holeAbove(context.above) : undefined);
  if (hole === undefined && needsHole(parts))
    return fault('it has metres or shots, but no hole', 'Ask the driller which hole it was.');
  const metres = metresOf(parts, hole, context.above);
  if (typeof metres === 'string') return fault(metres, 'Give both: 54-72.');
  const wet = parts.wet === undefined ? {} : wetMetres(parts.wet, metres);
  if (typeof wet === 'string') return fault(wet, 'Say which of its metres: 54-72 wet, or 54-72 wet60-66.');
  const { activity, shots, beside, used, remark } = parts;
  const line: NewPlodLine = {
    activity,
    ...times,
    ...(hole === undefined ? {} : { hole }),
    ...metres,
    ...wet,
    ...(shots === undefined ? {} : { shots }),
    ...(beside === undefined ? {} : { beside: [...beside] }),
    ...(used === undefined ? {} : { used: [...used] }),
    ...(remark === undefined ? {} : { remark }),
  };
  const doubt = insisted ? undefined : doubtOf(line, context);
  return doubt === undefined
    ? ok(line)
    : fault(doubt, 'Read the sheet again. If it says so, type = at the end; it is queried later.');
}

const needsHole = (parts: PlodParts): boolean =>
  parts.fromMm !== undefined || parts.toMm !== undefined || (parts.shots ?? 0) > 0;

const holeAbove = (above: readonly NewPlodLine[]): string | undefined =>
  above.findLast((line) => line.hole !== undefined)?.hole;

type Times = Pick<NewPlodLine, 'minutes' | 'startsAt' | 'endsAt'>;

function timesOf(parts: PlodParts, { startsAt, endsAt, stamps, above }: PlodContext): Times | string {
  const known = [startsAt, ...stamps, endsAt];
  if (parts.to === undefined)
    return parts.minutes === undefined ? 'it has neither times nor hours' : { minutes: parts.minutes };
  const from =
    parts.from === undefined
      ? (above.at(-1)?.endsAt ?? startsAt)
      : firstFrom(parts.from, stamp(instantMs(startsAt) - 3 * 3_600_000, offsetMin(startsAt)), known);
  const to = firstFrom(parts.to, from, known);
  const minutes = minutesBetween(from, to);
  const clocks = `${localTime(from)}–${localTime(to)}`;
  if (minutes === 0) return `${clocks} takes no time`;
  if (instantMs(to) > instantMs(endsAt) + PAST_END_MS) return `${clocks} runs backward`;
  return { minutes, startsAt: from, endsAt: to };
}

function metresOf(
  { fromMm, toMm }: PlodParts,
  hole: string | undefined,
  above: readonly NewPlodLine[],
): Pick<NewPlodLine, 'fromMm' | 'toMm'> | string {
  if (toMm === undefined) return fromMm === undefined ? {} : 'only the top of its metres is given';
  const top = fromMm ?? above.findLast((line) => line.hole === hole && line.toMm !== undefined)?.toMm;
  if (top === undefined) return 'no line above says where its metres begin';
  return top < toMm
    ? { fromMm: top, toMm }
    : `its metres end at or above where they start, ${formatInterval({ fromMm: top, toMm })}`;
}

/** The wet metres of a line, which are among those that it claims. */
function wetMetres(
  wet: 'all' | Interval,
  { fromMm, toMm }: Pick<NewPlodLine, 'fromMm' | 'toMm'>,
): Pick<NewPlodLine, 'wetFromMm' | 'wetToMm'> | string {
  if (fromMm === undefined || toMm === undefined) return 'it calls metres wet and claims none';
  const claimed = { fromMm, toMm };
  const said = wet === 'all' ? claimed : wet;
  if (said.toMm <= said.fromMm || !within(said, claimed))
    return `wet ${formatInterval(said)} is not among its metres, ${formatInterval(claimed)}`;
  return { wetFromMm: said.fromMm, wetToMm: said.toMm };
}

/** The metres that `wet`, or `wet60-66`, calls wet; undefined where the text is neither. */
export function wetSaid(text: string): 'all' | Interval | undefined {
  if (/^wet$/i.test(text)) return 'all';
  const [, from = '', to = ''] = /^wet ?([\d.]+)[-–]([\d.]+)m?$/i.exec(text) ?? [];
  const [fromMm, toMm] = [parseDepth(from), parseDepth(to)];
  return fromMm === undefined || toMm === undefined ? undefined : { fromMm, toMm };
}

/** What looks wrong on a line that can be read; undefined where nothing does. */
export function doubtOf(line: NewPlodLine, { above, drilledMm, now }: PlodContext): string | undefined {
  if (now !== undefined && line.endsAt !== undefined && instantMs(line.endsAt) > instantMs(now) + AHEAD_MS)
    return `it ends at ${localTime(line.endsAt)}, which has not come: it is ${localTime(now)}`;
  const over = above.findIndex((each) => overlapMinutes(each, line) > 0);
  const other = above[over];
  if (other?.startsAt !== undefined && other.endsAt !== undefined)
    return `it overlaps line ${over + 1}, ${other.activity} ${localTime(other.startsAt)}–${localTime(other.endsAt)}, by ${formatMinutes(overlapMinutes(other, line))} h`;
  const { hole, fromMm, toMm } = line;
  if (hole === undefined || fromMm === undefined || toMm === undefined) return undefined;
  const claimed = { fromMm, toMm };
  const again = above.findIndex(
    (each) =>
      each.hole === hole &&
      each.fromMm !== undefined &&
      each.toMm !== undefined &&
      overlaps({ fromMm: each.fromMm, toMm: each.toMm }, claimed),
  );
  if (again >= 0) return `its metres are on line ${again + 1} already`;
  const drilled = drilledMm.get(hole);
  return drilled === undefined || toMm <= drilled
    ? undefined
    : `it claims ${formatInterval(claimed)}, ${lengthMm(claimed) / 1000} m, and ${hole} is drilled to ${drilled / 1000} m`;
}

/** Whole minutes that two lines with times share. */
export function overlapMinutes(a: NewPlodLine, b: NewPlodLine): number {
  if (
    a.startsAt === undefined ||
    a.endsAt === undefined ||
    b.startsAt === undefined ||
    b.endsAt === undefined
  )
    return 0;
  const from = Math.max(instantMs(a.startsAt), instantMs(b.startsAt));
  const to = Math.min(instantMs(a.endsAt), instantMs(b.endsAt));
  return Math.max(0, Math.floor((to - from) / 60_000));
}

/** Reads the parts of a line: times or hours, activity, hole, metres, shots in any order; then `used`, then a remark after a colon. */
export function parsePlodParts(text: string, words: LineWords): Result<PlodParts> {
  const [, before = '', remark] = /^(.*?)(?:(?<!\d):|:(?!\d))(.*)$/.exec(text) ?? [undefined, text];
  const [, plain = '', consumed] = /^(.*?)(?:\bused +(.*))?$/.exec(before.trim()) ?? [];
  let parts: PlodParts = {};
  for (const token of plain.match(/'[^']+'|\S+/g) ?? []) {
    const next = partOf(token, parts, words);
    if (next === undefined)
      return refused(
        unread(
          text,
          `${token} is not read`,
          `Type it like ${PLOD_FORMS[0]?.[0]}; a remark comes after a colon.`,
        ),
      );
    parts = next;
  }
  const used = consumed === undefined ? undefined : usedOf(consumed);
  if (used === null)
    return refused(unread(text, 'used needs how many, then what', 'Type used 1 hammer bit, 2 subs.'));
  return ok({
    ...parts,
    ...(used === undefined ? {} : { used }),
    ...(remark === undefined || remark.trim() === '' ? {} : { remark: remark.trim() }),
  });
}

function partOf(token: string, parts: PlodParts, words: LineWords): PlodParts | undefined {
  return timePart(token, parts) ?? activityPart(token, parts, words) ?? placePart(token, parts, words);
}

function timePart(token: string, parts: PlodParts): PlodParts | undefined {
  if (parts.to !== undefined || parts.minutes !== undefined) return undefined;
  const [, from, to = ''] = /^([\d:]+)?[-–]([\d:]+)$/.exec(token) ?? [];
  const toMinute = minuteOfClock(to);
  const fromMinute = from === undefined ? undefined : minuteOfClock(from);
  if (toMinute !== undefined && (from === undefined || fromMinute !== undefined))
    return { ...parts, to: toMinute, ...(fromMinute === undefined ? {} : { from: fromMinute }) };
  const minutes = minutesOf(token);
  return minutes === undefined ? undefined : { ...parts, minutes };
}

/** Minutes of `1:30h`, `1.5h` or `2h`; undefined where the text is not a time span, is none, or is over a day. */
export function minutesOf(text: string): number | undefined {
  const [, hours, rest] = /^(\d{1,2}):([0-5]\d)h$/.exec(text) ?? [];
  const [, decimal] = /^(\d{1,2}(?:\.\d{1,2})?)h$/.exec(text) ?? [];
  const minutes =
    hours === undefined ? Math.round(Number(decimal ?? Number.NaN) * 60) : Number(hours) * 60 + Number(rest);
  return minutes > 0 && minutes <= 1440 ? minutes : undefined;
}

function activityPart(token: string, parts: PlodParts, words: LineWords): PlodParts | undefined {
  if (parts.activity !== undefined) return undefined;
  const text = token.startsWith("'") ? token.slice(1, -1) : token;
  const mapped = words.written?.find(({ written }) => written.toLowerCase() === text.toLowerCase())?.activity;
  const found = words.activities.find(
    (each) => each.key === token || each.code === token.toLowerCase(),
  )?.code;
  const activity = mapped ?? found ?? (text === token ? undefined : text);
  return activity === undefined ? undefined : { ...parts, activity };
}

function placePart(token: string, parts: PlodParts, words: LineWords): PlodParts | undefined {
  const hole = words.holes.get(token.toUpperCase());
  if (hole !== undefined && parts.hole === undefined) return { ...parts, hole };
  if (/^\+[a-z][a-z0-9-]*$/.test(token))
    return { ...parts, beside: [...(parts.beside ?? []), token.slice(1)] };
  const wet = parts.wet === undefined ? wetSaid(token) : undefined;
  if (wet !== undefined) return { ...parts, wet };
  const [, shots] = /^(\d{1,3})sh$/.exec(token) ?? [];
  if (shots !== undefined && parts.shots === undefined) return { ...parts, shots: Number(shots) };
  const [, from = '', to = ''] = /^([\d.]*)[-–]([\d.]+)m?$/.exec(token) ?? [];
  const [fromMm, toMm] = [parseDepth(from), parseDepth(to)];
  if (toMm === undefined || parts.toMm !== undefined || (from !== '' && fromMm === undefined))
    return undefined;
  return { ...parts, toMm, ...(fromMm === undefined ? {} : { fromMm }) };
}

/** Consumables of a list like `1 hammer bit, 2 subs`; null where it can't be read. */
export function usedOf(text: string): readonly { readonly item: string; readonly count: number }[] | null {
  const items = text.split(',').map((each) => /^ *(\d{1,4}) +(.+?) *$/.exec(each));
  if (items.some((each) => each === null)) return null;
  return items.map((each) => ({ count: Number(each?.[1]), item: each?.[2] ?? '' }));
}

function unread(excerpt: string, problem: string, remedy: string): Finding {
  return SHIFT_REFUSALS.lineUnread.at({ thing: 'plod' }, { excerpt: excerpt.trim(), problem, remedy });
}
