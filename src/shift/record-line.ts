import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { type Depth, parseDepth } from '../quantity/depth.ts';
import { formatMinutes, localTime } from '../quantity/stamp.ts';
import { SHIFT_REFUSALS } from './findings.ts';
import type { ActivityKind } from './settings.ts';
import type { Activity } from './shift.ts';
import { minuteOfClock } from './shift-clock.ts';

/** What a line says of an activity; a part that it leaves out is undefined. Times are minutes of the local day. */
export interface EntryParts {
  readonly activity?: string;
  readonly from?: number;
  readonly to?: number;
  readonly hole?: string;
  readonly beside?: string[];
  readonly authorisedBy?: string;
  readonly remark?: string;
  /** What is taken out of an entry that is amended. */
  readonly without?: readonly EntryPart[];
}

/** Parts of an entry that can be taken out, by the word that does: `-by`. */
const PARTS_OUT = {
  '-by': 'authorisedBy',
  '-hole': 'hole',
  '-beside': 'beside',
  '-used': 'used',
  '-remark': 'remark',
  '-end': 'endedAt',
} as const;
export type EntryPart = (typeof PARTS_OUT)[keyof typeof PARTS_OUT];

/** One line of the shift record. */
export type RecordLine =
  | { readonly does: 'begin'; readonly at?: number }
  | { readonly does: 'end'; readonly at?: number }
  | { readonly does: 'overtime'; readonly at: number }
  | { readonly does: 'crew'; readonly names: readonly string[] }
  | { readonly does: 'used'; readonly count: number; readonly item: string; readonly at?: number }
  | { readonly does: 'bit'; readonly gaugeTenthsMm: number; readonly at?: number; readonly remark?: string }
  | { readonly does: 'water'; readonly depthMm: Depth; readonly at?: number; readonly remark?: string }
  | { readonly does: 'start'; readonly parts: EntryParts & { readonly activity: string } }
  | { readonly does: 'amend'; readonly at: number; readonly parts: EntryParts }
  | { readonly does: 'split'; readonly at: number }
  | { readonly does: 'remove'; readonly at: number; readonly of?: 'bit' | 'water' };

/** What a line is read with: the activities of the project, and its holes by the names that a person may type. */
export interface LineWords {
  readonly activities: readonly ActivityKind[];
  /** Words of the driller's sheet for activities, as the project maps them. */
  readonly written?: readonly { readonly written: string; readonly activity: string }[];
  /** Permanent id by name in capitals. */
  readonly holes: ReadonlyMap<string, string>;
}

/** Forms of a line for the help: one a thing that can be recorded. */
export const RECORD_FORMS: readonly (readonly [form: string, does: string])[] = [
  ['breakdown 14:20 hydraulic hose', 'an activity from 14:20 on; without a time from now on'],
  ['breakdown 14:20-14:50 hydraulic hose', 'the same, then what went on before goes on'],
  ['standby by Ines Falk: no water', 'who authorised it, then a remark'],
  ['drilling 09:00 +booster', 'what runs beside it and is paid by the hour'],
  ['14:20 14:35', 'the activity at 14:20 started at 14:35'],
  ['14:20 standby by Ines Falk', 'the activity at 14:20 was standby, authorised'],
  ['14:20 -by -hole', 'take that out of it; also -beside, -used, -remark, -end'],
  ['split 15:00', 'two entries of the one at 15:00'],
  ['remove 14:20', 'take the entry out; the one before goes on'],
  ['begin 06:00, end 18:00', 'the hours of the shift'],
  ['overtime 19:30', 'this shift goes on until then'],
  ['crew Bo, Cy', 'the crew on this shift'],
  ['used 1 hammer bit', 'consumables, of the activity going on'],
  ['bit 15:00 139.7 new face', 'a bit put on, its gauge as measured in mm'],
  ['water 62 strong', 'water met at 62 m'],
  ['remove bit 14:20, remove water 14:20', 'take out what was recorded then'],
];

const TIMED = ['begin', 'end', 'used', 'bit', 'water', 'overtime', 'split', 'remove'];

/** True for a word that is followed by its time: typed after the time, as `15:00 bit 137.5`, it means the same. */
const isTimed = (word: string | undefined): word is string => TIMED.includes(word?.toLowerCase() ?? '');

const localClock = (minute: number): string => formatMinutes(minute).padStart(5, '0');

