import { ratesSoFar } from '../../sampling/scheme/rates-so-far.ts';
import { bagsOfHoles } from '../../standing/dispatches.ts';
import type { ListSection } from '../lists/listed.ts';
import type { State } from '../state.ts';
import { line, spans } from '../widgets/line.ts';

/** Controls in a hundred primary samples of the whole project: wanted, given by the slots, put out so far. */
export function ratesSection({ project, documents }: State): ListSection {
  const rates = ratesSoFar(project.sampling, bagsOfHoles(documents.values()));
  const percent = (value: number | undefined): string =>
    value === undefined ? '–' : `${value.toFixed(1)} %`;
  const items = rates.map(({ kind, wantedPercent, slotsPercent, achievedPercent, count, primaries }) => {
    const behind = wantedPercent !== undefined && (achievedPercent ?? wantedPercent) < wantedPercent;
    return [
      spans(
        `  ${`${kind}s`.padEnd(17)} wanted ${percent(wantedPercent)}, slots give ${percent(slotsPercent)}, `,
        [`put out ${percent(achievedPercent)}`, behind ? 'warn' : 'plain'],
        [behind ? ' (behind)' : '', 'warn'],
        [`  ${count} beside ${primaries}`, 'faint'],
      ),
    ];
  });
  return { head: [line('rates of controls, all holes', 'strong')], items };
}
