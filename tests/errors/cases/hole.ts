import { openHoleAgain } from '../../../src/acts/acceptance.ts';
import { measureBit } from '../../../src/acts/bit.ts';
import { checkAgain, rodMendedLater } from '../../../src/acts/mend-later.ts';
import { setPlan } from '../../../src/acts/plan.ts';
import { settleQuestion } from '../../../src/acts/settle.ts';
import { beginRunSaid } from '../../../src/acts/shot.ts';
import { changedSinceSignedOff } from '../../../src/check/accepted.ts';
import { sealOf } from '../../../src/hole/acceptance.ts';
import type { Bag } from '../../../src/hole/bags.ts';
import { issueBags, rodDone } from '../../../src/hole/commands/drilled.ts';
import type { Maker } from '../../../src/hole/commands/made.ts';
import { amendRow, logRow } from '../../../src/hole/commands/rows.ts';
import { reopenHole } from '../../../src/hole/commands/states.ts';
import type { RodDone } from '../../../src/hole/drilled.ts';
import type { Decision } from '../../../src/hole/ending.ts';
import type { Project } from '../../../src/project/project.ts';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import { apply } from '../../../src/record/apply.ts';
import type { Document, Thing } from '../../../src/record/document.ts';
import { checkMovedRows } from '../../../src/sampling/stream/moved-rows.ts';
import type { LoggingSchema } from '../../../src/schema/logging-schema.ts';
import { clockFindings } from '../../../src/standing/clock.ts';
import { logFindings } from '../../../src/standing/log-findings.ts';
import { waitingMismatches } from '../../../src/standing/mismatches.ts';
import { questionFindings } from '../../../src/standing/questions.ts';
import type { Row } from '../../../src/value/row.ts';
import { edited } from '../../record/build.ts';
import { sampling } from '../../sampling/build.ts';
import { at, hole, makerAt } from '../../shift/build.ts';
import { resolveStyle } from '../../support/styles.ts';
import { type ErrorCase, findingsIn, given } from '../error-case.ts';

const MAKER: Maker = makerAt(at('08:00'));
const BAG: Bag = { number: 'ZQ000131', kind: 'blank' };
const HOLE = hole('ZQRC004', {
  rows: [row(0, 1) as Thing],
  rods: [{ at: at('07:00'), rod: 2, depthMm: 12_000 }],
  bags: [BAG as Thing],
});
const MEASURED = hole('ZQRC004', {
  rods: [{ at: at('07:00'), rod: 1, depthMm: 6000 }],
  bits: [{ depthMm: 3000, bitMm: 138, at: at('07:00'), by: 'NOK' }],
});
const ORE = resolveStyle('orogenic-gold') as LoggingSchema;
const NOTHING_NEW = { fields: {}, scales: {}, codes: {} };

function row(fromM: number, toM: number): Row {
  return { fromMm: depthFromMetres(fromM), toMm: depthFromMetres(toM), cells: {} };
}

/** The hole as it is once it has ended. */
function ended(): Document {
  const header = HOLE.tables.hole?.hole ?? {};
  return { ...HOLE, tables: { ...HOLE.tables, hole: { hole: { ...header, state: 'complete' } } } };
}

/** A rod that was noted, mended after its bag was spoiled by hand. */
function mendedAfterVoid() {
  const rod: RodDone = {
    ...{ at: at('07:00'), rod: 1, depthMm: depthFromMetres(1), lastBag: '132' },
    ...{ mismatch: 'skipped', unmended: true },
  };
  const run = { first: 'ZQ000131', last: 'ZQ000160', rig: 'Rig 1', at: at('06:00') };
  const noted = hole('ZQRC004', {
    rods: [rod as Thing],
    bagRuns: [run],
    bags: [{ number: 'ZQ000131', kind: 'spoiled', reason: 'torn', rod: 'k2-0' }],
  });
  const waiting = waitingMismatches(noted)[0];
  if (waiting === undefined) throw new Error('no rod waits');
  const project = { sampling: sampling() } as Project;
  const [named] = checkAgain(project, [noted], noted, waiting, {}).named;
  if (named === undefined) throw new Error('nothing is named');
  return rodMendedLater(project, noted, waiting, named, 0, MAKER);
}

/** A row moved a metre down after its bag was issued. */
function movedOverBag(): Document {
  const deed = { edit: 'k-9', at: at('08:00'), by: 'NOK', what: 'an edit' };
  const bagged = hole('ZQRC004', {
    bags: [{ number: 'ZQ000131', kind: 'primary', fromMm: 0, toMm: 1000 }],
  });
  const logged = apply(bagged, deed, [{ put: ['rows', 'k-1'], thing: row(0, 1) as Thing }]);
  if (!logged.ok) throw new Error(logged.problem);
  const moved = apply(logged.document, deed, [{ patch: ['rows', 'k-1'], set: { fromMm: 1000, toMm: 2000 } }]);
  if (!moved.ok) throw new Error(moved.problem);
  return moved.document;
}

const DEPTH_ASKED = {
  ...{ table: 'plan', thing: 'plan', field: 'depthMm', ours: 120_000, theirs: 150_000, state: 'open' },
};
const ROW_ASKED = { table: 'rows', thing: 'k2-0', field: 'toMm', ours: 1000, theirs: 0, state: 'open' };

/** A hole with a question that a merge left; its plan says another depth than either copy, its row is as ours had it. */
function asked(question: Thing): Document {
  const plan = { plan: { plan: { depthMm: 130_000 } } };
  const rows = { rows: { 'k2-0': row(0, 1) as unknown as Thing } };
  return { ...HOLE, tables: { ...HOLE.tables, ...plan, ...rows, questions: { 'k-9': question } } };
}

