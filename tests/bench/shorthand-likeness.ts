import { isNewRock } from '../../src/shorthand/rock.ts';
import type { Amount, Cell } from '../../src/value/cell.ts';
import type { Placed } from './shorthand-costs.ts';
import { stepsOf } from './shorthand-log.ts';

/** How restless a log is, so that a generated one can be compared with those typed by hand. Shares are 0 to 1. */
export type Likeness = {
  /** Rows that say nothing new. */
  readonly unchanged: number;
  readonly newRock: number;
  /** Of all moves of a level within a rock: those of two or more. */
  readonly farLevels: number;
  /** Of all moves of a percent: those of three or more steps of the ladder, a trace being one. */
  readonly farPercents: number;
  /** Codes a row in fields that hold several: minerals, mostly. */
  readonly codesPerRow: number;
};

/** Measures how restless a log is. */
export function likenessOf(rows: readonly Placed[]): Likeness {
  const followed = rows.filter(({ row, context }) => !row.noReturn && context.above !== undefined);
  const moves = followed.flatMap(movesIn);
  const levels = moves.filter(({ kind, newRock }) => kind === 'level' && !newRock);
  const percents = moves.filter(({ kind }) => kind === 'percent');
  const codes = followed.reduce((sum, { row }) => sum + codesIn(Object.values(row.cells)), 0);
  return {
    unchanged: share(followed, isUnchanged),
    newRock: share(followed, ({ row, context }) => isNewRock(context.schema, context.above, row.cells)),
    farLevels: share(levels, ({ steps }) => steps >= 2),
    farPercents: share(percents, ({ steps }) => steps >= 3),
    codesPerRow: codes / followed.length,
  };
}

function share<T>(all: readonly T[], holds: (one: T) => boolean): number {
  return all.length === 0 ? 0 : all.filter(holds).length / all.length;
}

function isUnchanged({ row, context }: Placed): boolean {
  return JSON.stringify(row.cells) === JSON.stringify(context.above?.cells);
}

function codesIn(cells: readonly Cell[]): number {
  return cells.reduce((sum, cell) => {
    const amounts = 'levels' in cell ? cell.levels : 'percents' in cell ? cell.percents : {};
    return sum + Object.keys(amounts).length;
  }, 0);
}

type Move = { readonly kind: 'level' | 'percent'; readonly steps: number; readonly newRock: boolean };

function movesIn({ row, context }: Placed): readonly Move[] {
  const { schema, above } = context;
  const newRock = isNewRock(schema, above, row.cells);
  return schema.fields.flatMap((field): readonly Move[] => {
    const kind = field.kind === 'level' || field.kind === 'levels' ? 'level' : 'percent';
    const steps = stepsOf(schema, field);
    if (steps.length < 2) return [];
    const [was, is] = [amountsIn(above?.cells[field.name]), amountsIn(row.cells[field.name])];
    if (was === undefined || is === undefined) return [];
    return [...new Set([...Object.keys(was), ...Object.keys(is)])].flatMap((code) => {
      const moved = Math.abs(steps.indexOf(is[code] ?? 0) - steps.indexOf(was[code] ?? 0));
      return moved === 0 ? [] : [{ kind, steps: moved, newRock }];
    });
  });
}

/** Amounts by code, the field's own under no code; undefined where no one looked. */
function amountsIn(cell: Cell | undefined): { readonly [code: string]: Amount } | undefined {
  if (cell === undefined) return undefined;
  if ('absent' in cell) return cell.absent === 'none' ? {} : undefined;
  if ('levels' in cell) return cell.levels;
  if ('percents' in cell) return cell.percents;
  if ('level' in cell) return { '': cell.level };
  return 'percent' in cell ? { '': cell.percent } : undefined;
}
