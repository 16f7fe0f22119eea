import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import { recordBagRun } from '../hole/commands/drilled.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, holeNouns, planOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { formatDepth } from '../quantity/depth.ts';
import type { Document } from '../record/document.ts';
import {
  type BagNumber,
  bagNumberDistance,
  endingInDigits,
  endsWithDigits,
  formatBagNumber,
  type NumberForm,
  parseBagNumber,
} from '../sampling/numbers/bag-number.ts';
import { lastDigits, numberAmong } from '../sampling/numbers/number-named.ts';
import type { Sampling } from '../sampling/sampling.ts';
import { streamAhead } from '../sampling/stream/stream.ts';
import { nextToLabel, rigOfBags } from '../standing/bag-run.ts';
import { streamStateOf } from '../standing/stream.ts';

/** Records the numbers labelled for a hole. Refuses numbers of another form, a run backwards, and numbers that are labelled for a hole already. */
export function numberBags(
  project: Project,
  hole: Document,
  said: RunLabelled,
  maker: Maker,
  documents: Iterable<Document>,
): Result<Made> {
  const all = [...documents];
  const run = runMeant(project, hole, said, all);
  if (!run.ok) return run;
  const made = recordBagRun({ ...run.value, rig: rigOfBags(project, hole), at: maker.at }, maker);
  const reach = reachWords(project, hole, run.value, maker);
  return ok({ ...made, what: `${made.what}${reach}${leftOutWords(project, hole, run.value, all)}` });
}

/** How far the numbers of a hole last with a run more: enough, or how many metres of its plan they leave without. */
function reachWords(project: Project, hole: Document, run: RunLabelled, maker: Maker): string {
  const state = streamStateOf(hole);
  const bagRuns = [...state.bagRuns, { ...run, rig: rigOfBags(project, hole), at: maker.at }];
  const { rodMm } = headerOf(hole);
  const { lastsToMm } = streamAhead(project.sampling, { ...state, bagRuns }, { count: 1, rodMm });
  const planned = planOf(hole)?.depthMm;
  const short = planned === undefined ? 0 : planned - lastsToMm;
  const missing =
    planned === undefined || short <= 0
      ? ''
      : `, ${formatDepth(short)} m short of the ${formatDepth(planned)} m planned`;
  return `: they last to ${formatDepth(lastsToMm)} m${missing}`;
}

/** From so many numbers on, a gap between two runs of labels is a choice and no slip. */
const MOST_LEFT_OUT = 100;

/** Numbers of the block between those labelled before and this run: no hole has them. */
function leftOutWords(
  project: Project,
  hole: Document,
  run: RunLabelled,
  documents: Iterable<Document>,
): string {
  const { numbers } = project.sampling;
  const next = nextToLabel(project, documents, hole);
  const [from, first] = [next, run.first].map((each) =>
    each === undefined ? undefined : parseBagNumber(numbers, each),
  );
  if (next === undefined || from === undefined || first === undefined) return '';
  const block = project.sampling.blocks.find((each) => each.rig === rigOfBags(project, hole));
  const left = bagNumberDistance(from, first) ?? 0;
  // A run of another block, or one begun at a new hundred, is meant so.
  if (left <= 0 || left >= MOST_LEFT_OUT || block === undefined || first.serial > block.last.serial)
    return '';
  const last = formatBagNumber(numbers, { ...first, serial: first.serial - 1 });
  return `; ${left === 1 ? `${next} is` : `${next} to ${last} are`} left out, labelled for no hole`;
}

/** The first and the last number of a run of labels. */
export interface RunLabelled {
  readonly first: string;
  readonly last: string;
}

/**
 * A run of numbers labelled for a hole, each whole or by its last digits. The first is the next number to label in the rig's
 * block where that ends so, else the one of the block that is nearest to it; the last is the nearest behind it. Refused where a number is none, or is labelled already.
 */
