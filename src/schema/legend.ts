import { qualifiedIn } from '../value/cell.ts';
import type { RowSaid } from '../value/row.ts';
import { codesIn } from './codes-in.ts';
import { type Code, codeOf, type Field, fieldNamed, type LoggingSchema, scaleOf } from './logging-schema.ts';

/** A field as the legend keeps it: enough to read a cell of it without the schema, and the strokes that typed it. */
export type FieldMeaning = {
  readonly label: string;
  readonly kind: Field['kind'];
  readonly unit?: string;
  readonly list?: string;
  readonly scale?: string;
  readonly pair?: string;
  readonly key?: string;
};

/** A scale as the legend keeps it. */
export type ScaleMeaning = {
  readonly label: string;
  readonly levels: readonly {
    readonly level: number;
    readonly code?: string;
    readonly label: string;
    readonly look: string;
  }[];
};

/** A code as the legend keeps it: what it means, and the strokes that typed it. */
export type CodeMeaning = {
  readonly list: string;
  readonly code: string;
  readonly label: string;
  readonly pair?: string;
  readonly key?: string;
  readonly cgi?: string;
  readonly mineral?: string;
  /** The unit of what is measured of it, where it is an event. */
  readonly unit?: string;
  readonly provisional?: true;
  /** A metre of it alone gives nothing to sample: a void, a loss of return. */
  readonly noChips?: true;
};

/** What rows need of a schema to be read without it: fields, scales and codes by name (codes by list and code). */
export type Meanings = {
  readonly fields: { readonly [name: string]: FieldMeaning };
  readonly scales: { readonly [name: string]: ScaleMeaning };
  readonly codes: { readonly [listAndCode: string]: CodeMeaning };
};

/** The legend of several rows. Fields that the schema no longer has stand in the hole's legend already: they are passed over. */
export function meaningsOf(schema: LoggingSchema, rows: readonly RowSaid[]): Meanings {
  const fields: { [name: string]: FieldMeaning } = {};
  const scales: { [name: string]: ScaleMeaning } = {};
  const codes: { [listAndCode: string]: CodeMeaning } = {};
  for (const row of rows) {
    for (const [name, cell] of Object.entries(row.cells)) {
      const field = fieldNamed(schema, name);
      if (field === undefined) continue;
      fields[name] ??= fieldMeaning(field);
      const scale = scaleOf(schema, field);
      if (scale !== undefined) scales[scale.name] ??= { label: scale.label, levels: scale.levels };
      if (!('list' in field)) continue;
      for (const named of codesIn(cell)) {
        const code = codeOf(schema, field, named);
        if (code !== undefined) codes[`${field.list} ${named}`] ??= codeMeaning(field.list, code);
      }
      for (const [list, named] of Object.values(qualifiedIn(cell)).flatMap(Object.entries<string>)) {
        const code = schema.lists[list]?.codes.find((each) => each.code === named);
        if (code !== undefined) codes[`${list} ${named}`] ??= codeMeaning(list, code);
      }
    }
  }
  return { fields, scales, codes };
}

/** The legend of a whole schema, used or not: what stands to be changed when a schema is. */
export function allMeanings(schema: LoggingSchema): Meanings {
  const codes: { [listAndCode: string]: CodeMeaning } = {};
  for (const list of Object.values(schema.lists))
    for (const code of list.codes) codes[`${list.name} ${code.code}`] = codeMeaning(list.name, code);
  return {
    fields: Object.fromEntries(schema.fields.map((field) => [field.name, fieldMeaning(field)])),
    scales: Object.fromEntries(
      Object.values(schema.scales).map(({ name, label, levels }) => [name, { label, levels }]),
    ),
    codes,
  };
}

function fieldMeaning(field: Field): FieldMeaning {
  return {
    label: field.label,
    kind: field.kind,
    ...('unit' in field ? { unit: field.unit } : {}),
    ...('list' in field ? { list: field.list } : {}),
    ...('scale' in field ? { scale: field.scale } : {}),
    ...('pair' in field && field.pair !== undefined ? { pair: field.pair } : {}),
    ...('key' in field && field.key !== undefined ? { key: field.key } : {}),
  };
}

function codeMeaning(list: string, found: Code): CodeMeaning {
  const { code, label, pair, key, cgi, mineral, measure, provisional } = found;
  const noChips = found.noChips === true || found.caution?.kind === 'void' ? true : undefined;
  const optional = { pair, key, cgi, mineral, unit: measure?.unit, provisional, noChips };
  const said = Object.fromEntries(Object.entries(optional).filter(([, value]) => value !== undefined));
  return { list, code, label, ...said };
}