/** A time of day as it may be written where nothing else can be meant: `7:30`, `7.30`, `@7:30`, `0730`. */
function writtenMinute(text: string): number | undefined {
  return minuteOfClock(text.replace(/^@/, '').replace(/^(\d{1,2})\.(\d{2})$/, '$1:$2'));
}

/** A time of a range, where three figures are clear too: `730-745`. */
const minuteOfRange = (text: string): number | undefined =>
  writtenMinute(/^\d{3}$/.test(text) ? `0${text}` : text);

/** True for a word that a person means as a time, read or not: it must never end up in a remark unseen. */
const looksLikeTime = (word: string): boolean =>
  /^@?\d{1,2}[:.h]\d{2}([-–,.;]|$)/.test(word) || /^@\d/.test(word) || /^\d{3,4}([-–]\d{1,4})?$/.test(word);

/** Why words can't be a remark as they are: a time among them would be lost. The first may be one in figures alone, `730`. */
function timeLost(line: string, text: string): Finding | undefined {
  const all = text.split(/ +/);
  const found = all.find((word, index) => looksLikeTime(word) && (index === 0 || /[:.@]/.test(word)));
  return found === undefined
    ? undefined
    : lineUnread(
        line,
        `${found} is not read as a time here`,
        'Type the time first, like standby 07:30, standby 07:30-07:45 or bit 15:00 137.5. A remark begins with a colon.',
      );
}

/** Reads one line of the shift record. Refused, with what to type, where it says nothing that can be recorded. */
export function parseRecordLine(text: string, words: LineWords): Result<RecordLine> {
  const line = text.trim();
  const [first = '', ...rest] = line.split(/ +/);
  const after = line.slice(first.length).trim();
  switch (first.toLowerCase()) {
    case '':
      return unread(line, 'nothing is typed', 'Type an activity, like breakdown 14:20 hydraulic hose.');
    case 'begin':
    case 'end':
      return parseHour(line, first.toLowerCase() === 'begin' ? 'begin' : 'end', after);
    case 'crew':
      return parseCrew(line, after);
    case 'used':
      return parseUsed(line, rest);
    case 'bit':
      return parseBit(line, rest);
    case 'water':
      return parseWater(line, rest);
    case 'overtime':
    case 'split':
    case 'remove':
      return parseAt(line, first.toLowerCase() as 'overtime' | 'split' | 'remove', rest);
  }
  const at = writtenMinute(first);
  if (at !== undefined && isTimed(rest[0]))
    return parseRecordLine([rest[0], localClock(at), ...rest.slice(1)].join(' '), words);
  if (at !== undefined) return parseAmend(line, at, after, words);
  const notActivity = () =>
    unread(line, `${first} is not an activity`, `Use ${activityNames(words)}, or one of their keys.`);
  if (partOf(first.replace(/:.*$/, ''), {}, words) === undefined && !looksLikeTime(first))
    return notActivity();
  const read = parseParts(line, words);
  if (!read.ok) return read;
  const { activity, ...parts } = read.value;
  return activity === undefined ? notActivity() : ok({ does: 'start', parts: { ...parts, activity } });
}

/** `split 14:20`, `overtime 19:30`, `remove 14:20`, `remove bit 14:20`. */
function parseAt(
  line: string,
  does: 'overtime' | 'split' | 'remove',
  words: readonly string[],
): Result<RecordLine> {
  const [first = ''] = words;
  const of = does === 'remove' && (first === 'bit' || first === 'water') ? first : undefined;
  const at = minuteOfClock(words.slice(of === undefined ? 0 : 1).join(' '));
  const example = `${does}${of === undefined ? '' : ` ${of}`} ${does === 'overtime' ? '19:30' : '14:20'}`;
  if (at === undefined) return unread(line, `${does} needs a time of day`, `Type ${example}.`);
  return ok(does === 'remove' && of !== undefined ? { does, at, of } : { does, at });
}

/** An entry as the line that amends it: `14:20 standby 14:20 ZQRC004 by Ines Falk: no water`. Read back it changes nothing. */
export function entryLine(entry: Activity, holeName: (id: string) => string): string {
  const clock = localTime(entry.startedAt);
  const end = entry.endedAt === undefined ? '' : `-${localTime(entry.endedAt)}`;
  const hole = entry.hole === undefined ? '' : ` ${holeName(entry.hole)}`;
  const beside = (entry.beside ?? []).map((each) => ` +${each}`).join('');
  const by = entry.authorisedBy === undefined ? '' : ` by ${entry.authorisedBy}`;
  const remark = entry.remark === undefined ? '' : `: ${entry.remark}`;
  return `${clock} ${entry.activity} ${clock}${end}${hole}${beside}${by}${remark}`;
}

