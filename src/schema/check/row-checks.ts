import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { absenceOf, type Cell } from '../../value/cell.ts';
import type { Row } from '../../value/row.ts';
import { fieldApplies } from '../applies.ts';
import {
  rowEventOff,
  rowFieldMissing,
  rowFieldUnknown,
  rowInterval,
  rowNoReturnObserves,
  rowOnlyWhen,
  rowUnlikely,
} from '../findings.ts';
import { type Field, fieldNamed, type LoggingSchema } from '../logging-schema.ts';
import { checkCell } from './cell-checks.ts';
import { unlikelyIn } from './unlikely.ts';

/**
 * What keeps a row from being one of this schema: every field that applies is there with a value of its kind, and no other.
 * `place` is where the row is from (a hole, a file); interval and field are added to it. Retired codes pass: old rows have them.
 */
export function checkRow(schema: LoggingSchema, row: Row, place: Place = {}): readonly Finding[] {
  const at = { ...place, fromMm: row.fromMm, toMm: row.toMm };
  return [
    ...(row.toMm > row.fromMm
      ? []
      : [rowInterval.at(at, { problem: 'the row has no length', remedy: 'Correct its depths.' })]),
    ...Object.keys(row.cells)
      .filter((name) => fieldNamed(schema, name) === undefined)
      .map((name) =>
        rowFieldUnknown.at(
          { ...at, field: name },
          {
            problem: `no field is called ${name}`,
            remedy: 'Put the field back into the schema, or amend the row.',
          },
        ),
      ),
    ...schema.fields.flatMap((field) => checkField(schema, row, field, at)),
    ...unlikelyIn(schema, row.cells).map(({ words }) =>
      rowUnlikely.at(at, { problem: words, remedy: 'Look again; if it is right, say why in the remark.' }),
    ),
  ];
}

function checkField(schema: LoggingSchema, row: Row, field: Field, place: Place): readonly Finding[] {
  const at = { ...place, field: field.name };
  const cell = Object.hasOwn(row.cells, field.name) ? row.cells[field.name] : undefined;
  const applies = fieldApplies(schema, row.cells, field);
  const remedy = 'Amend the row.';
  if (cell === undefined) {
    if (!applies) return [];
    const kind = field.onlyWhen === undefined ? rowFieldMissing : rowOnlyWhen;
    return [kind.at(at, { problem: `${field.label} is missing`, remedy })];
  }
  return [
    ...(applies ? [] : [rowOnlyWhen.at(at, { problem: `${field.label} is not asked of this row`, remedy })]),
    ...(row.noReturn === true && absenceOf(cell) !== 'not observed'
      ? [rowNoReturnObserves.at(at, { problem: `${field.label} is observed, and nothing came up`, remedy })]
      : []),
    ...checkCell(schema, field, cell).map(({ kind, ...said }) => kind.at(at, said)),
    ...eventsOutside(row, cell).map((code) =>
      rowEventOff.at(at, {
        problem: `${code} is not inside the row`,
        remedy: 'Move it, or amend the row that it is in.',
      }),
    ),
  ];
}

/** Events of a cell whose depth is not inside the row, the top of it in and the bottom out. */
function eventsOutside(row: Row, cell: Cell): readonly string[] {
  if (!('events' in cell)) return [];
  return Object.entries(cell.events).flatMap(([code, { atMm }]) =>
    atMm === undefined || (atMm >= row.fromMm && atMm < row.toMm) ? [] : [code],
  );
}
