import type { LoggingSchema } from '../schema/logging-schema.ts';
import { type Amount, amountsIn, type Cell, qualifiedIn, sameCell, sharesIn } from '../value/cell.ts';
import type { Cells, RowSaid } from '../value/row.ts';
import { carriedCell } from './carry.ts';
import { isNewRock } from './rock.ts';
import type { Ask, AskAbout, Note, Said } from './said.ts';
import { codeNamed } from './slots.ts';
import { labelOf } from './typing-index.ts';

/** How many steps a move has from which on it is asked about: up, down, and up from nothing. */
type Reach = { readonly up: number; readonly down: number; readonly first: number };

/**
 * Set by the bench, which counts the right rows that each rule asks and the slips that it alone catches, on logs of two generators. A vein, a
 * sulphide or a mineral begins at a common amount where a structure begins, and ends where it ends: asked only above 5 %, or from level 3 on, these
 * rules ask 1.5 % of right rows instead of 4.2 %, and 0.4 % more slips pass. A fall is given a step more than a rise, for a lost digit falls
 * further. Not so in gloves mode, where two keys are hit at once, and for levels that every row has, which seldom jump.
 */
const LEVELS: Reach = { up: 2, down: 3, first: 3 };
const LEVELS_STRICT: Reach = { up: 2, down: 2, first: 2 };
const LEVELS_AT_CONTACT: Reach = { up: 3, down: 2, first: 3 };
const LADDER_UP = 3;
const LADDER_DOWN = 4;
/** What a vein or a sulphide commonly begins or ends at, in percent, at most. */
const COMMON_PERCENT = 5;
/** Step of a second's share, in percent (common practice), and the least that is judged at all: one digit is mostly a lost key. */
const SHARE_STEP_PERCENT = 5;
const LEAST_SHARE_PERCENT = 10;

/** A line as it is to be judged: what it says, what became of it, and what is above. */
export type Judged = {
  readonly schema: LoggingSchema;
  readonly above: RowSaid | undefined;
  readonly cells: Cells;
  readonly said: readonly Said[];
  readonly gloves: boolean;
};

/** What is asked of each item against the row above, whether insisted on or not. At most one question an item. */
export function itemAsks(judged: Judged): readonly (Ask & { readonly item: Said })[] {
  return judged.said.filter(isAmount).flatMap((item) => {
    const asked = levelJump(judged, item) ?? percentMove(judged, item) ?? oddShare(judged, item);
    return asked === undefined ? [] : [{ ...asked, position: item.position, length: item.length, item }];
  });
}

/** What more is said of a code has no amount, and an event none above: nothing about them jumps. */
function isAmount({ says }: Said): boolean {
  return !('quality' in says || 'event' in says);
}

type Question = { readonly about: AskAbout; readonly reason: string };

/** What a line restates: items that could be left out, for what they say would have carried. Many say a row in full, so it is never asked. */
export function restated(judged: Omit<Judged, 'gloves'>): readonly Note[] {
  const { schema } = judged;
  return judged.said.flatMap((item): readonly Note[] => {
    if (item.insisted || !isRestated(judged, item)) return [];
    const label = labelOf(schema, item.field, codeNamed(item));
    return [{ label, gone: takesOut(item), position: item.position, length: item.length }];
  });
}

function isRestated({ schema, above, cells, said }: Omit<Judged, 'gloves'>, item: Said): boolean {
  const { field } = item;
  const before = carriedCell(schema, field, above, cells);
  if (before === undefined) return false;
  if ('quality' in item.says) {
    const { list, quality, of = 'code' in before ? before.code : '' } = item.says;
    const isNew = said.some(
      (other) => other.field === field && field.kind === 'code' && 'cell' in other.says,
    );
    return !isNew && qualifiedIn(before)[of]?.[list] === quality;
  }
  if (sameCell(before, cells[field.name])) return true;
  const others = said.filter(
    (other) => other.field === field && other !== item && !('quality' in other.says),
  );
  // A rock or a colour said again takes away what more was said of it.
  const clears = 'cell' in item.says && Object.keys(qualifiedIn(before)).length > 0;
  if (clears) return false;
  return saysNothingNew(before, item, others);
}

function takesOut({ says }: Said): boolean {
  return 'code' in says && says.amount === 0;
}

function saysNothingNew(before: Cell, { says }: Said, others: readonly Said[]): boolean {
  if ('quality' in says || 'event' in says) return false;
  if ('cell' in says)
    return others.length > 0 && 'code' in says.cell && 'code' in before && says.cell.code === before.code;
  if ('code' in before) {
    const firstIsSaid = others.some((other) => 'cell' in other.says);
    return (
      !firstIsSaid &&
      sharesIn(before).some(({ code, percent }) => code === says.code && percent === says.amount)
    );
  }
  return !('absent' in before) && amountIn(before, says.code) === says.amount;
}

/** The amount of a code in a cell, 0 where it isn't there. */
function amountIn(cell: Cell | undefined, code: string): Amount {
  const amounts = amountsIn(cell);
  return Object.hasOwn(amounts, code) ? (amounts[code] ?? 0) : 0;
}

