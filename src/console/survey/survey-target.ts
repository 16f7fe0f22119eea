import type { Project } from '../../project/project.ts';
import { formatDepth } from '../../quantity/depth.ts';
import type { Document } from '../../record/document.ts';
import { type AtTarget, type TargetStanding, targetOf } from '../../standing/survey.ts';
import {
  basisWords,
  chanceWords,
  ellipseWords,
  growthWords,
  leftOutWords,
  missSides,
  reachWords,
} from '../../survey/path/target-words.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';

const metresText = (m: number): string => `${m.toFixed(1)} m`;

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
  const reach = reachWords(target.reach, severityLimitPer30m, targetRadiusM, target.chanceBasis);
  return [
    line(
      `${'at the target'.padEnd(20)}${'off'.padEnd(8)}${'along'.padEnd(12)}${'across'.padEnd(11)}${'height'.padEnd(11)}nearest`,
      'faint',
    ),
    ...wayLines(target),
    ...wrap(
      `Last station ${formatDepth(target.measuredMm)} m, ${metresText(target.offPlanM)} from the plan. ${reach}`,
      width,
      target.reach.within ? 'good' : 'alert',
    ),
    ...wrap(
      `Chance within ${targetRadiusM} m: ${chances(target)} (${basisWords(target.chanceBasis)}). ${sigmaWords(target)}.`,
      width,
      'faint',
    ),
    ...(target.leftOut.length === 0 ? [] : wrap(`${leftOutWords(target.leftOut)}.`, width, 'warn')),
  ];
}

/** How well the place at the target is known, and how that comes about below the last shot. */
function sigmaWords({ ways: [straight], growth }: TargetStanding): string {
  const there = straight === undefined ? 'not known' : ellipseWords(straight.uncertainty);
  return [`One sigma there ${there}`, growthWords(growth)].filter((words) => words !== '').join('. ');
}

/** The chance straight on, and on the trend where shots give one. */
function chances({ ways, chanceBasis }: TargetStanding): string {
  const [straight, trend] = ways.map((way) => chanceWords(way.chance, chanceBasis));
  return chanceBasis === 'line-up' ? `${straight}` : `${straight}, on trend ${trend}`;
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
  const [along, across, height] = missSides(miss);
  const cells = [metresText(miss.totalM).padEnd(8), along.padEnd(12), across.padEnd(11), height.padEnd(11)];
  const at = (Math.round(nearest.depthMm / 100) / 10).toFixed(1);
  return spans(name.padEnd(20), [cells[0] ?? '', 'strong'], cells.slice(1).join(''), [
    `${nearest.distanceM.toFixed(1)} at ${at}`,
    'plain',
  ]);
}
