import { ok, type Result, refused } from '../finding/finding.ts';
import type { Made } from '../hole/commands/made.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, planOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { formatDepth } from '../quantity/depth.ts';
import type { Document } from '../record/document.ts';
import { inOwnNames } from '../shorthand/own-names.ts';
import type { Expected } from '../survey/expected/expected.ts';
import { EXPECTED_FORM, readExpected } from '../survey/expected/expected-said.ts';
import { checkFields } from '../termination/rules/check-fields.ts';
import { ownNames } from './own-names.ts';

/**
 * Adds a contact or zone to what the plan expects (`lode 70-78 seen sulphides PYR>=2`); one of that name is replaced, and `lode none` takes
 * it out. Refused without a plan, where it can't be read, and where `seen` names what the logging schema has not.
 */
export function setExpected(project: Project, hole: Document, said: string): Result<Made> {
  const place = { hole: headerOf(hole).name };
  const wrong = (problem: string): Result<Made> =>
    refused(
      REFUSALS.planUnread.at(place, {
        excerpt: said,
        problem,
        remedy: inOwnNames(
          `Say it like ${EXPECTED_FORM.split('; ')[1]}.`,
          ownNames(project, [hole], { hole }),
        ),
      }),
    );
  const plan = planOf(hole);
  if (plan === undefined) return wrong('the hole has no plan to expect anything by');
  const before = plan.expects ?? [];
  const gone = /^(.*\S) +none$/.exec(said.trim())?.[1];
  if (gone !== undefined) {
    if (!before.some((each) => each.name === gone)) return wrong(`the plan expects no ${gone}`);
    return withExpects(
      before.filter((each) => each.name !== gone),
      `${gone} no longer expected`,
    );
  }
  const read = readExpected(project.schema, said);
  if (!read.ok) return wrong(read.problem);
  const { expected } = read;
  const [off] = expected.seen === undefined ? [] : checkFields(expected.seen, project.schema, place);
  if (off !== undefined) return refused(off);
  const others = before.filter((each) => each.name !== expected.name);
  const all = [...others, expected].sort((a, b) => a.fromMm - b.fromMm);
  return withExpects(all, `${expected.name} expected at ${depthWords(expected)} m`);
}

function depthWords({ fromMm, toMm }: Expected): string {
  return toMm === undefined ? formatDepth(fromMm) : `${formatDepth(fromMm)}–${formatDepth(toMm)}`;
}

function withExpects(expects: readonly Expected[], what: string): Result<Made> {
  return ok({
    what,
    changes: [
      expects.length === 0
        ? { patch: ['plan', 'plan'], unset: ['expects'] }
        : { patch: ['plan', 'plan'], set: { expects: expects as never } },
    ],
  });
}
