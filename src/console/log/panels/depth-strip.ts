import { formatDepth } from '../../../quantity/depth.ts';
import { type Interval, sharedMm } from '../../../quantity/interval.ts';
import type { Theme } from '../../theme.ts';
import { type Line, line, spans } from '../../widgets/line.ts';

/** Where a hole is, for a strip that lies along it: both heads, and the depth that the strip ends at. Millimetres. */
export interface StripScale {
  readonly loggedMm: number;
  readonly drilledMm: number;
  readonly endMm: number;
}

/** A strip along the hole, left the collar: the metres that decided a rule are full, the rest of the log light, what is drilled and not logged a dash. */
export function depthStrip(
  deciding: readonly Interval[],
  scale: StripScale,
  width: number,
  theme: Theme,
): Line {
  const { signs } = theme;
  const cellMm = scale.endMm / width;
  const cells = Array.from({ length: width }, (_, index) => {
    const cell = { fromMm: index * cellMm, toMm: (index + 1) * cellMm } as unknown as Interval;
    if (deciding.some((each) => sharedMm(each, cell) > 0)) return signs.full;
    if (cell.fromMm < scale.loggedMm) return signs.empty;
    return cell.fromMm < scale.drilledMm ? signs.dash : ' ';
  });
  return spans([cells.join(''), 'accent']);
}

/** What the signs of the strips say, and the depths at their ends. */
export function stripLegend(scale: StripScale, theme: Theme): Line {
  const { full, empty, dash } = theme.signs;
  return line(
    `0 to ${formatDepth(scale.endMm)} m: ${full} decided it  ${empty} logged  ${dash} drilled, not logged`,
    'faint',
  );
}
