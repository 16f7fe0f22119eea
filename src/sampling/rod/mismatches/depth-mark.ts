import { formatDepth } from '../../../quantity/depth.ts';
import { layDownTo, type MismatchKind } from '../mismatch.ts';

/** The driller's depth mark is a metre out: the bags are right and the depth is not. */
export const depthMark: MismatchKind = {
  code: 'depth-mark-out',
  name: 'the depth mark is out',
  happened: 'The bags are right and the depth is not: the mark and the rod count differ.',
  claims: ['the depth is not the one marked'],
  ground: 'Leave the bags as they are. Ask the driller to count the rods and to set the mark again.',
  nearSplitter: false,
  suppose: (situation) => {
    const { state, seen } = situation;
    const told = seen.depthByRodsMm;
    const depths = told === undefined ? [state.drilledMm - 1000, state.drilledMm + 1000] : [told];
    return depths
      .filter((depthMm) => depthMm !== state.drilledMm && depthMm > state.startMm)
      .map((depthMm) => {
        const issue = layDownTo(situation, depthMm);
        const fix = { issue, depthMm };
        const at = `${formatDepth(depthMm)} m, not ${formatDepth(state.drilledMm)} m`;
        return { at, fix, weight: told === undefined ? 0.25 : 20 };
      });
  },
};
