import { planOf } from '../../hole/hole.ts';
import type { Project } from '../../project/project.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { localTime } from '../../quantity/stamp.ts';
import type { Document } from '../../record/document.ts';
import { type AdviceStanding, adviceFor } from '../../standing/advice.ts';
import { headsOf } from '../../standing/heads.ts';
import { paceOf } from '../../standing/pace.ts';
import type { RuleOutcome } from '../../termination/evaluate-rule.ts';
import type { Theme, Tone } from '../theme.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';

/** The heading of the panel; it always says that what stands below is advice, and what it rests on. */
export function adviceTitle(hole: Document): string {
  return `end of hole · advice on the log to ${formatDepth(headsOf(hole).loggedMm)} m`;
}

/** The panel of the hole's end: depth and pace, each rule with its progress, the verdict with its reason. `room` lines, `width` cells. */
export function advicePanel(
  project: Project,
  hole: Document,
  theme: Theme,
  width: number,
  room: number,
): readonly Line[] {
  const standing = adviceFor(project, hole);
  const verdict = verdictLines(standing, width);
  const depths = depthLines(hole);
  const left = Math.max(0, room - depths.length - verdict.length);
  const rules = [...standing.outcomes].sort((a, b) => weight(b) - weight(a)).slice(0, left);
  return [
    ...depths,
    ...standing.outcomes.filter((each) => rules.includes(each)).map((each) => ruleLine(each, theme)),
    ...verdict,
  ];
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
  const reached =
    pace.plannedReachedAt === undefined ? '' : `, planned depth ${localTime(pace.plannedReachedAt)}`;
  return [line(depth), line(`${pace.metresPerHour.toFixed(1)} m an hour${reached}`, 'faint')];
}

/** A rule's line on the panel: its sign, its name and its progress with the cut-off. */
export function ruleLine(outcome: RuleOutcome, theme: Theme): Line {
  const [sign, tone] = stateSign(outcome, theme);
  return spans([`${sign} `, tone], `${outcome.rule.name}: ${outcome.progress.text}`);
}

function stateSign(outcome: RuleOutcome, theme: Theme): readonly [string, Tone] {
  if (outcome.state === 'met') return [theme.signs.tick, 'good'];
  return outcome.state === 'cannot tell' ? ['?', 'warn'] : [theme.signs.dash, 'faint'];
}

/** What matters first where there is no room for all: what can't be told, what is met, what has gone furthest. */
function weight(outcome: RuleOutcome): number {
  if (outcome.state === 'met') return 3;
  if (outcome.state === 'cannot tell') return 2;
  const { haveMm, needMm } = outcome.progress;
  return haveMm === undefined || needMm === undefined || needMm === 0 ? 0 : haveMm / needMm;
}

/** The verdict with its reason, and what can change within the next rod. Nothing while the driller has stopped. */
export function verdictLines(standing: AdviceStanding, width: number): readonly Line[] {
  if (!standing.shown.shown) {
    return [...wrap(`No advice is shown: ${standing.shown.because}.`, width, 'warn')];
  }
  const { verdict, sentence } = standing.shown.advice;
  const tone: Tone = verdict === 'not yet' ? 'plain' : verdict === 'ask' ? 'alert' : 'good';
  const ahead = standing.ahead[0];
  return [
    ...wrap(sentence, width, tone).slice(0, 3),
    ...(ahead === undefined ? [] : wrap(ahead.words, width, 'accent').slice(0, 2)),
  ];
}