/** A new rock may bring any level with it; in gloves mode a far one is asked there too. */
function levelJump({ schema, above, cells, gloves }: Judged, item: Said): Question | undefined {
  const { field } = item;
  if (field.kind !== 'level' && field.kind !== 'levels') return undefined;
  const newRock = isNewRock(schema, above, cells);
  if (newRock && !gloves) return undefined;
  const strict = newRock ? LEVELS_AT_CONTACT : LEVELS_STRICT;
  const reach = gloves || field.required ? strict : LEVELS;
  const moved = movesOf(above?.cells[field.name], cells[field.name], item).find(([from, to]) =>
    levelReaches(Number(from), Number(to), reach),
  );
  if (moved === undefined) return undefined;
  const label = labelOf(schema, field, codeNamed(item));
  return {
    about: 'level jump',
    reason: `${label} goes from ${moved[0]} to ${moved[1]}${newRock ? '' : ' with no new rock'}`,
  };
}

function percentMove({ schema, above, cells }: Judged, item: Said): Question | undefined {
  const { field } = item;
  if (field.kind !== 'percent' && field.kind !== 'percents') return undefined;
  const label = labelOf(schema, field, codeNamed(item));
  const after = cells[field.name];
  const amount =
    'code' in item.says ? item.says.amount : after !== undefined && 'percent' in after ? after.percent : 0;
  if (isOffLadder(field.ladder, amount)) {
    return {
      about: 'off the ladder',
      reason: `${label} ${amount} % is off the ladder (${field.ladder.join(' ')})`,
    };
  }
  const moved = movesOf(above?.cells[field.name], after, item).find(([from, to]) =>
    percentReaches(field.ladder, from, to),
  );
  if (moved === undefined) return undefined;
  return {
    about: 'percent step',
    reason: `${label} goes from ${percentText(moved[0])} to ${percentText(moved[1])} in one row`,
  };
}

/** A second's share is judged by eye in fives: what is not one is nearly always a slip. */
function oddShare({ schema }: Judged, { field, says }: Said): Question | undefined {
  if (field.kind !== 'code' || !('code' in says) || says.amount === 0) return undefined;
  const percent = Number(says.amount);
  if (percent >= LEAST_SHARE_PERCENT && percent % SHARE_STEP_PERCENT === 0) return undefined;
  const label = labelOf(schema, field, says.code);
  return {
    about: 'off the ladder',
    reason: `${label} ${percent} %: shares go in fives, from ${LEAST_SHARE_PERCENT}`,
  };
}

/** What is taken out is not asked: a 0 lies beside no level on the keyboard, so it is meant. */
function levelReaches(from: number, to: number, { up, down, first }: Reach): boolean {
  if (to === 0) return false;
  return from === 0 ? to >= first : to - from >= up || from - to >= down;
}

function percentReaches(ladder: readonly number[], from: Amount, to: Amount): boolean {
  // A trace is no more than nothing here: what begins with it goes on as it would from none.
  if ((isLeast(from) && isCommon(to)) || (to === 0 && isCommon(from))) return false;
  const steps = stepOf(ladder, to) - stepOf(ladder, from);
  return steps >= LADDER_UP || -steps >= LADDER_DOWN;
}

function isLeast(amount: Amount): boolean {
  return amount === 'trace' || amount === 0;
}

function isCommon(amount: Amount): boolean {
  return amount === 'trace' || amount <= COMMON_PERCENT;
}

function percentText(amount: Amount): string {
  return amount === 'trace' ? 'a trace' : `${amount} %`;
}

function isOffLadder(ladder: readonly number[], amount: Amount): boolean {
  return ladder.length > 0 && amount !== 'trace' && amount !== 0 && !ladder.includes(amount);
}

/** How many steps of the ladder an amount reaches. None and a trace both stand at its foot. */
function stepOf(ladder: readonly number[], amount: Amount): number {
  return amount === 'trace' ? 0 : ladder.filter((step) => step <= amount).length;
}

/** Before and after of everything that an item changes. Nothing where the row above did not observe it: no step to judge. */
function movesOf(
  before: Cell | undefined,
  after: Cell | undefined,
  item: Said,
): readonly (readonly [Amount, Amount])[] {
  if (before === undefined || after === undefined) return [];
  if (before !== undefined && 'absent' in before && before.absent === 'not observed') return [];
  if (after !== undefined && 'absent' in after && after.absent === 'not observed') return [];
  if ('code' in item.says) return [[amountIn(before, item.says.code), item.says.amount]];
  if ('levels' in before) return Object.values(before.levels).map((level) => [level, 0] as const);
  if ('percents' in before) return Object.values(before.percents).map((percent) => [percent, 0] as const);
  return [[ownAmount(before), ownAmount(after)]];
}

function ownAmount(cell: Cell): Amount {
  if ('level' in cell) return cell.level;
  return 'percent' in cell ? cell.percent : 0;
}
