import { planOf } from '../../../hole/hole.ts';
import type { Project } from '../../../project/project.ts';
import { formatDepth } from '../../../quantity/depth.ts';
import { localTime } from '../../../quantity/stamp.ts';
import type { Document } from '../../../record/document.ts';
import { type AdviceStanding, adviceFor } from '../../../standing/advice.ts';
import { headsOf } from '../../../standing/heads.ts';
import { paceOf } from '../../../standing/pace.ts';
import { alarms, dangersFirst } from '../../../termination/advice/verdict.ts';
import type { RuleOutcome } from '../../../termination/evaluate/evaluate-rule.ts';
import type { Theme, Tone } from '../../theme.ts';
import { type Line, line, spans, wrap } from '../../widgets/line.ts';

/** The heading of the panel; it always says that what stands below is advice, and what it rests on; shorter where `width` cells are few. */
export function adviceTitle(hole: Document, width: number): string {
  const logged = formatDepth(headsOf(hole).loggedMm);
  const whole = `end of hole · advice on the log to ${logged} m`;
  return whole.length < width ? whole : `advice on ending, log ${logged} m`;
}

/**
 * The panel of the hole's end: the verdict with its reason first, then depth and pace, and the rules with their cut-offs and progress.
 * What is dangerous is never cut short of `room`. `room` lines, `width` cells.
 */
export function advicePanel(
  project: Project,
  hole: Document,
  others: Iterable<Document>,
  theme: Theme,
  width: number,
  room: number,
): readonly Line[] {
  const standing = adviceFor(project, hole, others);
  const whole = isAlarm(standing);
  const verdict = verdictLines(standing, width).slice(0, whole ? room : Math.max(2, Math.floor(room / 2)));
  const depths = depthLines(hole).slice(0, Math.max(0, room - verdict.length));
  if (!standing.shown.shown) return [...verdict, ...depths];
  const left = Math.max(0, room - depths.length - verdict.length);
  return [...verdict, ...depths, ...rulesThatFit(standing, theme, width, left)];
}

/** True where the verdict is given by a rule that is met and is a danger or a question to somebody. */
function isAlarm({ shown }: AdviceStanding): boolean {
  return shown.shown && shown.advice.by.some(alarms);
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

/** A danger, or a question to somebody, is never ticked off: it is met, and nothing is done with that. */
function stateSign(outcome: RuleOutcome, theme: Theme): readonly [string, Tone] {
  if (alarms(outcome)) return ['!', 'alert'];
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

/** The verdict with its reason, and what can change within the next rod. Nothing while the driller has stopped. */
export function verdictLines(standing: AdviceStanding, width: number): readonly Line[] {
  if (!standing.shown.shown) {
    return [...wrap(`No advice is shown: ${standing.shown.because}.`, width, 'warn')];
  }
  const { verdict, sentence } = standing.shown.advice;
  const ahead = standing.ahead[0];
  if (isAlarm(standing)) return wrap(`! ${sentence}`, width, 'alert');
  const tone: Tone = verdict === 'not yet' ? 'plain' : verdict === 'ask' ? 'warn' : 'good';
  return [
    ...wrap(sentence, width, tone).slice(0, 3),
    ...(ahead === undefined ? [] : wrap(ahead.words, width, 'accent').slice(0, 2)),
  ];
}
