import { type Depth, depthFromMm, formatDepth } from '../../quantity/depth.ts';
import { type RuleOutcome, settledWords } from '../evaluate/evaluate-rule.ts';
import type { Situation } from '../evaluate/situation.ts';
import { rangesWords } from '../rules/doubts.ts';
import { isSettled } from './answered.ts';
import { extensionOf, extensionWords } from './extension.ts';
import { type Occasion, type Verdict, weigh } from './weigh.ts';

/** Stands above every verdict. */
const ADVICE_HEADING = 'advice on ending the hole';
/** Stands below it where there is room. */
export const ADVICE_LIMITS =
  'Advice only: the driller and the rules of the site prevail. It is not a command to the rig.';

/** What the rules advise. */
export type Advice = {
  readonly heading: typeof ADVICE_HEADING;
  readonly verdict: Verdict;
  /** The verdict with its reason, one sentence. */
  readonly sentence: string;
  /** The rules that gave it. */
  readonly by: readonly RuleOutcome[];
  /** A decision to go on that is not drilled out, where something goes before it. */
  readonly goesOn?: string;
  /** The foot of the log it rests on. */
  readonly loggedMm: Depth;
  /** Metres drilled and not logged, those in a gap of the log among them. */
  readonly unloggedMm: Depth;
  /** The depth of the last rod counted. */
  readonly drilledMm: Depth;
};

/** The advice, or why none is shown: the driller has stopped for safety or hole condition. */
export type Shown =
  | { readonly shown: true; readonly advice: Advice }
  | { readonly shown: false; readonly because: string };

/** What a verdict on a situation is asked for; `ending`: the hole is about to be ended. */
export function occasionOf(situation: Situation, ending = false): Occasion {
  const extension = extensionOf(situation);
  return { ending, ...(extension === undefined ? {} : { extension }) };
}

/** What the rules advise, with its reason and what it rests on. A hole without rules says so. `ending`: the hole is about to be ended. */
export function adviceOf(outcomes: readonly RuleOutcome[], situation: Situation, ending = false): Advice {
  const occasion = occasionOf(situation, ending);
  const { verdict, by, extension } = weigh(outcomes, occasion);
  const goesOn =
    occasion.extension === undefined || extension !== undefined
      ? {}
      : { goesOn: extensionWords(occasion.extension) };
  return {
    heading: ADVICE_HEADING,
    verdict,
    sentence: `${verdict.toUpperCase()}: ${
      extension === undefined ? reasonOf(by, outcomes, situation) : extensionWords(extension)
    }.`,
    by,
    ...goesOn,
    loggedMm: depthFromMm(Math.max(situation.loggedMm, situation.rows.at(-1)?.toMm ?? 0)),
    unloggedMm: depthFromMm(unloggedMm(situation)),
    drilledMm: situation.drilledMm,
  };
}

/** Drilled length that no row covers; rows don't overlap. */
function unloggedMm({ rows, drilledMm, header }: Situation): number {
  const covered = rows.reduce(
    (sum, { fromMm, toMm }) =>
      sum + Math.max(0, Math.min(toMm, drilledMm) - Math.max(fromMm, header.logFromMm)),
    0,
  );
  return Math.max(0, drilledMm - header.logFromMm - covered);
}

/** The advice where it may be shown: not while the driller has stopped for safety or hole condition. */
export function shownAdvice(outcomes: readonly RuleOutcome[], situation: Situation, ending = false): Shown {
  const { openStop } = situation;
  return openStop === undefined
    ? { shown: true, advice: adviceOf(outcomes, situation, ending) }
    : { shown: false, because: `the driller has stopped: ${openStop.because} (recorded by ${openStop.by})` };
}

/** What a verdict rests on: `on the log to 46 m; 8 m drilled and not logged`; a log below the last rod shows that a rod is not counted yet. */
export function restsOn(advice: Pick<Advice, 'loggedMm' | 'unloggedMm' | 'drilledMm'>): string {
  const belowMm = advice.loggedMm - advice.drilledMm;
  const below =
    belowMm > 0
      ? `, ${formatDepth(belowMm)} m below the last rod counted, at ${formatDepth(advice.drilledMm)} m`
      : '';
  const log = `on the log to ${formatDepth(advice.loggedMm)} m${below}`;
  return advice.unloggedMm === 0 ? log : `${log}; ${formatDepth(advice.unloggedMm)} m drilled and not logged`;
}

function reasonOf(
  by: readonly RuleOutcome[],
  outcomes: readonly RuleOutcome[],
  situation: Situation,
): string {
  const texts = by.length > 0 ? dangersFirst(by).map(ruleSays) : [nothingEnds(outcomes, situation)];
  return texts.join('; ');
}

/** One line at the head of the advice; a danger is never cut short, and stays while advice is hidden. */
export type Headline = { readonly words: string; readonly danger: boolean };

/**
 * What is at the head of the advice: the verdict, each rule that gave it on a line of its own; every other danger that is met, each with
 * its call; the names of what else asks. While the driller has stopped the dangers stay, and why no advice is shown.
 */
