import { describe, expect, it } from 'vitest';
import { replaceRows } from '../../../src/hole/commands/rows.ts';
import { rowsDown } from '../../../src/hole/hole.ts';
import { depthFromMetres, depthFromMm } from '../../../src/quantity/depth.ts';
import { apply, inverse } from '../../../src/record/apply.ts';
import type { Change, Document, Thing } from '../../../src/record/document.ts';
import { checkMovedRows } from '../../../src/sampling/stream/moved-rows.ts';
import type { Row } from '../../../src/value/row.ts';
import { at, granted, hole } from '../../shift/build.ts';

const mm = depthFromMetres;
const NOTHING_NEW = { fields: {}, scales: {}, codes: {} };

function edited(document: Document, changes: readonly Change[]): Document {
  const done = apply(document, { edit: 'x-1', at: at('08:00'), by: 'NOK', what: 'an edit' }, changes);
  if (!done.ok) throw new Error(done.problem);
  return done.document;
}

/** Four metres logged, and the bags of the first three issued. */
const BAGGED = edited(
  hole('ZQRC004', {
    bags: [0, 1, 2].map(
      (metre): Thing => ({
        number: `ZQ00013${metre}`,
        kind: 'primary',
        fromMm: mm(metre),
        toMm: mm(metre + 1),
      }),
    ),
  }),
  [0, 1, 2, 3].map(
    (metre): Change => ({
      put: ['rows', `k-${metre}`],
      thing: { fromMm: mm(metre), toMm: mm(metre + 1), cells: {} },
    }),
  ),
);

/** The hole with its rows changed each by a rule; undefined takes one out. */
function withRows(document: Document, rule: (row: Row) => Row | undefined): Document {
  const next = rowsDown(document).flatMap(([id, row]) => {
    const after = rule(row);
    return after === undefined ? [] : [[id, after] as const];
  });
  return edited(document, granted(replaceRows(document, 'rows', next, NOTHING_NEW)).changes);
}

const deeper =
  (metres: number, fromM: number) =>
  (row: Row): Row =>
    row.fromMm < mm(fromM)
      ? row
      : { ...row, fromMm: depthFromMm(row.fromMm + mm(metres)), toMm: depthFromMm(row.toMm + mm(metres)) };

const problems = (document: Document) => checkMovedRows(document).map(({ problem }) => problem);

describe('rows that stand elsewhere than where they were logged, over issued bags', () => {
  it('are named as one run, with the bags that stay as they are and the command that says otherwise', () => {
    const [finding, ...more] = checkMovedRows(withRows(BAGGED, deeper(1, 1)));
    expect(more).toEqual([]);
    expect(finding).toMatchObject({
      severity: 'note',
      place: { hole: 'ZQRC004', fromMm: mm(2), toMm: mm(5) },
      problem:
        'What was logged at 1–4 is now 1 m deeper. The bags there keep their metres: ZQ000131 to ZQ000132.',
    });
    expect(finding?.remedy).toContain(';bag 1-2 ZQ000131');
  });

  it('are nothing to say once they stand where they were logged', () => {
    expect(problems(BAGGED)).toEqual([]);
    const moved = withRows(BAGGED, deeper(1, 1));
    const back = edited(moved, inverse(moved.history.at(-1)?.changes ?? []));
    expect(problems(back)).toEqual([]);
  });

  it('are nothing to say where no bag is issued', () => {
    expect(problems(withRows(BAGGED, deeper(2, 3)))).toEqual([]);
  });

  it('are named where one was cut, and where metres were cleared', () => {
    const cut = withRows(BAGGED, (row) => (row.fromMm === mm(1) ? { ...row, toMm: depthFromMm(1250) } : row));
    expect(problems(cut)).toEqual([
      'The row logged as 1–2 is now 1–1.25. The bags there keep their metres: ZQ000131.',
    ]);
    const cleared = withRows(BAGGED, (row) => (row.fromMm < mm(2) ? undefined : row));
    expect(problems(cleared)).toEqual([
      'What was logged at 0–2 is cleared. The bags there keep their metres: ZQ000130 to ZQ000131.',
    ]);
  });

  it('are no cleared metres where another row covers them', () => {
    const joined = withRows(BAGGED, (row) => {
      if (row.fromMm === mm(1)) return undefined;
      return row.fromMm === mm(0) ? { ...row, toMm: mm(2) } : row;
    });
    expect(problems(joined)).toEqual([
      'The row logged as 0–1 is now 0–2. The bags there keep their metres: ZQ000130 to ZQ000131.',
    ]);
  });
});
