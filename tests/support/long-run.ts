/** True in `npm run faults`: random seeds, and every search and sweep at its full size. */
export const LONG_RUN = process.env.OFFSIDER_LONG_RUN === 'yes';

/** The seed of the default suite, so that it does the same on every run. */
export const FIXED_SEED = 20260314;

/** How many runs a search makes: all of them in the long run, a twentieth in the default suite, but at least as many as the law needs to mean something. */
export function runs(full: number, atLeast = 50): number {
  return LONG_RUN ? full : Math.min(full, Math.max(atLeast, Math.round(full / 20)));
}

/** Every so-manieth of a sweep in the default suite, beginning with the first; all of it in the long run. */
export function part<T>(all: readonly T[], every: number): readonly T[] {
  return LONG_RUN ? all : all.filter((_, index) => index % every === 0);
}
