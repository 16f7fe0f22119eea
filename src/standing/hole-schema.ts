import type { Finding } from '../finding/finding.ts';
import { isOver } from '../hole/header.ts';
import { headerOf, holeThings, planOf, rowsDown } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { formatInterval } from '../quantity/interval.ts';
import { byReference } from '../record/by-reference.ts';
import type { Document } from '../record/document.ts';
import { canSay } from '../schema/cautions.ts';
import { withoutShifted } from '../schema/change/frozen-strokes.ts';
import { changesUnder, type Held } from '../schema/change/schema-change.ts';
import { codesIn } from '../schema/codes-in.ts';
import { changeStrokesDropped, changeStrokesShifted, hazardUnloggable } from '../schema/findings.ts';
import type { Meanings } from '../schema/legend.ts';
import type { LoggingSchema } from '../schema/logging-schema.ts';
import { type Cell, qualifiedIn } from '../value/cell.ts';

/** What the rows of a hole mean, as its legend keeps it. */
export function legendOf(hole: Document): Meanings {
  return {
    fields: Object.fromEntries(holeThings(hole, 'legendFields')) as Meanings['fields'],
    scales: Object.fromEntries(holeThings(hole, 'legendScales')) as Meanings['scales'],
    codes: Object.fromEntries(holeThings(hole, 'legendCodes')) as Meanings['codes'],
  };
}

/** Dangers that the plan of a hole expects and that no code of the schema stands for. */
export function hazardsUnloggable(schema: LoggingSchema, hole: Document): readonly Finding[] {
  return (planOf(hole)?.expects ?? []).flatMap(({ name, hazard }) =>
    hazard === undefined || canSay(schema, hazard)
      ? []
      : [
          hazardUnloggable.at(
            { hole: headerOf(hole).name },
            {
              problem: `the plan expects ${name} (${hazard}), and no code in use has a caution that says ${hazard}`,
              remedy: `Give the code for it "caution": { "kind": "${hazard}", … } in logging.json.`,
            },
          ),
        ],
  );
}

/**
 * The project as a hole is logged with it: a pair or key that its rows were logged with and that the schema now gives to
 * something else types nothing there. The very same project where nothing has shifted.
 */
export const projectForHole = byReference((project: Project, hole: Document): Project => {
  const schema = withoutShifted(project.schema, legendOf(hole));
  return schema === project.schema ? project : { ...project, schema };
});

/**
 * What the schema changes for the rows of a hole: each with how many rows hold it, the first of them, and what they would mean
 * now. What types them is said of a hole that may still be logged, and no longer of one that is over.
 */
export const schemaChangesOf = byReference((schema: LoggingSchema, hole: Document): readonly Finding[] => {
  const { name, state } = headerOf(hole);
  return changesUnder(legendOf(hole), schema, { hole: name }, (held) => rowsHolding(hole, held)).filter(
    ({ code }) =>
      !isOver(state) || (code !== changeStrokesShifted.code && code !== changeStrokesDropped.code),
  );
});

function rowsHolding(hole: Document, held: Held): string | undefined {
  const fields = legendOf(hole).fields;
  const rows = rowsDown(hole).filter(([, row]) =>
    Object.entries(row.cells).some(([name, cell]) => {
      if ('field' in held) return name === held.field;
      const field = fields[name];
      if ('list' in held)
        return (
          (field?.list === held.list && codesIn(cell).includes(held.code)) ||
          Object.values(qualifiedIn(cell)).some((qualities) => qualities[held.list] === held.code)
        );
      return field?.scale === held.scale && levelsIn(cell).includes(held.level);
    }),
  );
  const first = rows[0]?.[1];
  if (first === undefined) return undefined;
  return rows.length === 1
    ? `1 row, ${formatInterval(first)}`
    : `${rows.length} rows, the first ${formatInterval(first)}`;
}

function levelsIn(cell: Cell): readonly number[] {
  if ('level' in cell) return [cell.level];
  return 'levels' in cell ? Object.values(cell.levels) : [];
}
