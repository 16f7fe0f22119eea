import { describe, expect, it } from 'vitest';
import { EVERY_FINDING_KIND } from '../../.ci/finding-kinds.ts';
import { type Finding, formatFinding } from '../../src/finding/finding.ts';
import { formatPlace } from '../../src/finding/place.ts';
import { COMMAND_CASES } from './cases/commands.ts';
import { FILE_CASES } from './cases/files.ts';
import { HANDOVER_CASES } from './cases/handover.ts';
import { HOLE_CASES } from './cases/hole.ts';
import { LABORATORY_CASES } from './cases/laboratory.ts';
import { ROW_CASES } from './cases/rows.ts';
import { SAMPLING_CASES } from './cases/sampling.ts';
import { SCHEMA_CASES } from './cases/schema.ts';
import { SHIFT_CASES } from './cases/shift.ts';
import { SURVEY_CASES } from './cases/survey.ts';
import { TERMINATION_CASES } from './cases/termination.ts';
import type { ErrorCase } from './error-case.ts';

const CASES: readonly (readonly [page: string, cases: readonly ErrorCase[]])[] = [
  ['files', FILE_CASES],
  ['commands', COMMAND_CASES],
  ['handover', HANDOVER_CASES],
  ['hole', HOLE_CASES],
  ['schema', SCHEMA_CASES],
  ['rows', ROW_CASES],
  ['sampling', SAMPLING_CASES],
  ['laboratory', LABORATORY_CASES],
  ['survey', SURVEY_CASES],
  ['shift', SHIFT_CASES],
  ['termination', TERMINATION_CASES],
];

const KINDS = EVERY_FINDING_KIND.flatMap(([, kinds]) => kinds);

/** The finding that a case is about; it must be among what its input brings about. */
async function foundBy({ code, find }: ErrorCase): Promise<Finding> {
  const findings = await find();
  const found = findings.find((finding) => finding.code === code);
  if (found === undefined)
    throw new Error(`found only ${findings.map((each) => each.code).join(', ') || 'nothing'}`);
  return found;
}

describe('the error catalogue', () => {
  it('has every kind of finding of the program exactly once', () => {
    const codes = CASES.flatMap(([, cases]) => cases.map((each) => each.code));
    expect([...codes].sort()).toEqual(KINDS.map((kind) => kind.code).sort());
  });

  it.each(CASES)('says of each error of %s exactly what its page of texts holds', async (page, cases) => {
    const texts: string[] = [];
    for (const each of cases) {
      const finding = await foundBy(each).catch((error: Error) =>
        expect.fail(`${each.code}: ${error.message}`),
      );
      texts.push(`== ${each.code} (${finding.severity}): ${each.input}\n${formatFinding(finding)}\n`);
    }
    await expect(texts.join('\n')).toMatchFileSnapshot(`texts/${page}.txt`);
  });

  it.each(CASES)('gives a place, a problem and a remedy with each error of %s', async (_page, cases) => {
    for (const each of cases) {
      const { place, problem, remedy, code } = await foundBy(each);
      expect(formatPlace(place), code).not.toBe('somewhere');
      expect(problem.trim(), code).not.toBe('');
      expect(remedy.trim(), code).not.toBe('');
      expect(`${problem} ${remedy}`, code).not.toMatch(/undefined|NaN|\[object|null/);
    }
  });
});
