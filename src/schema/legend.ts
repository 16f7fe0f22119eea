import type { Cell } from '../value/cell.ts';
import type { RowSaid } from '../value/row.ts';
import { codeOf, type Field, fieldNamed, type LoggingSchema, scaleOf } from './logging-schema.ts';

/** A field as the legend keeps it: enough to read a cell of it without the schema. */
export type FieldMeaning = {
  readonly label: string;
  readonly kind: Field['kind'];
  readonly unit?: string;
  readonly list?: string;
  readonly scale?: string;
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
  readonly provisional?: true;
};

/** What rows need of a schema to be read without it: fields, scales and codes by name (codes by list and code). */
export type LegendUsed = {
  readonly fields: { readonly [name: string]: FieldMeaning };
  readonly scales: { readonly [name: string]: ScaleMeaning };
  readonly codes: { readonly [listAndCode: string]: CodeMeaning };
};

/** The legend of one row. */
export function legendOf(schema: LoggingSchema, row: RowSaid): LegendUsed {
  return legendOfRows(schema, [row]);
}

/** The legend of several rows. Fields that the schema no longer has stand in the hole's legend already: they are passed over. */
export function legendOfRows(schema: LoggingSchema, rows: readonly RowSaid[]): LegendUsed {
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
      for (const code of codesIn(cell)) Object.assign(codes, codeMeaning(schema, field, code));
    }
  }
  return { fields, scales, codes };
}

function fieldMeaning(field: Field): FieldMeaning {
  return {
    label: field.label,
    kind: field.kind,
    ...('unit' in field ? { unit: field.unit } : {}),
    ...('list' in field ? { list: field.list } : {}),
    ...('scale' in field ? { scale: field.scale } : {}),
  };
}

function codesIn(cell: Cell): readonly string[] {
  if ('code' in cell) return cell.second === undefined ? [cell.code] : [cell.code, cell.second.code];
  if ('levels' in cell) return Object.keys(cell.levels);
  return 'percents' in cell ? Object.keys(cell.percents) : [];
}

function codeMeaning(
  schema: LoggingSchema,
  field: Field,
  code: string,
): { readonly [listAndCode: string]: CodeMeaning } {
  const found = codeOf(schema, field, code);
  if (found === undefined || !('list' in field)) return {};
  const { label, pair, key, cgi, mineral, provisional } = found;
  const optional = { pair, key, cgi, mineral, provisional };
  const said = Object.fromEntries(Object.entries(optional).filter(([, value]) => value !== undefined));
  return { [`${field.list} ${code}`]: { list: field.list, code, label, ...said } };
}
