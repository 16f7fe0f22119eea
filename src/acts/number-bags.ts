import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { recordBagRun } from '../hole/commands/drilled.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, holeNouns } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import {
  type BagNumber,
  bagNumberDistance,
  formatBagNumber,
  parseBagNumber,
} from '../sampling/numbers/bag-number.ts';
import type { Sampling } from '../sampling/sampling.ts';
import { rigOfBags } from '../standing/bag-run.ts';

/** Records the numbers labelled for a hole. Refuses numbers of another form, a run backwards, and numbers that are labelled for a hole already. */
export function numberBags(
  project: Project,
  hole: Document,
  said: { readonly first: string; readonly last: string },
  maker: Maker,
  documents: Iterable<Document>,
): Result<Made> {
  const { sampling } = project;
  const place = { hole: headerOf(hole).name, thing: `bags ${said.first} to ${said.last}` };
  const first = parseBagNumber(sampling.numbers, said.first);
  const last = parseBagNumber(sampling.numbers, said.last);
  if (first === undefined || last === undefined)
    return refused(
      REFUSALS.notThere.at(place, {
        problem: `${first === undefined ? said.first : said.last} is not of the form of this project’s bag numbers`,
        remedy: 'Type the whole number with its prefix, as printed on the calico.',
      }),
    );
  const distance = bagNumberDistance(first, last);
  if (distance === undefined || distance < 0)
    return refused(
      REFUSALS.badInterval.at(place, {
        problem: 'the last number is not behind the first',
        remedy: 'Type the first number, then the last, with the same prefix.',
      }),
    );
  const taken = labelledAlready(sampling, documents, first, last);
  if (taken !== undefined) return refused(REFUSALS.bagUsed.at(place, taken));
  const rig = rigOfBags(project, hole);
  const numbers = {
    first: formatBagNumber(sampling.numbers, first),
    last: formatBagNumber(sampling.numbers, last),
  };
  return ok(recordBagRun({ ...numbers, rig, at: maker.at }, maker));
}

/** What is wrong where some of these numbers are labelled for a hole, and the first number behind every run of that prefix. */
function labelledAlready(
  { numbers }: Sampling,
  documents: Iterable<Document>,
  first: BagNumber,
  last: BagNumber,
): Pick<Finding, 'problem' | 'remedy'> | undefined {
  const runs = [...documents]
    .filter((document) => document.kind === 'hole')
    .flatMap((document) =>
      holeNouns(document, 'bagRuns').map((run) => ({ run, hole: headerOf(document).name })),
    )
    .flatMap(({ run, hole }) => {
      const [from, to] = [parseBagNumber(numbers, run.first), parseBagNumber(numbers, run.last)];
      return from === undefined || to === undefined || from.prefix !== first.prefix
        ? []
        : [{ hole, run, from: from.serial, to: to.serial }];
    });
  const taken = runs.find(({ from, to }) => from <= last.serial && first.serial <= to);
  if (taken === undefined) return undefined;
  const next = { prefix: first.prefix, serial: Math.max(...runs.map(({ to }) => to)) + 1 };
  return {
    problem: `${taken.run.first} to ${taken.run.last} are labelled for ${taken.hole} already`,
    remedy: `Label others: ${formatBagNumber(numbers, next)} is behind every number labelled so far.`,
  };
}
