import type { Code } from './logging-schema.ts';

/** Words for materials that are weathered by what they are, or were never fresh rock: common practice. */
const WEATHERED =
  /saprolit|saprock|regolith|laterit|ferricrete|calcrete|silcrete|duricrust|pisolit|mottled|limonit|gossan|weathered|alluvi|colluvi|\b(soil|clay|clays|hardpan|cover|scree|overburden)\b/i;

/** True of a code whose label names a weathered material: its density is meant as it lies, and is never reduced by weathering again. */
export const isWeatheredMaterial = ({ label }: Pick<Code, 'label'>): boolean => WEATHERED.test(label);
