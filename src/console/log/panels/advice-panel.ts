import { planOf } from '../../../hole/hole.ts';
import { formatDepth } from '../../../quantity/depth.ts';
import { localTime } from '../../../quantity/stamp.ts';
import type { Document } from '../../../record/document.ts';
import type { AdviceStanding } from '../../../standing/advice.ts';
import { headsOf, logged, loggedWords } from '../../../standing/heads.ts';
import { paceOf } from '../../../standing/pace.ts';
import { alarms, dangersFirst, headlines, isDanger } from '../../../termination/advice/verdict.ts';
import type { RuleOutcome } from '../../../termination/evaluate/evaluate-rule.ts';
import type { Theme, Tone } from '../../theme.ts';
import { type Line, line, spans, wrap } from '../../widgets/line.ts';

/** The heading of the panel; it always says that what is below is advice, and what it rests on; shorter where `width` cells are few. */
export function adviceTitle(hole: Document, width: number): string {
  const to = loggedWords(hole);
  const whole = `end of hole · advice on the log to ${to}`;
  const { toMm, missingMm } = logged(hole);
  const gaps = missingMm === 0 ? '' : `, gaps ${formatDepth(missingMm)} m`;
  return whole.length < width ? whole : `advice on ending, log ${formatDepth(toMm)} m${gaps}`;
}

/**
 * The panel of the hole's end: the verdict with its reason first, then depth and pace, and the rules with their cut-offs and progress.
 * What is dangerous is never cut short of `room`. `room` lines, `width` cells.
 */
export function advicePanel(
  standing: AdviceStanding,
  hole: Document,
  theme: Theme,
  width: number,
  room: number,
): readonly Line[] {
  const verdict = verdictLines(standing, width).slice(
    0,
    isWhole(standing) ? room : Math.max(2, Math.floor(room / 2)),
  );
  const depths = depthLines(hole).slice(0, Math.max(0, room - verdict.length));
  if (!standing.shown.shown) return [...verdict, ...depths];
  const left = Math.max(0, room - depths.length - verdict.length);
  return [...verdict, ...depths, ...rulesThatFit(standing, theme, width, left)];
}

/** How many lines the panel must have; none but a few where nothing in it is dangerous or asks. */
export function adviceNeeds(standing: AdviceStanding, width: number): number {
  return isWhole(standing) ? verdictLines(standing, width).length : 0;
}

/** True where the head of the advice is not cut short: a danger is met, the verdict asks, or it rests on the driller's word. */
function isWhole({ shown, outcomes }: AdviceStanding): boolean {
  const byWord = outcomes.some((each) => each.byWord !== undefined);
  return byWord || outcomes.some(isDanger) || (shown.shown && shown.advice.verdict === 'ask');
}

/** Dangers first, then rules in their own order, as many as fit; where not all do, what speaks now or stands nearest to it comes first. */
function rulesThatFit(standing: AdviceStanding, theme: Theme, width: number, room: number): readonly Line[] {
  const byWeight = [...standing.outcomes].sort((a, b) => weight(b) - weight(a));
  const chosen = new Map<RuleOutcome, readonly Line[]>();
  let left = room;
  for (const outcome of byWeight) {
    // Where only one line is left a rule is cut to it: its name and how far it is stand in front.
    const lines = ruleLines(outcome, theme, width).slice(0, left);
    if (lines.length === 0) break;
    chosen.set(outcome, lines);
    left -= lines.length;
  }
  return dangersFirst(standing.outcomes).flatMap((outcome) => chosen.get(outcome) ?? []);
}

function depthLines(hole: Document): readonly Line[] {
  const { drilledMm } = headsOf(hole);
  const planned = planOf(hole)?.depthMm;
  const pace = paceOf(hole);
  const depth =
    planned === undefined
      ? `drilled ${formatDepth(drilledMm)} m, no plan`
      : `drilled ${formatDepth(drilledMm)} of ${formatDepth(planned)} m planned`;
  if (pace === undefined) return [line(depth)];
  const reached = pace.plannedReachedAt === undefined ? '' : `, at plan ${localTime(pace.plannedReachedAt)}`;
  return [line(depth), line(`${pace.metresPerHour.toFixed(1)} m an hour${reached}`, 'faint')];
}

/** A rule: its sign, its name and its progress with the cut-off, in one line or two. */
export function ruleLines(outcome: RuleOutcome, theme: Theme, width: number): readonly Line[] {
  const [sign, tone] = stateSign(outcome, theme);
  return wrap(`${outcome.rule.name}: ${outcome.progress.text}`, width - 2)
    .slice(0, 2)
    .map((each, index): Line => [...spans([index === 0 ? `${sign} ` : '  ', tone]), ...each]);
}

/** A danger, or a question to someone, is never ticked off: it is met, and nothing is done with that. `!` is for dangers alone. */
function stateSign(outcome: RuleOutcome, theme: Theme): readonly [string, Tone] {
  if (isDanger(outcome)) return ['!', 'alert'];
  if (alarms(outcome)) return ['?', 'warn'];
  if (outcome.rule.whenEnding || outcome.answered !== undefined) return [theme.signs.dash, 'faint'];
  if (outcome.state === 'met') return [theme.signs.tick, 'good'];
  return outcome.state === 'cannot tell' ? ['?', 'warn'] : [theme.signs.dash, 'faint'];
}

/** What matters first where there is no room for all: rules that end the hole by their progress, what can't be told, what is met. */
function weight(outcome: RuleOutcome): number {
  const { rule, state, progress } = outcome;
  if (alarms(outcome)) return 5;
  if (rule.whenEnding) return -1;
  if (rule.verdict === 'end' || rule.verdict === 'may end')
    return 3 + (state === 'met' ? 1 : (progress.haveMm ?? 0) / Math.max(1, progress.needMm ?? 1));
  return state === 'met' ? 2 : state === 'cannot tell' ? 1 : 0;
}

/** The verdict with its reason, every danger that is met, and what can change within the next rod. While the driller has stopped, the dangers. */
export function verdictLines(standing: AdviceStanding, width: number): readonly Line[] {
  const { shown, outcomes } = standing;
  const verdict = shown.shown ? shown.advice.verdict : 'ask';
  const tone: Tone = verdict === 'not yet' ? 'plain' : verdict === 'ask' ? 'warn' : 'good';
  const head = headlines(shown, outcomes).flatMap(({ words, danger }) => {
    if (danger) return wrap(`! ${words}`, width, 'alert');
    return wrap(words, width, tone).slice(0, verdict === 'ask' ? undefined : 3);
  });
  if (!shown.shown || isWhole(standing)) return head;
  const ahead = standing.ahead[0];
  return [...head, ...(ahead === undefined ? [] : wrap(ahead.words, width, 'accent').slice(0, 2))];
}
