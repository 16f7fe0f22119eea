import { fieldApplies } from '../../src/schema/applies.ts';
import {
  type Code,
  type Field,
  type LoggingSchema,
  listOf,
  scaleOf,
} from '../../src/schema/logging-schema.ts';
import { type Amount, type Cell, NONE, NOT_OBSERVED } from '../../src/value/cell.ts';
import type { Cells, RowSaid } from '../../src/value/row.ts';

/** How restless the geology of a generated log is: the chance that any one thing moves from a row to the next. */
export const NOISE = { calm: 0.08, ordinary: 0.14, restless: 0.22 } as const;
export type Noise = keyof typeof NOISE;

/** Numbers from 0 to under 1, the same ones for the same seed (mulberry32). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

type World = {
  readonly schema: LoggingSchema;
  readonly random: () => number;
  readonly chance: number;
  /** The few codes that this hole meets, by list. */
  readonly met: { readonly [list: string]: readonly string[] };
};

/**
 * An invented log: rocks in runs, weathering that only lessens downwards, minerals and percents that walk a step at a time
 * and now and then jump, a metre without return here and there. The bench says beside each log how restless it is: the calm one
 * says as much a row as the sample logs do, the others more on purpose. Of its moves one in ten of a level is a jump within a rock, where
 * the sample logs have none, and fewer of a percent are far ones; fields move without regard to one another, so that unlikely things meet.
 */
export function generatedLog(
  schema: LoggingSchema,
  seed: number,
  noise: Noise,
  metres: number,
): readonly RowSaid[] {
  const random = seeded(seed);
  const met = Object.fromEntries(
    Object.values(schema.lists).map((list) => [list.name, picked(list.codes, 6, random)]),
  );
  const world: World = { schema, random, chance: NOISE[noise], met };
  const rows: RowSaid[] = [];
  let above: Cells | undefined;
  while (rows.length < metres) {
    if (above !== undefined && random() < 0.007) {
      rows.push({ cells: applying(schema, () => NOT_OBSERVED), noReturn: true });
      continue;
    }
    above = nextCells(world, above);
    rows.push({ cells: above });
  }
  return rows;
}

/**
 * The codes that a hole meets, likeliest first. A style gives its keys to what nearly every hole of the deposit type holds,
 * so those come first, in an order of the hole's own; then what has a pair; what has none is met in one hole of ten or so.
 */
function picked(codes: readonly Code[], count: number, random: () => number): readonly string[] {
  return codes
    .filter(isRock)
    .map(({ code, key, pair }) => ({
      code,
      order: key === undefined ? random() ** (pair === undefined ? 10 : 1) : 1 + random(),
    }))
    .sort((a, b) => b.order - a.order)
    .slice(0, count)
    .map(({ code }) => code);
}

/** A void or a loss of return is a metre of its own, never what a hole is made of. */
export function isRock({ retiredSince, caution, noChips }: Code): boolean {
  return retiredSince === undefined && caution?.kind !== 'void' && noChips !== true;
}

function applying(schema: LoggingSchema, cellOf: (field: Field) => Cell): Cells {
  const cells: { [field: string]: Cell } = {};
  for (const field of schema.fields)
    if (fieldApplies(schema, cells, field)) cells[field.name] = cellOf(field);
  return cells;
}

function nextCells(world: World, above: Cells | undefined): Cells {
  const newRock = above === undefined || world.random() < world.chance * 0.7;
  return applying(world.schema, (field) =>
    nextCell(world, field, above?.[field.name], newRock, above === undefined),
  );
}

function nextCell(
  world: World,
  field: Field,
  before: Cell | undefined,
  newRock: boolean,
  first: boolean,
): Cell {
  const { random, chance } = world;
  switch (field.kind) {
    case 'code':
      return field.second
        ? nextRock(world, field.list, before, newRock)
        : nextCode(world, field.list, before, newRock);
    case 'level':
      return nextLevel(world, field, before);
    case 'levels':
      return walkCodes(world, field, 'levels' in (before ?? NONE) ? before : undefined, newRock);
    case 'percents':
      return walkCodes(world, field, 'percents' in (before ?? NONE) ? before : undefined, newRock);
    case 'percent': {
      const steps = stepsOf(world.schema, field);
      const was = before !== undefined && 'percent' in before ? steps.indexOf(before.percent) : 0;
      const step = steps[random() < chance * 1.5 ? walked(was, steps.length - 1, random) : was] ?? 0;
      return step === 0 ? NONE : { percent: step };
    }
    case 'flag':
      return newRock && !first && random() < 0.5 ? { flag: true } : { absent: field.unsaid };
    default:
      return { absent: field.unsaid };
  }
}

