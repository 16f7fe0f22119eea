import type { Reader } from '../condition/evaluate.ts';
import { rowsDown } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import { type ProposedControl, proposedControls } from '../sampling/scheme/on-demand.ts';
import { fieldNamed, type LoggingSchema } from '../schema/logging-schema.ts';
import { readCell } from '../schema/read-cell.ts';
import type { Row } from '../value/row.ts';
import { byReference } from './by-reference.ts';
import { streamStateOf } from './stream.ts';

/** Controls that the log asks for and that no one has chosen yet. A row with an open question asks for none. */
export const proposedOf = byReference((project: Project, hole: Document): readonly ProposedControl[] => {
  const rows = rowsDown(hole)
    .filter(([, row]) => row.asked === undefined && row.noReturn !== true)
    .map(([, row]) => ({ fromMm: row.fromMm, toMm: row.toMm, read: readerOf(project.schema, row) }));
  return proposedControls(project.sampling, streamStateOf(hole), rows);
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
