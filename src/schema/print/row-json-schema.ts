import { DEEPEST_M } from '../../quantity/depth.ts';
import type { JsonObject } from '../../record/json.ts';
import { SECOND_AT_MOST_PERCENT } from '../check/cell-checks.ts';
import {
  rowDecimals,
  rowEventOff,
  rowInterval,
  rowOnlyWhen,
  rowQualifierOff,
  rowSecondIsFirst,
  rowSumOverLimit,
  rowUnlikely,
} from '../findings.ts';
import {
  type Field,
  type FieldOf,
  type LoggingSchema,
  listOf,
  qualifiersOf,
  scaleOf,
} from '../logging-schema.ts';

/** Kinds of finding on a row whose rules JSON Schema can't hold; an exported schema says so. */
export const BEYOND_JSON_SCHEMA = [
  rowInterval,
  rowEventOff,
  rowOnlyWhen,
  rowQualifierOff,
  rowSumOverLimit,
  rowSecondIsFirst,
  rowDecimals,
  rowUnlikely,
];

const text = { type: 'string', minLength: 1, maxLength: 2000 };
const depth = (description: string): JsonObject => ({
  type: 'integer',
  minimum: 0,
  maximum: DEEPEST_M * 1000,
  description,
});
const strict = (properties: JsonObject, required: readonly string[], more: JsonObject = {}): JsonObject => ({
  type: 'object',
  properties,
  required,
  additionalProperties: false,
  ...more,
});

/** JSON Schema (2020-12) of the rows of one project: its fields, codes, levels and limits. */
export function rowJsonSchema(schema: LoggingSchema): JsonObject {
  const cells = Object.fromEntries(schema.fields.map((field) => [field.name, cellSchema(schema, field)]));
  const always = schema.fields.filter((field) => field.onlyWhen === undefined).map((field) => field.name);
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: `Rows logged with ${schema.name}`,
    description: `One logged row. Not held by this schema: ${BEYOND_JSON_SCHEMA.map((kind) => kind.title).join(' ')}`,
    ...strict(
      {
        fromMm: depth('Top of the row along the hole, in whole millimetres'),
        toMm: depth('Bottom of the row along the hole, in whole millimetres'),
        cells: strict(cells, always, { description: 'What was observed, by field' }),
        noReturn: { const: true, description: 'No chips came up: every cell is not observed' },
        carried: { type: 'array', items: text, description: 'Fields that carried from the row above' },
        repeat: { const: true, description: 'Said to be the same as the row above' },
        asked: { type: 'array', items: text, description: 'Asked and not settled yet' },
        askedOf: { type: 'array', items: text, description: 'Fields that the open questions are about' },
        remark: text,
      },
      ['fromMm', 'toMm', 'cells'],
    ),
    if: { required: ['noReturn'] },
    // biome-ignore lint/suspicious/noThenProperty: `then` is the word of JSON Schema
    then: { properties: { cells: { additionalProperties: absent('not observed') } } },
  };
}

function absent(...absences: readonly string[]): JsonObject {
  return strict({ absent: { enum: absences } }, ['absent']);
}

function cellSchema(schema: LoggingSchema, field: Field): JsonObject {
  const absences = absent(...(field.canBeNone ? ['none', 'not observed'] : ['not observed']));
  return { description: describe(field), anyOf: [absences, valueSchema(schema, field)] };
}

function describe(field: Field): string {
  return field.kind === 'number' ? `${field.label}, in ${field.unit}` : field.label;
}

function valueSchema(schema: LoggingSchema, field: Field): JsonObject {
  const codes = { enum: listOf(schema, field)?.codes.map((code) => code.code) ?? [] };
  const levels = scaleOf(schema, field)?.levels ?? [];
  const level = { enum: levels.map((each) => each.level), description: levels.map(levelInWords).join('; ') };
  switch (field.kind) {
    case 'code':
      return strict(
        { code: codes, ...sharesSchema(field, secondSchema(codes)), ...qualified(schema, field, codes) },
        ['code'],
      );
    case 'codes':
      return strict({ codes: byCode(codes, { const: true }), ...qualified(schema, field, codes) }, ['codes']);
    case 'level':
      return strict({ level }, ['level']);
    case 'levels':
      return strict({ levels: byCode(codes, level), ...qualified(schema, field, codes) }, ['levels']);
    case 'percents':
      return strict({ percents: byCode(codes, amountSchema(field)), ...qualified(schema, field, codes) }, [
        'percents',
      ]);
    case 'events':
      return strict({ events: byCode(codes, EVENT) }, ['events']);
    case 'percent':
      return strict({ percent: amountSchema(field) }, ['percent']);
    case 'number':
      return strict({ number: { type: 'number', minimum: field.min, maximum: field.max } }, ['number']);
    case 'flag':
      return strict({ flag: { const: true } }, ['flag']);
    case 'text':
      return strict({ text }, ['text']);
  }
}

/** Where an event is and what was measured of it; the limits of the measure are each code's own. */
const EVENT = strict({ atMm: depth('Where it is, in whole millimetres'), number: { type: 'number' } }, []);

/** What more can be said of codes, by code and list; nothing where the field has no qualifiers. */
function qualified(schema: LoggingSchema, field: Field, codes: JsonObject): JsonObject {
  const lists = qualifiersOf(field).map(
    ({ list }) => [list, { enum: schema.lists[list]?.codes.map(({ code }) => code) ?? [] }] as const,
  );
  if (lists.length === 0) return {};
  const qualities = strict(Object.fromEntries(lists), [], { minProperties: 1 });
  return { qualified: byCode(codes, qualities) };
}

function sharesSchema({ second, third }: FieldOf<'code'>, share: JsonObject): JsonObject {
  return { ...(second ? { second: share } : {}), ...(second && third === true ? { third: share } : {}) };
}

function levelInWords(level: { readonly level: number; readonly label: string }): string {
  return `${level.level} ${level.label}`;
}

function secondSchema(codes: JsonObject): JsonObject {
  const percent = {
    type: 'number',
    exclusiveMinimum: 0,
    maximum: SECOND_AT_MOST_PERCENT,
    description: 'Share, in percent',
  };
  return strict({ code: codes, percent }, ['code', 'percent']);
}

function byCode(codes: JsonObject, amount: JsonObject): JsonObject {
  return { type: 'object', propertyNames: codes, additionalProperties: amount, minProperties: 1 };
}

function amountSchema(field: { readonly traceCountsAsPercent?: number }): JsonObject {
  const percent = { type: 'number', exclusiveMinimum: 0, maximum: 100, description: 'In percent' };
  return field.traceCountsAsPercent === undefined ? percent : { anyOf: [percent, { const: 'trace' }] };
}
