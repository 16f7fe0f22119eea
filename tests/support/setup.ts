import fc from 'fast-check';
import { FIXED_SEED, LONG_RUN } from './long-run.ts';

// fast-check takes another seed on each run unless it is given one. What a random seed finds in the long run is kept as an example.
fc.configureGlobal(LONG_RUN ? { numRuns: 1000 } : { seed: FIXED_SEED });
