import type { SurveyRun } from '../../hole/direction.ts';
import { parseDepth } from '../../quantity/depth.ts';
import { isDay } from '../../quantity/stamp.ts';

/** What is said once of a run of shots; when, and how it ranks where that is not said, comes from whoever records it. */
export type RunSaid = Omit<SurveyRun, 'at' | 'rank'> & { readonly rank?: number };

/** The north that each class of tool usually gives its azimuths from. Common practice. */
export const USUAL_NORTH = {
  magnetic: 'magnetic',
  'gyro aligned at the collar': 'grid',
  'north-seeking gyro': 'true',
} as const satisfies Readonly<Record<SurveyRun['toolClass'], SurveyRun['north']>>;

/** How a run is said, for messages. */
export const RUN_FORM =
  'north-seeking | aligned | magnetic, then if need be: from true | magnetic | grid | mine, in | out | single, rods | open, offset 1.5, steel 8, rank 70, on 2026-03-12, by and initials, and last tool and its name';

/** A run as said, with its date (`2026-03-12`) where one was said, and whether its north was; or what is wrong with it, in words. */
export type RunRead =
  | { readonly ok: true; readonly run: RunSaid; readonly on: string | undefined; readonly northSaid: boolean }
  | { readonly ok: false; readonly problem: string };

const CLASSES: Readonly<Record<string, SurveyRun['toolClass']>> = {
  'north-seeking': 'north-seeking gyro',
  aligned: 'gyro aligned at the collar',
  magnetic: 'magnetic',
};
const NORTH_WORDS: Readonly<Record<string, SurveyRun['north']>> = {
  true: 'true',
  magnetic: 'magnetic',
  grid: 'grid',
  mine: 'mine-grid',
};

/**
 * Reads a run from one line: `north-seeking in open offset 1.5 by JPE tool gyro 2`. The class of tool comes first; what is left unsaid
 * is as usual (its usual north, single shots, inside rods, no offset, read by the driller, tool not named).
 */
export function readRunSaid(text: string): RunRead {
  const [, before = '', tool] = /^(.*?)(?:\stool\s(.*))?$/s.exec(text.trim()) ?? [];
  const [first = '', ...words] = before.trim().split(/\s+/);
  const toolClass = own(CLASSES, first);
  if (toolClass === undefined)
    return wrong(
      `${first === '' ? 'nothing' : first} is not a class of tool: north-seeking, aligned or magnetic`,
    );
  let run: RunSaid = {
    tool: tool?.trim() || 'not named',
    toolClass,
    north: USUAL_NORTH[toolClass],
    pass: 'single',
    inside: 'rods',
    toolOffsetMm: 0,
    operator: 'driller',
  };
  let on: string | undefined;
  let northSaid = false;
  for (let index = 0; index < words.length; index++) {
    const word = words[index] ?? '';
    const value = words[index + 1] ?? '';
    if (TAKES_VALUE.has(word)) index++;
    if (word === 'from') northSaid = true;
    if (word === 'on') {
      if (!isDay(value)) return wrong(`${value} is not a date like 2026-03-12`);
      on = value;
      continue;
    }
    const said = saidBy(word, value);
    if (said === undefined)
      return wrong(`"${TAKES_VALUE.has(word) ? `${word} ${value}` : word}" says nothing of a run`);
    run = { ...run, ...said };
  }
  return { ok: true, run, on, northSaid };
}

const wrong = (problem: string): RunRead => ({ ok: false, problem });

const own = <T>(table: Readonly<Record<string, T>>, word: string): T | undefined =>
  Object.hasOwn(table, word) ? table[word] : undefined;

const TAKES_VALUE = new Set(['from', 'offset', 'steel', 'rank', 'by', 'on']);

function saidBy(word: string, value: string): Partial<RunSaid> | undefined {
  switch (word) {
    case 'in':
    case 'out':
    case 'single':
      return { pass: word };
    case 'rods':
      return { inside: 'rods' };
    case 'open':
      return { inside: 'open hole' };
    case 'from': {
      const north = own(NORTH_WORDS, value);
      return north === undefined ? undefined : { north };
    }
    case 'offset':
      return metresInto('toolOffsetMm', value);
    case 'steel':
      return metresInto('steelMm', value);
    case 'rank':
      return /^(\d{1,2}|100)$/.test(value) ? { rank: Number(value) } : undefined;
    case 'by':
      return value === '' ? undefined : { operator: value };
    default:
      return undefined;
  }
}

/** Longest distance of a sensor from the bit or from steel that is believed, millimetres. */
const FURTHEST_MM = 50_000;

/** Metres typed for one of the distances of a run; undefined for anything else. */
export function metresInto(field: 'toolOffsetMm' | 'steelMm', typed: string): Partial<RunSaid> | undefined {
  const depth = parseDepth(typed);
  return depth === undefined || depth > FURTHEST_MM ? undefined : { [field]: depth };
}
