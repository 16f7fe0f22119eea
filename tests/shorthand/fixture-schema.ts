import type { Field, LoggingSchema } from '../../src/schema/logging-schema.ts';
import type { EntryContext } from '../../src/shorthand/parse.ts';
import { type ParsedRow, parseLine } from '../../src/shorthand/parse.ts';
import type { RowSaid } from '../../src/value/row.ts';

const base = { required: false, carry: true, unsaid: 'not observed', canBeNone: true } as const;
const LADDER = [0.5, 1, 2, 3, 5, 7, 10, 15, 20, 30, 50];

const fields: readonly Field[] = [
  {
    ...base,
    name: 'rock',
    label: 'rock',
    kind: 'code',
    list: 'rocks',
    second: true,
    required: true,
    canBeNone: false,
  },
  {
    ...base,
    name: 'weathering',
    label: 'weathering',
    kind: 'level',
    scale: 'weathering',
    pair: 'we',
    required: true,
    canBeNone: false,
  },
  {
    ...base,
    name: 'regolith',
    label: 'regolith unit',
    kind: 'code',
    list: 'units',
    second: false,
    required: true,
    canBeNone: false,
    onlyWhen: { field: 'weathering', atLeast: 3 },
  },
  {
    ...base,
    name: 'alteration',
    label: 'alteration',
    kind: 'levels',
    list: 'alterations',
    scale: 'strength',
    unsaid: 'none',
  },
  {
    ...base,
    name: 'sulphides',
    label: 'sulphides',
    kind: 'percents',
    list: 'sulphides',
    ladder: LADDER,
    traceCountsAsPercent: 0.1,
    sumLimitPercent: 60,
    unsaid: 'none',
  },
  {
    ...base,
    name: 'veins',
    label: 'veins',
    kind: 'percent',
    ladder: LADDER,
    pair: 'vn',
    key: 'v',
    unsaid: 'none',
  },
  { ...base, name: 'contact', label: 'contact', kind: 'flag', pair: 'ct', carry: false, unsaid: 'none' },
  {
    ...base,
    name: 'magsus',
    label: 'susceptibility',
    kind: 'number',
    unit: '1e-3 SI',
    min: -5,
    max: 2000,
    decimals: 1,
    column: true,
    carry: false,
    canBeNone: false,
  },
  { ...base, name: 'note', label: 'note', kind: 'text', carry: false },
];

const look = 'as drawn on the chart in the caravan';

/** A small schema with every kind of field. Invented for the tests. */
export const schema: LoggingSchema = {
  name: 'fixture',
  fields,
  lists: {
    rocks: {
      name: 'rocks',
      label: 'rocks',
      codes: [
        { code: 'BST', label: 'basalt', look, pair: 'bs' },
        { code: 'SHL', label: 'shale', look, pair: 'sh' },
        { code: 'DOL', label: 'dolerite', look, pair: 'do' },
        {
          code: 'BIF',
          label: 'banded iron',
          look,
          caution: { kind: 'fibre', words: 'may hold fibre: keep it wet, wear the mask' },
        },
        { code: 'OLD', label: 'old basalt', look, pair: 'ob', retiredSince: '2026-01-01' },
      ],
    },
    units: {
      name: 'units',
      label: 'regolith units',
      codes: [
        { code: 'SAP', label: 'saprolite', look, pair: 'sp' },
        { code: 'LAT', label: 'laterite', look, pair: 'la' },
      ],
    },
    alterations: {
      name: 'alterations',
      label: 'alteration minerals',
      codes: [
        { code: 'chl', label: 'chlorite', look, pair: 'cl', key: 'c' },
        { code: 'ser', label: 'sericite', look, pair: 'se' },
        { code: 'sil', label: 'silica', look, pair: 'si', key: 's' },
      ],
    },
    sulphides: {
      name: 'sulphides',
      label: 'sulphides',
      codes: [
        { code: 'pyr', label: 'pyrite', look, pair: 'py', key: 'p' },
        { code: 'ccp', label: 'chalcopyrite', look, pair: 'hl', key: 'h' },
      ],
    },
  },
  scales: {
    weathering: {
      name: 'weathering',
      label: 'weathering',
      levels: ['fresh', 'slight', 'moderate', 'high', 'complete'].map((label, index) => ({
        level: index + 1,
        code: label.slice(0, 3),
        label,
        look,
      })),
    },
    strength: {
      name: 'strength',
      label: 'strength',
      levels: ['weak', 'moderate', 'strong', 'intense'].map((label, index) => ({
        level: index + 1,
        label,
        look,
      })),
    },
  },
  repeatsBeforeLook: 3,
};

/** Reads a line that has to be a row. */
export function rowOf(line: string, context: Partial<EntryContext> = {}): ParsedRow {
  const parsed = parseLine(line, { schema, ...context });
  if (parsed.kind !== 'row') throw new Error(`${line} is not a row: ${JSON.stringify(parsed)}`);
  return parsed;
}

/** Basalt, fresh, chlorite 2, silica 1, pyrite 2 %, veins 5 %. */
export const above: RowSaid = rowOf('bswe1cl2si1py2vn5').row;
