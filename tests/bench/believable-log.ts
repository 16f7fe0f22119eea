import { fieldApplies } from '../../src/schema/applies.ts';
import { type Field, type LoggingSchema, listOf, scaleOf } from '../../src/schema/logging-schema.ts';
import { type Amount, type Cell, NONE, NOT_OBSERVED } from '../../src/value/cell.ts';
import type { Cells, RowSaid } from '../../src/value/row.ts';
import { isRock, seeded } from './shorthand-log.ts';

/**
 * A hole put together from what lies in the ground, where the other generator lets each field wander by itself: rock units between sharp
 * contacts, each with its own colour, fabric and background; a weathering profile by depth; and mineralised structures, whose veins,
 * sulphides and alteration rise together towards their middle and end at a wall. No rule of the entry line was set on these logs.
 */
export function believableLog(schema: LoggingSchema, seed: number, metres: number): readonly RowSaid[] {
  const random = seeded(seed * 7919 + 13);
  const ground: Ground = {
    schema,
    random,
    units: unitsOf(schema, random, metres),
    structures: structuresOf(schema, random, metres),
    rottenTo: 12 + random() * 30,
    freshFrom: 0,
  };
  const fresh = ground.rottenTo + 4 + random() * 18;
  return Array.from({ length: metres }, (_, depth): RowSaid => {
    if (random() < 0.005) return { cells: observedBy(schema, () => NOT_OBSERVED), noReturn: true };
    return { cells: cellsAt({ ...ground, freshFrom: fresh }, depth) };
  });
}

/** A rock unit: what all its metres share. */
type Unit = {
  readonly from: number;
  readonly to: number;
  readonly codes: { readonly [field: string]: string };
  readonly levels: { readonly [field: string]: number };
  /** Background minerals with their levels. */
  readonly background: { readonly [field: string]: { readonly [code: string]: number } };
};

/** A mineralised structure: its middle, how far it reaches, and what peaks there. */
type Structure = {
  readonly at: number;
  readonly reach: number;
  readonly peaks: { readonly [field: string]: { readonly [code: string]: number } };
};

type Ground = {
  readonly schema: LoggingSchema;
  readonly random: () => number;
  readonly units: readonly Unit[];
  readonly structures: readonly Structure[];
  /** Metres down to which the rock is gone to soil, and from which it is fresh. */
  readonly rottenTo: number;
  readonly freshFrom: number;
};

function oneOf<T>(all: readonly T[], random: () => number): T | undefined {
  return all[Math.floor(random() * all.length)];
}

/** A few codes of a list; those with a key first, as a style gives keys to what nearly every hole holds. */
function fewOf(schema: LoggingSchema, field: Field, count: number, random: () => number): readonly string[] {
  const codes = (listOf(schema, field)?.codes ?? []).filter(isRock);
  return codes
    .map(({ code, key }) => ({ code, order: (key === undefined ? 0 : 0.6) + random() }))
    .sort((a, b) => b.order - a.order)
    .slice(0, count)
    .map(({ code }) => code);
}

function unitsOf(schema: LoggingSchema, random: () => number, metres: number): readonly Unit[] {
  const met = new Map(schema.fields.map((field) => [field.name, fewOf(schema, field, 4, random)]));
  const units: Unit[] = [];
  for (let from = 0; from < metres; ) {
    const to = from + 3 + Math.round(-14 * Math.log(1 - random()));
    const codes: { [field: string]: string } = {};
    const levels: { [field: string]: number } = {};
    const background: { [field: string]: { [code: string]: number } } = {};
    for (const field of schema.fields) {
      const code = oneOf(met.get(field.name) ?? [], random);
      if (field.kind === 'code' && code !== undefined) codes[field.name] = code;
      const highest = scaleOf(schema, field)?.levels.length ?? 1;
      if (field.kind === 'level') levels[field.name] = Math.min(highest, 1 + Math.floor(random() * 3));
      if (field.kind === 'levels' && code !== undefined)
        background[field.name] = { [code]: 1 + Math.floor(random() * 2) };
    }
    units.push({ from, to, codes, levels, background });
    from = to;
  }
  return units;
}

/** How strong a structure can be at its middle, by kind of field: a level, or a percent. */
const PEAK = { levels: [2, 3, 4], percents: [1, 2, 3, 5, 10], percent: [2, 5, 10, 20] } as const;

