import { allMeanings, type Meanings } from '../../schema/legend.ts';
import { listOf, scaleOf } from '../../schema/logging-schema.ts';
import { legendOf } from '../../standing/hole-schema.ts';
import { VALUE_KINDS } from '../../value/cell.ts';
import { date, integer, number, optional, text, yesNo } from './column.ts';
import { defineTable, holesOf, type Source } from './table.ts';

const IN_SCHEMA = yesNo('logging.json has it now; else only rows logged earlier know it');

/** What the schema says today, and what the legends of the holes keep of things that it no longer has. */
function meanings({ project, documents }: Source): { readonly today: Meanings; readonly earlier: Meanings } {
  const today = allMeanings(project.schema);
  const legends = holesOf({ of: documents }).map(legendOf);
  const gone = <T>(table: keyof Meanings): Record<string, T> =>
    Object.fromEntries(
      legends
        .flatMap((legend) => Object.entries(legend[table]))
        .filter(([name]) => !Object.hasOwn(today[table], name))
        .toSorted(([a], [b]) => (a < b ? -1 : 1)),
    ) as Record<string, T>;
  return { today, earlier: { fields: gone('fields'), scales: gone('scales'), codes: gone('codes') } };
}

/** Code tables. */
export const CODES = defineTable({
  name: 'codes',
  about: 'Every code of every list, with its meaning.',
  key: ['list', 'code'],
  columns: {
    list: text('Name of the list'),
    code: text('The code'),
    label: text('What it means'),
    in_schema: IN_SCHEMA,
    look: optional(text('What it looks like in washed chips'), 'not described'),
    cgi: optional(text('Term of the CGI vocabularies (IUGS)'), 'no cross-reference'),
    mineral: optional(text('Mineral symbol after Warr (2021)'), 'no cross-reference'),
    density_g_cm3: optional(number('Density', 'g/cm3'), 'none given'),
    caution: optional(text('What can hurt someone where it is seen'), 'no caution'),
    retired_since: optional(date('Since when it is no longer used'), 'in use'),
    provisional: yesNo('Added on the rig, not yet agreed with camp'),
  },
  rows: (source) => {
    const { lists } = source.project.schema;
    const today = Object.values(lists).flatMap((list) =>
      list.codes.map((code) => ({
        list: list.name,
        code: code.code,
        label: code.label,
        in_schema: true,
        look: code.look === '' ? undefined : code.look,
        cgi: code.cgi,
        mineral: code.mineral,
        density_g_cm3: code.densityGcm3,
        caution: code.caution?.words,
        retired_since: code.retiredSince,
        provisional: code.provisional === true,
      })),
    );
    const earlier = Object.values(meanings(source).earlier.codes).map((code) => ({
      list: code.list,
      code: code.code,
      label: code.label,
      in_schema: false,
      look: undefined,
      cgi: code.cgi,
      mineral: code.mineral,
      density_g_cm3: undefined,
      caution: undefined,
      retired_since: undefined,
      provisional: code.provisional === true,
    }));
    return [...today, ...earlier];
  },
});

/** Ordinal scales. */
export const SCALES = defineTable({
  name: 'scales',
  about:
    'Every level of every ordinal scale. 0 is never a level: it is how "looked, none seen" stands in the column of a level.',
  key: ['scale', 'level'],
  columns: {
    scale: text('Name of the scale'),
    level: integer('The level, from 1'),
    code: optional(text('Code of the level'), 'it has none'),
    label: text('What it means'),
    look: optional(text('What it looks like in washed chips'), 'not described'),
    in_schema: IN_SCHEMA,
  },
  rows: (source) => {
    const { today, earlier } = meanings(source);
    const rows = (scales: Meanings['scales'], in_schema: boolean) =>
      Object.entries(scales).flatMap(([scale, { levels }]) =>
        levels.map(({ level, code, label, look }) => ({
          scale,
          level,
          code,
          label,
          look: look === '' ? undefined : look,
          in_schema,
        })),
      );
    return [...rows(today.scales, true), ...rows(earlier.scales, false)];
  },
});

/** The fields of the log. */
export const FIELDS = defineTable({
  name: 'fields',
  about: 'The fields of the log, in the order of the log sheet.',
  key: ['field'],
  columns: {
    field: text('Name of the field'),
    label: text('What it is'),
    kind: text(VALUE_KINDS.join(', ')),
    in_schema: IN_SCHEMA,
    unit: optional(text('Unit'), 'it has none'),
    list: optional(text('List that its codes are of'), 'it has no codes'),
    scale: optional(text('Scale that its levels are on'), 'it has no levels'),
    required: optional(yesNo('Every row has to say it'), 'the schema no longer has the field'),
    can_be_none: optional(
      yesNo('Looked and none seen can be said of it'),
      'the schema no longer has the field',
    ),
    trace_counts_as_percent: optional(
      number('What a trace counts as in sums and rules', '%'),
      'no trace can be said',
    ),
  },
  rows: (source) => {
    const { schema } = source.project;
    const today = schema.fields.map((field) => ({
      field: field.name,
      label: field.label,
      kind: field.kind,
      in_schema: true,
      unit: 'unit' in field ? field.unit : undefined,
      list: listOf(schema, field)?.name,
      scale: scaleOf(schema, field)?.name,
      required: field.required,
      can_be_none: field.canBeNone,
      trace_counts_as_percent: 'traceCountsAsPercent' in field ? field.traceCountsAsPercent : undefined,
    }));
    const earlier = Object.entries(meanings(source).earlier.fields).map(([field, meaning]) => ({
      field,
      label: meaning.label,
      kind: meaning.kind,
      in_schema: false,
      unit: meaning.unit,
      list: meaning.list,
      scale: meaning.scale,
      required: undefined,
      can_be_none: undefined,
      trace_counts_as_percent: undefined,
    }));
    return [...today, ...earlier];
  },
});