export function runMeant(
  project: Project,
  hole: Document,
  said: RunLabelled,
  documents: Iterable<Document>,
): Result<RunLabelled> {
  const form = project.sampling.numbers;
  const place = { hole: headerOf(hole).name, thing: `bags ${said.first} to ${said.last}` };
  const all = [...documents];
  const named = firstMeant(project, hole, said.first, all, place);
  if (!named.ok) return named;
  const first = parseBagNumber(form, named.value);
  const last = first === undefined ? undefined : lastMeant(project.sampling, first, said.last);
  if (first === undefined || last === undefined)
    return refused(notOurs(place, first === undefined ? said.first : said.last));
  const distance = bagNumberDistance(first, last);
  if (distance === undefined || distance < 0)
    return refused(
      REFUSALS.badInterval.at(place, {
        problem: 'the last number is not after the first',
        remedy: 'Type the first number, then the last, with the same prefix.',
      }),
    );
  const taken = labelledAlready(project.sampling, all, first, last);
  if (taken !== undefined) return refused(REFUSALS.bagUsed.at(place, taken));
  return ok({ first: formatBagNumber(form, first), last: formatBagNumber(form, last) });
}

function firstMeant(
  project: Project,
  hole: Document,
  text: string,
  documents: readonly Document[],
  place: Place,
): Result<string> {
  const { numbers: form, blocks } = project.sampling;
  const digits = lastDigits(form, text.toUpperCase());
  const next = nextToLabel(project, documents, hole);
  if (next !== undefined && digits.some((each) => endsWithDigits(next, each))) return ok(next);
  const rig = rigOfBags(project, hole);
  const block = blocks
    .filter((each) => each.rig === rig)
    .flatMap(({ first, last }) => digits.flatMap((each) => endingInDigits(form, first, last, each)));
  const near = next === undefined ? undefined : nearestTo(form, next, block);
  if (near !== undefined && parseBagNumber(form, text.toUpperCase()) === undefined) return ok(near);
  return numberAmong(form, block, text, { kind: REFUSALS.notThere, place, ...NOT_OURS(text) });
}

/**
 * The number nearest to the next one to label, before it or behind it: labels are ordered by the hundred, so the digits of one far off mean
 * another. Undefined where two are as near. One that is labelled already is found too, so that it is refused and not read as another.
 */
function nearestTo(form: NumberForm, next: string, numbers: readonly string[]): string | undefined {
  const from = parseBagNumber(form, next);
  if (from === undefined) return undefined;
  const [nearest, second] = [...new Set(numbers)]
    .flatMap((number) => {
      const parsed = parseBagNumber(form, number);
      const away = parsed === undefined ? undefined : bagNumberDistance(from, parsed);
      return away === undefined ? [] : [{ number, away: Math.abs(away) }];
    })
    .sort((a, b) => a.away - b.away);
  return nearest?.away === second?.away ? undefined : nearest?.number;
}

/** The last number of a run, whole or by its last digits: the nearest from the first one on. */
function lastMeant({ numbers: form }: Sampling, first: BagNumber, text: string): BagNumber | undefined {
  const whole = parseBagNumber(form, text.toUpperCase());
  if (whole !== undefined) return whole;
  const end = { ...first, serial: 10 ** form.digits - 1 };
  const [nearest] = lastDigits(form, text.toUpperCase()).flatMap((each) =>
    endingInDigits(form, first, end, each),
  );
  return nearest === undefined ? undefined : parseBagNumber(form, nearest);
}

const NOT_OURS = (text: string) => ({
  problem: `${text} is the end of no number in the block of this rig`,
  remedy: 'Type its last digits as printed on the calico, or the whole number with its prefix.',
});

const notOurs = (place: Place, text: string): Finding => REFUSALS.notThere.at(place, NOT_OURS(text));

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
    remedy: `Label others: ${formatBagNumber(numbers, next)} comes after every number labelled so far.`,
  };
}