const PROJECT = { sampling: sampling(), schema: ORE } as unknown as Project;

const BEGUN = { method: 'RC', rig: 'RC7', fromMm: 0, startedAt: at('07:00') };
const PLAN: Thing = { azimuthDeg: 270, azimuthNorth: 'grid', dipDeg: -60, depthMm: 120_000 };

/** What commands on a hole refuse. */
export const HOLE_CASES: readonly ErrorCase[] = [
  given('hole-closed', 'a row for a hole that has ended', () =>
    findingsIn(logRow(ended(), row(1, 2), NOTHING_NEW, MAKER)),
  ),
  given('bags-amended-since', 'a mismatch mended after one of its bags was spoiled', () =>
    findingsIn(mendedAfterVoid()),
  ),
  given('rows-overlap', 'a row over a row', () =>
    findingsIn(logRow(HOLE, row(0.5, 1.5), NOTHING_NEW, MAKER)),
  ),
  given('interval-upside-down', 'a row that ends above its start', () =>
    findingsIn(logRow(HOLE, row(3, 2), NOTHING_NEW, MAKER)),
  ),
  given('not-there', 'a row amended that was taken out', () =>
    findingsIn(amendRow(HOLE, 'k9-9', row(40, 45), NOTHING_NEW)),
  ),
  given('asked-first', 'a bit that grows', () =>
    findingsIn(measureBit(MEASURED, { bitMm: 141, atMm: depthFromMetres(6) }, MAKER)),
  ),
  given('rod-above-drilled', 'a rod done above the one before it', () =>
    findingsIn(rodDone(HOLE, { at: at('08:00'), rod: 3, depthMm: depthFromMetres(6) }, [], MAKER)),
  ),
  given('state-does-not-allow', 'a hole reopened that was not closed', () =>
    findingsIn(reopenHole(HOLE, {} as Decision, MAKER)),
  ),
  given('plan-not-read', 'an azimuth without its north', () => findingsIn(setPlan(HOLE, '270 -60 120'))),
  given('shot-not-read', 'a run without its class of tool', () =>
    findingsIn(beginRunSaid(HOLE, 'gyro 2 in', MAKER)),
  ),
  given('rows-moved', 'a row moved over an issued bag', () => checkMovedRows(movedOverBag())),
  given('question-open', 'a cell that two copies changed differently', () =>
    questionFindings(ORE, asked(DEPTH_ASKED)),
  ),
  given('question-changed-since', 'theirs taken into a cell that was changed after the merge', () =>
    findingsIn(settleQuestion(PROJECT, asked(DEPTH_ASKED), 'k-9', 'theirs', MAKER.newId)),
  ),
  given('question-does-not-fit', 'theirs taken though the row then has no length', () =>
    findingsIn(settleQuestion(PROJECT, asked(ROW_ASKED), 'k-9', 'theirs', MAKER.newId)),
  ),
  given('changed-since-signed-off', 'a row logged by another copy into a hole that was signed off', () => {
    const signOff = { state: 'signed off', seal: sealOf(ended()), by: 'IFA', at: at('07:00') };
    const deed = { edit: 'k-9', at: at('08:00'), by: 'NOK', what: 'logged 0–1' };
    const done = apply(ended(), deed, [{ put: ['signOffs', 'k-8'], thing: signOff }]);
    if (!done.ok) throw new Error(done.problem);
    const logged = apply(done.document, deed, [{ put: ['rows', 'k-1'], thing: row(0, 1) as Thing }]);
    if (!logged.ok) throw new Error(logged.problem);
    return changedSinceSignedOff(logged.document);
  }),
  given('acceptance-refused', 'a hole that no one signed off is to be opened again', () =>
    findingsIn(openHoleAgain(HOLE, 'bags wrong', MAKER)),
  ),
  given('rows-logged-twice', 'two copies merged that had both logged 0–1', () =>
    logFindings(hole('ZQRC004', { rows: [row(0, 1) as Thing, row(0, 1) as Thing] })),
  ),
  given('clock-behind', 'a computer whose clock was set back six years', () =>
    clockFindings(
      [edited(HOLE, 1, { patch: ['hole', 'hole'], set: { rodMm: 6000 } })],
      '2020-01-01T00:00:00+08:00' as typeof MAKER.at,
    ),
  ),
  given('line-up-missing', 'a planned hole that was begun without one', () =>
    logFindings(
      edited(hole('ZQRC004', { drilling: [BEGUN as Thing] }), 1, { put: ['plan', 'plan'], thing: PLAN }),
    ),
  ),
  given('metres-not-logged', 'a row at 0–1 and the next at 3–4', () =>
    logFindings(hole('ZQRC004', { rows: [row(0, 1) as Thing, row(3, 4) as Thing] })),
  ),
  given('rod-recorded-twice', 'two copies merged that had both recorded rod 2', () =>
    logFindings(
      hole('ZQRC004', {
        rods: [
          { at: at('07:00'), rod: 2, depthMm: 12_000 },
          { at: at('07:03'), rod: 2, depthMm: 12_000 },
        ],
      }),
    ),
  ),
  given('rods-out-of-order', 'rod 3 recorded before rod 2', () =>
    logFindings(
      hole('ZQRC004', {
        rods: [
          { at: at('07:00'), rod: 2, depthMm: 12_000 },
          { at: at('06:40'), rod: 3, depthMm: 18_000 },
        ],
      }),
    ),
  ),
  given('bag-used-twice', 'a calico used again', () => findingsIn(issueBags(HOLE, 'bags', [BAG], MAKER))),
];
