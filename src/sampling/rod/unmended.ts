import type { Finding } from '../../finding/finding.ts';
import type { RodDone } from '../../hole/drilled.ts';
import { mismatchUnmended } from '../findings.ts';
import { MISMATCHES } from './mismatches/registry.ts';

/** Rods whose bags did not agree and that no one mended yet. */
export function checkUnmended(hole: string, rods: readonly RodDone[]): readonly Finding[] {
  return rods
    .filter((rod) => rod.unmended === true)
    .map((rod) =>
      mismatchUnmended.at(
        { hole, fromMm: rod.depthMm, thing: `rod ${rod.rod}` },
        {
          excerpt: [rod.lastBag, rod.bags === undefined ? undefined : `${rod.bags} bags`]
            .filter((each) => each !== undefined)
            .join(', '),
          problem: `At this rod the bags did not agree, most likely ${nameOf(rod)}, and they are recorded as expected.`,
          remedy: 'Lay the bags out beside their piles, then ;fix in the log of the hole: it shows the ways.',
        },
      ),
    );
}

/** The name of the mismatch that a rod check put first. */
export function nameOf({ mismatch }: Pick<RodDone, 'mismatch'>): string {
  // Files from before "void" was kept for cavities say void-used.
  const code = mismatch === 'void-used' ? 'spoiled-used' : mismatch;
  return MISMATCHES.find((kind) => kind.code === code)?.name ?? 'no usual mismatch';
}
