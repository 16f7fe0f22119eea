import { depthFromMetres, formatDepth } from '../../quantity/depth.ts';
import { type Tri, triOf } from '../../quantity/tri.ts';
import { type LoggingSchema, listOf } from '../../schema/logging-schema.ts';
import type { Row } from '../../value/row.ts';
import { enough, historyOf } from '../evaluate/amount.ts';
import { isAsked, logByRow } from '../evaluate/log.ts';
import { anyOne, type Outcome, outcomeOf } from '../evaluate/outcome.ts';
import { reached } from '../evaluate/reached.ts';
import type { ExpectedZone, Situation } from '../evaluate/situation.ts';
import { aheadOf, from } from '../evaluate/span.ts';
import { windowLegs, within } from '../evaluate/window.ts';
import { defineCondition, lengthM, metresM } from '../rules/condition-kind.ts';
import { intervalOf } from '../rules/seen-in-row.ts';

export const voidNear = defineCondition({
  key: 'voidNear',
  about: 'people',
  title: 'A void or old workings, met or expected near.',
  rationale:
    'A code whose caution says _void_ in the last metres of the log, or the rig within so many metres of a void that the plan expects. Goes with _ask_ and `safety`: ' +
    'call before anything else. A metre without return may have been one. No warning is no clearance.',
  example: { inLastM: 6, aheadM: 12 },
  shape: {
    inLastM: lengthM.describe('Back from the logged head'),
    aheadM: metresM.describe('Before the earliest depth at which an expected void could come'),
  },
  goesFirst: true,
  assess: ({ inLastM, aheadM }, situation) => {
    const expected = situation.expects.filter((zone) => zone.hazard === 'void');
    return anyOne(situation, [
      logged(situation, depthFromMetres(inLastM)),
      ...expected.map((zone) => ahead(situation, zone, depthFromMetres(aheadM))),
    ]);
  },
});

function logged(situation: Situation, lastMm: number): Outcome {
  const stretches = logByRow(situation, (row) => holdsVoid(situation.schema, row));
  const legs = windowLegs(stretches, lastMm);
  const { sure, possible } = legs.at(-1) ?? { sure: 0, possible: 0 };
  const state = enough(sure, possible, 1);
  const seen = within(stretches, situation.loggedMm - lastMm).filter((each) => each.state === state);
  const where = `in the last ${formatDepth(lastMm)} m of the log`;
  const text = { yes: `void ${where}`, no: `no void ${where}`, 'cannot tell': `a metre in doubt ${where}` }[
    state
  ];
  return outcomeOf(situation, historyOf(legs, 1), {
    progress: text,
    reason: text,
    deciding: state === 'no' ? [] : seen.map((each) => intervalOf(each.fromMm, each.toMm)),
    foreseen: false,
    ahead: aheadOf(
      from(situation.loggedMm + (sure > 0 ? 0 : 1)),
      from(situation.loggedMm + (state === 'no' ? 0 : situation.header.intervalMm)),
    ),
  });
}

/** From so far before the void to its foot. A void without a foot is never left behind. */
function ahead(situation: Situation, zone: ExpectedZone, aheadMm: number): Outcome {
  const near = reached(
    situation,
    zone.fromMm - aheadMm,
    `(void expected at ${formatDepth(zone.fromMm)} m: ${zone.name})`,
  );
  const past = zone.toMm === undefined ? undefined : reached(situation, zone.toMm + 1, '');
  if (past === undefined) return near;
  const history = near.history
    .filter((step) => step.atMm <= zone.toMm!)
    .concat(past.state === 'yes' ? [{ atMm: zone.toMm! + 1, state: 'no' }] : []);
  const { amount: _none, ...said } = near;
  const holds = { fromMm: near.ahead.holds?.fromMm ?? 0, toMm: zone.toMm! };
  return outcomeOf(situation, history, {
    ...said,
    ahead: aheadOf(holds.fromMm <= holds.toMm ? holds : undefined, from(situation.drilledMm)),
  });
}

function holdsVoid(schema: LoggingSchema, row: Row): Tri {
  if (row.noReturn || isAsked(row)) return 'cannot tell';
  return triOf(
    schema.fields.some((field) => {
      const cell = row.cells[field.name];
      const codes = listOf(schema, field)?.codes.filter((code) => code.caution?.kind === 'void') ?? [];
      return cell !== undefined && codes.some(({ code }) => namesCode(cell, code));
    }),
  );
}

function namesCode(cell: Row['cells'][string], code: string): boolean {
  if ('code' in cell) return cell.code === code || cell.second?.code === code;
  if ('levels' in cell) return Object.hasOwn(cell.levels, code);
  return 'percents' in cell && Object.hasOwn(cell.percents, code);
}
