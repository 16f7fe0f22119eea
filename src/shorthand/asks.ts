import type { LoggingSchema } from '../schema/logging-schema.ts';
import type { Amount, Cell } from '../value/cell.ts';
import { sameCell } from '../value/cell.ts';
import type { Cells, RowSaid } from '../value/row.ts';
import { codeNamed } from './build-cells.ts';
import { carriedCell } from './carry.ts';
import { isNewRock } from './rock.ts';
import type { Ask, AskAbout, Said } from './said.ts';
import { labelOf } from './typing-index.ts';

/** How many steps up, or down, a move has from which on it is asked about. */
type Reach = { readonly up: number; readonly down: number };

/**
 * Set by the bench, which counts the true rows that each rule asks and the slips that it alone catches. From falls of two levels,
 * or of three steps of the ladder, it asked most and caught least, so a fall is given a step more: a lost digit falls further. Not
 * so for levels that every row must have, which seldom jump, nor in gloves mode, where two keys are hit at once.
 */
const LEVELS: Reach = { up: 2, down: 3 };
const LEVELS_STRICT: Reach = { up: 2, down: 2 };
const LADDER: Reach = { up: 3, down: 4 };
/** Step of a second's share, in percent (common practice), and the least that is judged at all: one digit is mostly a lost key. */
const SHARE_STEP_PERCENT = 5;
const LEAST_SHARE_PERCENT = 10;

/** A line as it stands to be judged: what it says, what became of it, and what stands above. */
export type Judged = {
  readonly schema: LoggingSchema;
  readonly above: RowSaid | undefined;
  readonly cells: Cells;
  readonly said: readonly Said[];
  readonly gloves: boolean;
};

/** What is asked of each item against the row above, whether insisted on or not. At most one question an item. */
export function itemAsks(judged: Judged): readonly (Ask & { readonly item: Said })[] {
  return judged.said.flatMap((item) => {
    const asked =
      alreadySo(judged, item) ??
      levelJump(judged, item) ??
      percentMove(judged, item) ??
      oddShare(judged, item);
    return asked === undefined ? [] : [{ ...asked, position: item.position, length: item.length, item }];
  });
}

type Question = { readonly about: AskAbout; readonly reason: string };

/** True of an item that could be left out: what it says would have carried. */
function alreadySo({ schema, above, cells, said }: Judged, item: Said): Question | undefined {
  const { field } = item;
  const before = carriedCell(schema, field, above);
  if (before === undefined) return undefined;
  const label = labelOf(schema, field, codeNamed(item));
  const question: Question = {
    about: 'already so',
    reason: `${label} ${takesOut(item) ? 'is not' : 'is so already'} in the row above`,
  };
  if (sameCell(before, cells[field.name])) return question;
  const others = said.filter((other) => other.field === field && other !== item);
  return saysNothingNew(before, item, others) ? question : undefined;
}

function takesOut({ says }: Said): boolean {
  return 'code' in says && says.amount === 0;
}

function saysNothingNew(before: Cell, { says }: Said, others: readonly Said[]): boolean {
  if ('cell' in says)
    return others.length > 0 && 'code' in says.cell && 'code' in before && says.cell.code === before.code;
  if ('code' in before) {
    const firstIsSaid = others.some((other) => 'cell' in other.says);
    return !firstIsSaid && before.second?.code === says.code && before.second.percent === says.amount;
  }
  return !('absent' in before) && amountIn(before, says.code) === says.amount;
}

/** The amount of a code in a cell, 0 where it isn't there. */
function amountIn(cell: Cell | undefined, code: string): Amount {
  if (cell === undefined) return 0;
  if ('levels' in cell) return Object.hasOwn(cell.levels, code) ? (cell.levels[code] ?? 0) : 0;
  if ('percents' in cell) return Object.hasOwn(cell.percents, code) ? (cell.percents[code] ?? 0) : 0;
  return 0;
}

/**
 * A new rock may bring any level with it, except in gloves mode, where two keys are hit at once. What is taken out is not asked: a 0
 * stands beside no level on the keyboard, so it is meant.
 */
function levelJump({ schema, above, cells, gloves }: Judged, item: Said): Question | undefined {
  const { field } = item;
  if (field.kind !== 'level' && field.kind !== 'levels') return undefined;
  const newRock = isNewRock(schema, above, cells);
  if (newRock && !gloves) return undefined;
  const reach = gloves || field.required ? LEVELS_STRICT : LEVELS;
  const moved = movesOf(above?.cells[field.name], cells[field.name], item).find(
    ([before, after]) => after !== 0 && reaches(Number(after) - Number(before), reach),
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
    reaches(stepOf(field.ladder, to) - stepOf(field.ladder, from), LADDER),
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

function reaches(steps: number, { up, down }: Reach): boolean {
  return steps >= up || -steps >= down;
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
