import type { Finding } from '../finding/finding.ts';
import { headerOf, holeNouns, rowsDown } from '../hole/hole.ts';
import type { Interval } from '../quantity/interval.ts';
import type { Document } from '../record/document.ts';
import { codesIn } from '../schema/codes-in.ts';
import { provisional } from '../schema/findings.ts';
import { fieldNamed, type LoggingSchema } from '../schema/logging-schema.ts';
import type { Row } from '../value/row.ts';

/** A code added on the rig that camp has not settled, and where rows use it. */
export interface ProvisionalCode {
  readonly list: string;
  readonly code: string;
  readonly label: string;
  /** What was said of its looks on the rig; empty where nothing was. */
  readonly look: string;
  readonly pair?: string;
  /** Holes with rows that hold it: how many, and the first from the top. None where no row uses it yet. */
  readonly uses: readonly { readonly hole: string; readonly rows: number; readonly first: Interval }[];
}

/**
 * Codes that wait for camp: those that the schema marks provisional, in its order, and those that only the legend of a hole
 * still has (its rows came from a rig whose logging.json did not come along). A code that camp has settled is not among them.
 */
export function provisionalCodes(
  schema: LoggingSchema,
  documents: Iterable<Document>,
): readonly ProvisionalCode[] {
  const holes = [...documents].filter((document) => document.kind === 'hole');
  const ours = Object.values(schema.lists).flatMap((list) =>
    list.codes.filter((code) => code.provisional === true).map((code) => ({ ...code, list: list.name })),
  );
  const legends = holes.flatMap((hole) =>
    holeNouns(hole, 'legendCodes').filter(
      ({ list, code, ...more }) =>
        more.provisional === true && !schema.lists[list]?.codes.some((each) => each.code === code),
    ),
  );
  const foreign = new Map(legends.map((code) => [`${code.list} ${code.code}`, { ...code, look: '' }]));
  return [...ours, ...foreign.values()].map(({ list, code, label, look, pair }) => ({
    list,
    code,
    label,
    look,
    ...(pair === undefined ? {} : { pair }),
    uses: holes.flatMap((hole) => usesIn(hole, schema, list, code)),
  }));
}

/** The same for one hole, as notes: each code that its rows hold, how many they are, and the first. */
export function provisionalInHole(schema: LoggingSchema, hole: Document): readonly Finding[] {
  return provisionalCodes(schema, [hole]).flatMap(({ list, code, label, uses }) =>
    uses.map(({ hole: name, rows, first }) =>
      provisional.at(
        { hole: name, ...first, thing: `list ${list}, code ${code}` },
        {
          problem: `${code} (${label}) was added on the rig, and ${rows === 1 ? '1 row holds' : `${rows} rows hold`} it from here down`,
          remedy: 'Ask camp: take "provisional" out of it in logging.json, or amend the rows and retire it.',
        },
      ),
    ),
  );
}

function usesIn(hole: Document, schema: LoggingSchema, list: string, code: string): ProvisionalCode['uses'] {
  const legend = new Map(Object.entries(hole.tables.legendFields ?? {}));
  const listOf = (name: string): unknown => {
    const field = fieldNamed(schema, name);
    return field !== undefined && 'list' in field ? field.list : legend.get(name)?.list;
  };
  const rows = rowsDown(hole).flatMap(([, row]) => (holds(row, code, list, listOf) ? [row] : []));
  const [first] = rows;
  if (first === undefined) return [];
  return [
    {
      hole: headerOf(hole).name,
      rows: rows.length,
      first: { fromMm: first.fromMm, toMm: first.toMm },
    },
  ];
}

function holds(row: Row, code: string, list: string, listOf: (field: string) => unknown): boolean {
  return Object.entries(row.cells).some(
    ([field, cell]) => listOf(field) === list && codesIn(cell).includes(code),
  );
}