function structuresOf(schema: LoggingSchema, random: () => number, metres: number): readonly Structure[] {
  const count = 1 + Math.round((metres / 100) * (1 + random() * 3));
  return Array.from({ length: count }, (): Structure => {
    const peaks: { [field: string]: { [code: string]: number } } = {};
    for (const field of schema.fields) {
      if (field.kind === 'levels' || field.kind === 'percents')
        peaks[field.name] = Object.fromEntries(
          fewOf(schema, field, 1 + Math.floor(random() * 3), random).map((code) => [
            code,
            oneOf(PEAK[field.kind], random) ?? 1,
          ]),
        );
      if (field.kind === 'percent') peaks[field.name] = { '': oneOf(PEAK.percent, random) ?? 2 };
    }
    return { at: random() * metres, reach: 1.5 + random() * 9, peaks };
  });
}

function observedBy(schema: LoggingSchema, cellOf: (field: Field) => Cell): Cells {
  const cells: { [field: string]: Cell } = {};
  for (const field of schema.fields)
    if (fieldApplies(schema, cells, field)) cells[field.name] = cellOf(field);
  return cells;
}

function cellsAt(ground: Ground, depth: number): Cells {
  const unit = ground.units.find(({ from, to }) => depth >= from && depth < to);
  const isContact = unit?.from === depth && depth > 0;
  return observedBy(ground.schema, (field) => cellAt(ground, field, depth, unit, isContact));
}

function cellAt(
  ground: Ground,
  field: Field,
  depth: number,
  unit: Unit | undefined,
  isContact: boolean,
): Cell {
  switch (field.kind) {
    case 'code': {
      const code = unit?.codes[field.name];
      return code === undefined ? { absent: field.unsaid } : { code };
    }
    case 'level':
      return { level: field.required ? profileAt(ground, field, depth) : (unit?.levels[field.name] ?? 1) };
    case 'levels': {
      const levels = amountsAt(ground, field, depth, unit);
      return Object.keys(levels).length === 0 ? NONE : { levels: levels as { [code: string]: number } };
    }
    case 'percents': {
      const percents = amountsAt(ground, field, depth, unit);
      return Object.keys(percents).length === 0 ? NONE : { percents };
    }
    case 'percent': {
      const percent = amountsAt(ground, field, depth, unit)[''];
      return percent === undefined ? NONE : { percent };
    }
    case 'flag':
      return isContact && ground.random() < 0.5 ? { flag: true } : { absent: field.unsaid };
    default:
      return { absent: field.unsaid };
  }
}

/** A required scale (weathering, oxidation) by depth: its highest at the top, its lowest in fresh rock, in steps between. */
function profileAt({ schema, rottenTo, freshFrom }: Ground, field: Field, depth: number): number {
  const highest = scaleOf(schema, field)?.levels.length ?? 1;
  if (depth < rottenTo / 3) return highest;
  if (depth < rottenTo) return Math.max(1, highest - 1);
  if (depth >= freshFrom) return 1;
  const share = (freshFrom - depth) / (freshFrom - rottenTo);
  return Math.max(1, Math.min(highest - 1, 1 + Math.round(share * (highest - 2))));
}

/** Amounts of a field: the unit's background, and what the structures add towards their middle. Sulphides rust away above the fresh rock. */
function amountsAt(ground: Ground, field: Field, depth: number, unit: Unit | undefined) {
  const { schema, structures, random, rottenTo } = ground;
  const strength: { [code: string]: number } = { ...unit?.background[field.name] };
  for (const { at, reach, peaks } of structures) {
    const near = 1 - Math.abs(depth - at) / reach;
    if (near <= 0 || (field.kind === 'percents' && depth < rottenTo)) continue;
    for (const [code, peak] of Object.entries(peaks[field.name] ?? {}))
      strength[code] = Math.max(strength[code] ?? 0, peak * (0.35 + 0.65 * near) * (0.85 + 0.3 * random()));
  }
  const found: { [code: string]: Amount } = {};
  for (const [code, size] of Object.entries(strength)) {
    const amount = nearestStep(schema, field, size);
    if (amount !== undefined) found[code] = amount;
  }
  return found;
}

/** What the eye calls an amount of this size: a level, or the nearest step of the ladder; a trace under half the first step. */
function nearestStep(schema: LoggingSchema, field: Field, size: number): Amount | undefined {
  const highest = scaleOf(schema, field)?.levels.length;
  if (highest !== undefined) {
    const level = Math.min(highest, Math.round(size));
    return level < 1 ? undefined : level;
  }
  if (!('ladder' in field)) return undefined;
  const [first = 1] = field.ladder;
  if (size < first / 2) return field.traceCountsAsPercent === undefined ? undefined : 'trace';
  return field.ladder.reduce(
    (best, step) => (Math.abs(step - size) < Math.abs(best - size) ? step : best),
    first,
  );
}
