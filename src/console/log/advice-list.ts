import { planOf } from '../../hole/hole.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { Document } from '../../record/document.ts';
import { adviceFor } from '../../standing/advice.ts';
import { headsOf } from '../../standing/heads.ts';
import { ADVICE_LIMITS, dangersFirst, restsOn } from '../../termination/advice/verdict.ts';
import type { RuleOutcome } from '../../termination/evaluate/evaluate-rule.ts';
import { adviceWords } from '../../termination/rules/rule.ts';
import { type Listed, oneSection } from '../lists/listed.ts';
import type { State } from '../state.ts';
import type { Theme } from '../theme.ts';
import { type Line, line, wrap } from '../widgets/line.ts';
import { ruleLines, verdictLines } from './panels/advice-panel.ts';
import { depthStrip, type StripScale, stripLegend } from './panels/depth-strip.ts';

/** The advice in full: the verdict, then each rule with its words, its reason and the metres that decided it. Nothing of it while the driller has stopped. */
export function adviceList(state: State, hole: Document, width: number, theme: Theme): Listed {
  const standing = adviceFor(state.project, hole, state.documents.values());
  const verdict = verdictLines(standing, width);
  if (!standing.shown.shown) return oneSection('advice on ending the hole: hidden', [], verdict);
  const scale = scaleOf(hole);
  return oneSection(
    `advice on ending the hole ${restsOn(standing.shown.advice)}`,
    dangersFirst(standing.outcomes).map((outcome) => ruleInFull(outcome, scale, width, theme)),
    [...verdict, ...wrap(ADVICE_LIMITS, width, 'faint'), stripLegend(scale, theme), line('')],
  );
}

function scaleOf(hole: Document): StripScale {
  const { loggedMm, drilledMm } = headsOf(hole);
  return { loggedMm, drilledMm, endMm: Math.max(1000, loggedMm, drilledMm, planOf(hole)?.depthMm ?? 0) };
}

const INDENT: Line = [{ text: '    ' }];

function ruleInFull(outcome: RuleOutcome, scale: StripScale, width: number, theme: Theme): readonly Line[] {
  const words = `${outcome.rule.words} ${sentenceOf(adviceWords(outcome.rule))}.${nowWords(outcome)}`;
  const decided =
    outcome.deciding.length === 0
      ? []
      : [
          depthStrip(outcome.deciding, scale, width - INDENT.length - 4, theme),
          line(`decided by ${outcome.deciding.slice(-6).map(formatInterval).join(', ')}`, 'faint'),
        ];
  return [
    ...ruleLines(outcome, theme, width),
    ...[...wrap(words, width - 4, 'faint'), ...decided].map((each): Line => [...INDENT, ...each]),
  ];
}

function sentenceOf(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** What the reason says beyond the progress, which the rule's line has said already. */
function nowWords({ reason, progress }: RuleOutcome): string {
  if (reason === progress.text) return '';
  const said = `${progress.text}: `;
  return ` Now: ${reason.startsWith(said) ? reason.slice(said.length) : reason}.`;
}