function parseAmend(line: string, at: number, after: string, words: LineWords): Result<RecordLine> {
  const all = after.split(/ +/);
  const isOut = (word: string): word is keyof typeof PARTS_OUT => Object.hasOwn(PARTS_OUT, word);
  const read = parseParts(all.filter((word) => !isOut(word)).join(' '), words);
  if (!read.ok) return read;
  const without = all.filter(isOut).map((word) => PARTS_OUT[word]);
  const parts = without.length === 0 ? read.value : { ...read.value, without };
  return Object.keys(parts).length === 0
    ? unread(line, 'nothing to change is typed', 'Type what it was, like 14:20 standby by Ines Falk.')
    : ok({ does: 'amend', at, parts });
}

/**
 * The parts of an entry: an activity, a time or two, a hole, then `by` a name; the remark follows a colon, or begins with the first
 * word that is none of these.
 */
function parseParts(line: string, words: LineWords): Result<EntryParts> {
  let parts: EntryParts = {};
  let left = line;
  for (;;) {
    left = left.trim();
    if (left === '') return ok(parts);
    if (left.startsWith(':')) return ok(withRemark(parts, left.slice(1)));
    const [token = ''] = /^[^ :]+(?::\d{2}[^ :]*(?::\d{2})?)?/.exec(left) ?? [];
    if (token.toLowerCase() === 'by') return parseBy(line, parts, left.slice(2).trim());
    const next = partOf(token, parts, words);
    if (next === undefined && parts.from === undefined && /^\d{1,2}:\d/.test(token))
      return unread(
        line,
        `${token} is not a time of day`,
        'Type it like 14:20. A remark begins with a colon.',
      );
    const lost = next === undefined && parts.from === undefined ? timeLost(line, left) : undefined;
    if (lost !== undefined) return refused(lost);
    if (next === undefined && parts.hole === undefined && namesHole(token))
      return unread(
        line,
        `${token} is no hole of this project`,
        `Type it as the list of holes has it. A remark that begins like a hole has a colon before it.`,
      );
    if (next === undefined) return ok(withRemark(parts, left));
    if (next.to !== undefined && next.to === next.from)
      return unread(
        line,
        `${token} ends when it starts`,
        'Give the time it started, then the time it ended.',
      );
    parts = next;
    left = left.slice(token.length);
  }
}

/** True for a word that a person means as a hole, known or not: letters, then two figures or more. It must never end up in a remark unseen. */
const namesHole = (word: string): boolean => /^[A-Z]{2,}-?\d{2,}[A-Z]?$/i.test(word);

/** The parts with one more word read, or undefined where the word is none of them or that part was given. */
function partOf(token: string, parts: EntryParts, words: LineWords): EntryParts | undefined {
  if (parts.activity === undefined) {
    const found = words.activities.find((each) => each.code === token.toLowerCase() || each.key === token);
    if (found !== undefined) return { ...parts, activity: found.code };
  }
  if (parts.from === undefined) {
    const isRange = /[-–]/.test(token);
    const [from, to] = token.split(/[-–]/).map(isRange ? minuteOfRange : writtenMinute);
    if (from !== undefined && !isRange) return { ...parts, from };
    if (from !== undefined && to !== undefined) return { ...parts, from, to };
  }
  if (/^\+[a-z][a-z0-9-]*$/.test(token))
    return { ...parts, beside: [...(parts.beside ?? []), token.slice(1)] };
  const hole = words.holes.get(token.toUpperCase());
  return parts.hole === undefined && hole !== undefined ? { ...parts, hole } : undefined;
}

function parseBy(line: string, parts: EntryParts, text: string): Result<EntryParts> {
  const [, name = '', remark = ''] = /^(.*?)(?:(?:(?<!\d):|:(?!\d))(.*))?$/.exec(text) ?? [];
  const lost = timeLost(line, name);
  if (lost !== undefined) return refused(lost);
  if (name.trim() === '') return unread(line, 'by needs a name', 'Type standby by Ines Falk: no water.');
  return ok(withRemark({ ...parts, authorisedBy: name.trim() }, remark));
}