export function headlines(shown: Shown, outcomes: readonly RuleOutcome[]): readonly Headline[] {
  const by = shown.shown ? shown.advice.by : [];
  const others = outcomes.filter((outcome) => alarms(outcome) && !by.includes(outcome));
  const dangers = others.filter(isDanger).map((each) => ({ words: `${ruleSays(each)}.`, danger: true }));
  if (!shown.shown) return [...dangers, { words: `No advice is shown: ${shown.because}.`, danger: false }];
  // A danger that can't be ruled out is read beside whatever else asks first, as one that was met is.
  const doubts = outcomes
    .filter((each) => inDoubt(each) && !by.includes(each))
    .map((each) => ({ words: `${ruleSays(each)}.`, danger: false }));
  const names = others.filter((each) => !isDanger(each)).map(({ rule }) => rule.name);
  const asks =
    names.length === 0 ? [] : [{ words: `${names.length} more to ask: ${names.join(', ')}.`, danger: false }];
  const verdict = verdictHeadlines(shown.advice);
  const { goesOn } = shown.advice;
  const decided = goesOn === undefined ? [] : [{ words: `The hole ${goesOn}.`, danger: false }];
  const rest = [...doubts, ...asks, ...decided, ...byWordAlone(outcomes)];
  return by.some(isDanger) ? [...verdict, ...dangers, ...rest] : [...dangers, ...verdict, ...rest];
}

/** What the advice takes from the driller and no one saw in chips yet: it is beside the verdict for as long as it is so. */
function byWordAlone(outcomes: readonly RuleOutcome[]): readonly Headline[] {
  return outcomes.flatMap(({ rule, byWord }) =>
    byWord === undefined
      ? []
      : [
          {
            words: `${rule.name}: ${rangesWords(byWord)} by the driller’s word alone, not logged.`,
            danger: false,
          },
        ],
  );
}

function verdictHeadlines({ verdict, by, sentence }: Advice): readonly Headline[] {
  if (by.length < 2) return [{ words: sentence, danger: by.some(isDanger) }];
  return dangersFirst(by).map((each, index) => ({
    words: `${index === 0 ? `${verdict.toUpperCase()}: ` : ''}${ruleSays(each)}.`,
    danger: isDanger(each),
  }));
}

/** True of a rule about safety that can't be told, and that no one was called about. */
function inDoubt(outcome: RuleOutcome): boolean {
  const { rule, state } = outcome;
  return rule.safety === true && state === 'cannot tell' && !rule.whenEnding && !isSettled(outcome);
}

/** True of a rule about safety that is met. */
export function isDanger(outcome: RuleOutcome): boolean {
  return outcome.rule.safety === true && alarms(outcome);
}

/**
 * A rule's name and reason. Where it can't be told that is said first; where it asks, who is to be called. Of a danger what was seen goes
 * before its cut-off, which may be a long list of codes and stands with the rule.
 */
function ruleSays(outcome: RuleOutcome): string {
  const { rule, state, reason, sight, answered, until } = outcome;
  if (sight !== undefined) {
    const settled = answered === undefined ? '' : `; ${settledWords(rule, state, answered)}`;
    return `${rule.name}: ${sight}${settled}${callWords(outcome)}`;
  }
  const doubt = state === 'cannot tell' ? 'can’t tell, ' : '';
  const name = rule.verdict === 'not yet' ? `${rule.name} holds the hole until met` : rule.name;
  // Whom to call is read before what ends the doubt by itself: a panel may have no room for both.
  if (until === undefined) return `${name}: ${doubt}${reason}${callWords(outcome)}`;
  const first = reason.slice(0, -`; ${until}`.length);
  return `${name}: ${doubt}${first}${callWords(outcome)}; ${until}`;
}

/** Whom to call, and for a rule about safety, also one that can't be told, that the site procedure goes before everything here. */
function callWords(outcome: RuleOutcome): string {
  const { call, safety } = outcome.rule;
  const { state } = outcome;
  if (isSettled(outcome)) return safety ? ': go by the site procedure' : '';
  if (state === 'not met' || (state === 'cannot tell' && !safety)) return '';
  const who = call === undefined ? '' : ` ${call}`;
  if (safety) return `: call${who}, go by the site procedure`;
  return call === undefined ? '' : `: call${who}`;
}

/**
 * True of a rule that is met and is a danger or a question to someone: never shown as a thing done. What was settled by a decision is no
 * question any more; a danger stays one. A rule on stopping short is a question only where the hole is being ended.
 */
export function alarms(outcome: RuleOutcome): boolean {
  const { rule, state } = outcome;
  if (state !== 'met' || rule.whenEnding) return false;
  return rule.safety === true || (rule.verdict === 'ask' && !isSettled(outcome));
}

/** Rules about safety before the others, each group in its own order. */
export function dangersFirst(outcomes: readonly RuleOutcome[]): readonly RuleOutcome[] {
  const rank = (outcome: RuleOutcome): number => (alarms(outcome) ? (outcome.rule.safety ? 0 : 1) : 2);
  return [...outcomes].sort((a, b) => rank(a) - rank(b));
}

/** Why nothing ends the hole: the ending rule that could be met the soonest. */
function nothingEnds(outcomes: readonly RuleOutcome[], situation: Situation): string {
  const ends = outcomes.filter(({ rule }) => rule.verdict === 'end' || rule.verdict === 'may end');
  const soonest = [...ends].sort((a, b) => (a.earliestMm ?? Infinity) - (b.earliestMm ?? Infinity))[0];
  if (soonest !== undefined) return ruleSays(soonest);
  return `no rule ends this hole, drilled ${formatDepth(situation.drilledMm)} m`;
}
