import type { Project } from '../../project/project.ts';
import { formatDepth } from '../../quantity/depth.ts';
import type { Document } from '../../record/document.ts';
import { type AtTarget, type TargetStanding, targetOf } from '../../standing/survey.ts';
import type { Reach } from '../../survey/miss.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';

const metresText = (m: number): string => `${m.toFixed(1)} m`;

/** A miss in one direction: its metres, and which way. */
function side(m: number, positive: string, negative: string): string {
  return Math.abs(m) < 0.05 ? '0.0' : `${Math.abs(m).toFixed(1)} ${m > 0 ? positive : negative}`;
}

/** Where the hole comes out at its target, by both ways of carrying it on, and whether the target can still be reached. */
export function targetLines(project: Project, hole: Document, width: number): readonly Line[] {
  const target = targetOf(project, hole);
  if (target === undefined)
    return wrap(
      'Nothing to compare: it takes a plan, and a line-up (;line-up) or a shot (n) in a north that can be turned to it.',
      width,
      'warn',
    );
  const { severityLimitPer30m, targetRadiusM } = project.survey;
  const reach = reachWords(target.reach, severityLimitPer30m, targetRadiusM);
  return [
    line(
      `${'at the target'.padEnd(20)}${'off'.padEnd(8)}${'along'.padEnd(12)}${'across'.padEnd(11)}${'height'.padEnd(11)}nearest`,
      'faint',
    ),
    ...wayLines(target),
    ...wrap(
      `Last station ${formatDepth(target.measuredMm)} m, ${metresText(target.offPlanM)} from the plan. ${reach[0]}`,
      width,
      reach[1],
    ),
    ...wrap(
      `Chance within ${targetRadiusM} m, by tool errors alone: ${percent(target.ways[0]?.chance)}, on trend ${percent(target.ways[1]?.chance)}.`,
      width,
      'faint',
    ),
  ];
}

function wayLines(target: TargetStanding): readonly Line[] {
  const [straight] = target.ways;
  if (target.measuredMm >= target.targetMm && straight !== undefined)
    return [wayLine('as measured', straight)];
  return target.ways.map((way) =>
    wayLine(way.projection === 'straight' ? 'PROJECTED straight' : 'PROJECTED on trend', way),
  );
}

function wayLine(name: string, { miss, nearest }: AtTarget): Line {
  const cells = [
    metresText(miss.totalM).padEnd(8),
    side(miss.alongM, 'beyond', 'short').padEnd(12),
    side(miss.acrossM, 'right', 'left').padEnd(11),
    side(miss.belowM, 'below', 'above').padEnd(11),
  ];
  const at = (Math.round(nearest.depthMm / 100) / 10).toFixed(1);
  return spans(name.padEnd(20), [cells[0] ?? '', 'strong'], cells.slice(1).join(''), [
    `${nearest.distanceM.toFixed(1)} at ${at}`,
    'plain',
  ]);
}

function reachWords(reach: Reach, limit: number, radiusM: number): readonly [string, 'good' | 'alert'] {
  if (reach.lengthM === undefined) return ['The target lies behind it: it CAN NOT be reached.', 'alert'];
  const bend = `${reach.severityPer30m.toFixed(1)}° per 30 m (limit ${limit})`;
  return reach.within
    ? [`Target within reach${reach.severityPer30m < 0.05 ? '' : `: bends ${bend}`}.`, 'good']
    : [`To come within ${radiusM} m it would bend ${bend}: it CAN NOT.`, 'alert'];
}

function percent(chance: number | undefined): string {
  if (chance === undefined) return 'not known';
  if (chance > 0.995) return 'over 99 %';
  return chance < 0.005 ? 'under 1 %' : `${Math.round(chance * 100)} %`;
}
