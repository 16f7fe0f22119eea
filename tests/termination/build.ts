import { depthFromMetres } from '../../src/quantity/depth.ts';
import type { Code, Field, LoggingSchema } from '../../src/schema/logging-schema.ts';
import { evaluateRule } from '../../src/termination/evaluate/evaluate-rule.ts';
import type { Situation } from '../../src/termination/evaluate/situation.ts';
import type { Rule, RuleCondition } from '../../src/termination/rules/rule.ts';
import type { Amount, Cell } from '../../src/value/cell.ts';
import type { Cells, Row } from '../../src/value/row.ts';

const code = (name: string, label: string, more: Partial<Code> = {}): Code => ({
  code: name,
  label,
  look: '',
  ...more,
});

const base = { required: false, carry: true, unsaid: 'none', canBeNone: true } as const;

const FIELDS: readonly Field[] = [
  { ...base, name: 'rock', label: 'Rock', kind: 'code', list: 'rocks', second: true },
  {
    ...base,
    name: 'sulphides',
    label: 'Sulphides',
    kind: 'percents',
    list: 'sulphides',
    sumLimitPercent: 100,
    ladder: [1, 2, 5, 10],
    traceCountsAsPercent: 0.1,
  },
  {
    ...base,
    name: 'habit',
    label: 'Habit',
    kind: 'code',
    list: 'habits',
    second: false,
    onlyWhen: { field: 'sulphides', seen: true },
  },
  { ...base, name: 'weathering', label: 'Weathering', kind: 'level', scale: 'weathering' },
  {
    ...base,
    name: 'suscept',
    label: 'Magnetic susceptibility',
    kind: 'number',
    unit: '10⁻³ SI',
    min: 0,
    max: 1000,
    decimals: 2,
    column: true,
  },
  { ...base, name: 'contact', label: 'Contact', kind: 'flag' },
];

/** A small invented logging schema. */
export const SCHEMA: LoggingSchema = {
  name: 'invented',
  fields: FIELDS,
  lists: {
    rocks: {
      name: 'rocks',
      label: 'Rocks',
      codes: [
        code('BST', 'Basalt'),
        code('GRN', 'Granite'),
        code('VOI', 'Void', { caution: { kind: 'void', words: 'Old workings.' } }),
        code('LOR', 'Loss of return', { noChips: true }),
        code('OLD', 'Old name', { retiredSince: '2026-01-01' }),
      ],
    },
    habits: {
      name: 'habits',
      label: 'Habits',
      codes: [code('DIS', 'Disseminated'), code('MAS', 'Massive')],
    },
    sulphides: {
      name: 'sulphides',
      label: 'Sulphides',
      codes: [code('PYR', 'Pyrite'), code('CPY', 'Chalcopyrite')],
    },
  },
  scales: {
    weathering: {
      name: 'weathering',
      label: 'Weathering',
      levels: [
        { level: 1, code: 'frs', label: 'Fresh', look: '' },
        { level: 2, code: 'wth', label: 'Weathered', look: '' },
      ],
    },
  },
  repeatsBeforeLook: 5,
};

/** Metres of basalt with so much pyrite (0: looked, none seen), or a metre that says nothing of it. */
export type Said = Amount | 'no return' | 'asked' | 'not observed' | 'not logged';

/** The cells of a basalt with so much pyrite. */
export function basalt(pyrite: Amount | 'not observed'): Cells {
  const sulphides: Cell =
    pyrite === 'not observed'
      ? { absent: 'not observed' }
      : pyrite === 0
        ? { absent: 'none' }
        : { percents: { PYR: pyrite } };
  return { rock: { code: 'BST' }, sulphides };
}

/** A row between two depths in metres. */
export function row(fromM: number, toM: number, said: Said | Cells): Row {
  const place = { fromMm: depthFromMetres(fromM), toMm: depthFromMetres(toM) };
  if (typeof said === 'object') return { ...place, cells: said };
  if (said === 'no return')
    return { ...place, cells: { sulphides: { absent: 'not observed' } }, noReturn: true };
  if (said === 'asked') return { ...place, cells: basalt(0), asked: ['already so'] };
  return { ...place, cells: basalt(said === 'not logged' ? 0 : said) };
}

/** Rows of a metre each from `topM`, one for each thing said; `not logged` leaves a gap. */
export function metresOf(said: readonly Said[], topM = 0): readonly Row[] {
  return said.flatMap((each, index) =>
    each === 'not logged' ? [] : [row(topM + index, topM + index + 1, each)],
  );
}

/** The same said so many times. */
export function times(count: number, said: Said): readonly Said[] {
  return Array.from({ length: count }, () => said);
}

/** A hole of 6 m rods, drilled and logged to the foot of its rows unless told otherwise. */
export function situation(
  rows: readonly Row[],
  more: { readonly loggedM?: number; readonly drilledM?: number } & Partial<Situation> = {},
): Situation {
  const { loggedM, drilledM, ...rest } = more;
  const loggedMm =
    loggedM === undefined ? (rows.at(-1)?.toMm ?? depthFromMetres(0)) : depthFromMetres(loggedM);
  return {
    schema: SCHEMA,
    header: { logFromMm: depthFromMetres(0), intervalMm: 1000, rodMm: 6000, firstRodOffsetMm: 0 },
    rows,
    loggedMm,
    drilledMm: drilledM === undefined ? loggedMm : depthFromMetres(drilledM),
    stream: [],
    expects: [],
    direction: [],
    pace: [],
    ...rest,
  };
}

/** A rule of one condition. */
export function rule(when: RuleCondition, more: Partial<Rule> = {}): Rule {
  return { name: 'rule', words: 'because', verdict: 'may end', when, ...more };
}

/** Under 1 % pyrite. */
export const BARREN = { field: 'sulphides', of: 'PYR', lessThan: 1 } as const;

/** The outcome of one condition. */
export function outcome(when: RuleCondition, at: Situation) {
  return evaluateRule(rule(when), at);
}