/** A code the hole meets, the n-th likeliest met 1/n as often as the first (Zipf): few things make up most of a hole. */
function anyOf(world: World, list: string, not?: string): string {
  const codes = (world.met[list] ?? []).filter((code) => code !== not);
  let left = world.random() * codes.reduce((sum, _, rank) => sum + 1 / (rank + 1), 0);
  const drawn = codes.find((_, rank) => {
    left -= 1 / (rank + 1);
    return left < 0;
  });
  return drawn ?? not ?? '';
}

function nextRock(world: World, list: string, before: Cell | undefined, newRock: boolean): Cell {
  const was = before !== undefined && 'code' in before ? before : undefined;
  const code = newRock || was === undefined ? anyOf(world, list, was?.code) : was.code;
  const moves = world.random() < world.chance * (newRock ? 1 : 0.4);
  const kept = newRock || moves ? undefined : was?.second;
  if (!moves || was?.second !== undefined) return kept === undefined ? { code } : { code, second: kept };
  const percent = [10, 20, 30][Math.floor(world.random() * 3)] ?? 10;
  return { code, second: { code: anyOf(world, list, code), percent } };
}

function nextCode(world: World, list: string, before: Cell | undefined, newRock: boolean): Cell {
  const was = before !== undefined && 'code' in before ? before.code : undefined;
  const changes = was === undefined || world.random() < (newRock ? 0.5 : world.chance * 0.4);
  return { code: changes ? anyOf(world, list, was) : (was ?? '') };
}

/** Required scales (weathering, oxidation) lessen downwards; the others walk. */
function nextLevel(world: World, field: Field, before: Cell | undefined): Cell {
  const { random, chance, schema } = world;
  const highest = scaleOf(schema, field)?.levels.length ?? 1;
  if (before === undefined || !('level' in before)) {
    return {
      level: field.required ? Math.max(1, highest - 1) : 1 + Math.floor(random() * Math.min(3, highest)),
    };
  }
  const { level } = before;
  if (field.required) return { level: random() < chance * 0.4 ? Math.max(1, level - 1) : level };
  return { level: random() < chance * 0.4 ? Math.max(1, walked(level, highest, random)) : level };
}

/** One step up or down, two in a tenth of the moves, three in a twentieth. From the foot twice as often up: what is seen seldom flickers out. */
function walked(from: number, highest: number, random: () => number): number {
  const size = random();
  const steps = size < 0.85 ? 1 : size < 0.95 ? 2 : 3;
  const up = from === 0 ? 1 : from === 1 ? 2 / 3 : 1 / 2;
  const to = from + (random() < up ? steps : -steps);
  return Math.min(highest, Math.max(0, to));
}

/** The steps an amount is on, none first: levels of the scale, or none, trace and the ladder. */
export function stepsOf(schema: LoggingSchema, field: Field): readonly Amount[] {
  const levels = scaleOf(schema, field)?.levels;
  if (levels !== undefined) return [0, ...levels.map(({ level }) => level)];
  if (!('ladder' in field)) return [0];
  return [0, ...(field.traceCountsAsPercent === undefined ? [] : (['trace'] as const)), ...field.ladder];
}

function walkCodes(world: World, field: Field, before: Cell | undefined, newRock: boolean): Cell {
  const { random, chance, schema } = world;
  const steps = stepsOf(schema, field);
  const was: { readonly [code: string]: Amount } =
    before === undefined
      ? {}
      : 'levels' in before
        ? before.levels
        : 'percents' in before
          ? before.percents
          : {};
  const amounts: { [code: string]: Amount } = {};
  for (const [code, amount] of Object.entries(was)) {
    const at = steps.indexOf(amount);
    const to =
      random() < chance * (newRock ? 2.5 : 1.5) ? walked(at, Math.min(8, steps.length - 1), random) : at;
    if (to > 0) amounts[code] = steps[to] ?? amount;
  }
  if (random() < chance * (newRock ? 1.5 : 0.5) && Object.keys(amounts).length < 4) {
    const code = anyOf(world, listOf(schema, field)?.name ?? '');
    if (!Object.hasOwn(was, code))
      amounts[code] = steps[walked(field.kind === 'percents' ? 1 : 0, 3, random)] || (steps[1] ?? 1);
  }
  if (Object.keys(amounts).length === 0) return NONE;
  return field.kind === 'levels' ? { levels: amounts as { [code: string]: number } } : { percents: amounts };
}