const withRemark = (parts: EntryParts, text: string): EntryParts =>
  text.trim() === '' ? parts : { ...parts, remark: text.trim() };

function parseHour(line: string, does: 'begin' | 'end', text: string): Result<RecordLine> {
  if (text === '') return ok({ does });
  const at = minuteOfClock(text);
  return at === undefined
    ? unread(line, `${text} is not a time of day`, `Type ${does} 06:00, or ${does} alone for now.`)
    : ok({ does, at });
}

function parseCrew(line: string, text: string): Result<RecordLine> {
  const names = text
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '');
  return names.length === 0
    ? unread(line, 'crew needs names', 'Type crew Bo Hale, Cy Tan.')
    : ok({ does: 'crew', names });
}

function parseUsed(line: string, words: readonly string[]): Result<RecordLine> {
  const { at, rest, lost } = clockApart(line, words);
  if (lost !== undefined) return refused(lost);
  const [count = '', ...item] = rest;
  return !/^\d{1,4}$/.test(count) || Number(count) === 0 || item.length === 0
    ? unread(line, 'used needs how many, then what', 'Type used 1 hammer bit.')
    : ok({ does: 'used', count: Number(count), item: item.join(' '), ...at });
}

function parseBit(line: string, words: readonly string[]): Result<RecordLine> {
  const { at, rest, lost } = clockApart(line, words);
  if (lost !== undefined) return refused(lost);
  const [gauge = '', ...remark] = rest;
  const tenths = /^\d{2,3}(\.\d)?$/.test(gauge) ? Math.round(Number(gauge) * 10) : Number.NaN;
  return !(tenths >= 500 && tenths <= 5000)
    ? unread(
        line,
        'bit needs its gauge, 50 to 500 mm',
        'Ask the driller to have it measured across the buttons, then type bit 139.7, or bit 15:00 139.7.',
      )
    : ok({ does: 'bit', gaugeTenthsMm: tenths, ...at, ...remarkOf(remark) });
}

function parseWater(line: string, words: readonly string[]): Result<RecordLine> {
  const { at, rest, lost } = clockApart(line, words);
  if (lost !== undefined) return refused(lost);
  const [depth = '', ...remark] = rest;
  const depthMm = parseDepth(depth);
  return depthMm === undefined
    ? unread(line, 'water needs the depth it was met at', 'Type water 62, in metres, or water 15:00 62.')
    : ok({ does: 'water', depthMm, ...at, ...remarkOf(remark) });
}

/** What a line of a bit, of water or of consumables says beside its time. */
interface Timed {
  readonly at?: { readonly at: number };
  readonly rest: readonly string[];
  readonly lost?: Finding;
}

/** A time of day apart from the other words: first, after the figure, or last; anywhere else it is refused, unless after a colon. */
function clockApart(line: string, words: readonly string[]): Timed {
  const colon = words.findIndex((word) => word.startsWith(':'));
  const before = colon === -1 ? words : words.slice(0, colon);
  const after = colon === -1 ? [] : [words.slice(colon).join(' ').slice(1).trim()];
  const index = [0, 1, before.length - 1].find((each) => {
    const word = before[each] ?? '';
    return writtenMinute(word) !== undefined && (each > 0 || /[:@]/.test(word));
  });
  const at = index === undefined ? undefined : writtenMinute(before[index] ?? '');
  const rest = before.filter((_, each) => each !== index);
  const lost = timeLost(line, rest.slice(1).join(' '));
  return {
    rest: [...rest, ...after.filter((each) => each !== '')],
    ...(at === undefined ? {} : { at: { at } }),
    ...(lost === undefined ? {} : { lost }),
  };
}

const remarkOf = (words: readonly string[]): { readonly remark?: string } =>
  words.length === 0 ? {} : { remark: words.join(' ') };

const activityNames = ({ activities }: LineWords): string => activities.map((each) => each.code).join(', ');

function unread(excerpt: string, problem: string, remedy: string): Result<never> {
  return refused(lineUnread(excerpt, problem, remedy));
}

function lineUnread(excerpt: string, problem: string, remedy: string): Finding {
  return SHIFT_REFUSALS.lineUnread.at({ thing: 'shift record' }, { excerpt, problem, remedy });
}
