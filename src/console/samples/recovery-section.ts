import type { Finding } from '../../finding/finding.ts';
import type { Project } from '../../project/project.ts';
import { formatInterval } from '../../quantity/interval.ts';
import { formatMass } from '../../quantity/mass.ts';
import type { Document } from '../../record/document.ts';
import { type StreamMetre, streamMetres } from '../../standing/recovery.ts';
import { streamFindings } from '../../standing/stream-findings.ts';
import type { ListSection } from '../lists/listed.ts';
import type { Theme, Tone } from '../theme.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';

/** Blocks of a full bar: each is a tenth of what the metre holds. */
const BLOCKS = 10;

/** Recovery by metre, lowest first: bars and digits, what was seen by eye, what makes a metre less than clean. */
export function recoverySection(project: Project, hole: Document, theme: Theme): ListSection {
  const metres = [...streamMetres(project, hole)].reverse();
  const worth = metres.filter(
    (each) => each.percent !== undefined || each.seen !== undefined || seenIn(each),
  );
  return {
    head: [line('recovery by metre, the lowest first', 'strong')],
    items:
      worth.length === 0
        ? [[line('  nothing noted: ;mass 44-45 bulk 38.2 split 3.1, ;recovery poor 44-46, ;wet', 'faint')]]
        : worth.map((each) => [metreLine(project, each, theme)]),
  };
}

/** What stands out in recovery, hygiene and water: said, and never hidden. */
export function standsOutSection(project: Project, hole: Document, width: number): ListSection {
  const found = streamFindings(project, hole);
  return {
    head: found.length === 0 ? [] : [line('look at these in the sample stream', 'strong')],
    items: found.map((each) => findingItem(each, width)),
  };
}

function findingItem({ place, problem, remedy }: Finding, width: number): readonly Line[] {
  const { fromMm, toMm } = place;
  const at = fromMm === undefined || toMm === undefined ? '' : `${formatInterval({ fromMm, toMm })}  `;
  return [
    ...wrap(`  ${at}${problem}`, width, 'warn'),
    ...wrap(remedy, width - 6, 'faint').map((each): Line => [{ text: '      ' }, ...each]),
  ];
}

/** `first of the rod` is at every rod: alone it is not news. */
function seenIn(metre: StreamMetre): boolean {
  return metre.flags.some((flag) => flag !== 'first of the rod');
}

function metreLine({ sampling }: Project, metre: StreamMetre, theme: Theme): Line {
  const { percent, splitG, seen, flags } = metre;
  const { lowPercent, highPercent } = sampling.recovery;
  const off =
    percent === undefined ? '' : percent < lowPercent ? ' LOW' : percent > highPercent ? ' HIGH' : '';
  const tone: Tone = off === '' ? 'plain' : 'warn';
  return spans(
    `  ${formatInterval(metre).padEnd(12)}`,
    [percent === undefined ? ''.padEnd(BLOCKS) : barOf(percent, theme), tone],
    [percent === undefined ? '      ' : ` ${percent.toFixed(0).padStart(3)} %`, tone],
    [off.padEnd(6), 'warn'],
    seen === undefined ? '' : `${seen} by eye  `,
    [splitG === undefined ? '' : `calico ${formatMass(splitG)}  `, 'faint'],
    [flags.join(', '), seenIn(metre) ? 'warn' : 'faint'],
  );
}

function barOf(percent: number, theme: Theme): string {
  const full = Math.max(0, Math.min(BLOCKS, Math.round((percent / 100) * BLOCKS)));
  return theme.signs.full.repeat(full) + theme.signs.empty.repeat(BLOCKS - full);
}
