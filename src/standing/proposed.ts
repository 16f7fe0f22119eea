import type { Reader } from '../condition/evaluate.ts';
import { rowsDown } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { byReference } from '../record/by-reference.ts';
import type { Document } from '../record/document.ts';
import { type ProposedControl, proposedControls, type ReadRow } from '../sampling/scheme/on-demand.ts';
import { fieldNamed, type LoggingSchema } from '../schema/logging-schema.ts';
import { readCell } from '../schema/read-cell.ts';
import type { Row } from '../value/row.ts';
import { streamStateOf } from './stream.ts';

/** Controls that the log asks for and that no one has chosen yet. A row with an open question asks for none. */
export const proposedOf = byReference((project: Project, hole: Document): readonly ProposedControl[] => {
  const rows = rowsDown(hole)
    .filter(([, row]) => row.asked === undefined && row.noReturn !== true)
    .map(([, row]) => readRow(project.schema, row));
  return proposedControls(project.sampling, streamStateOf(hole), rows);
});

const readRow = byReference((schema: LoggingSchema, row: Row): ReadRow => {
  const { fromMm, toMm } = row;
  return { fromMm, toMm, read: readerOf(schema, row) };
});

function readerOf(schema: LoggingSchema, row: Row): Reader {
  return (name, of) => {
    const field = fieldNamed(schema, name);
    const cell = row.cells[name];
    return field === undefined || cell === undefined
      ? { says: 'unknown' }
      : readCell(schema, field, cell, of);
  };
}
