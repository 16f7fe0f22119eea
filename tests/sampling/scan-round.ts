import type { OtherHole } from '../../src/sampling/rod/mismatch.ts';
import { scanCheck } from '../../src/sampling/rod/scan.ts';
import type { Sampling } from '../../src/sampling/sampling.ts';
import type { StreamState } from '../../src/sampling/stream/stream.ts';
import type { Calico } from './splitter.ts';

/** Scans every calico of a rod where it lies, a split under its chute: the code of the first mismatch named, or undefined where all agree. */
export function scanRound(
  sampling: Sampling,
  state: StreamState,
  laid: readonly Calico[],
  others: readonly OtherHole[],
): string | undefined {
  for (const { number, holds, metres } of laid) {
    const metre = metres.at(-1);
    if (metre === undefined) continue;
    const chute = holds === 'second split' ? 'second' : 'first';
    const scan = scanCheck(sampling, state, number, { depthMm: metre * 1000 + 500, chute }, others);
    if (scan.named !== undefined) return scan.named.code;
  }
  return undefined;
}
