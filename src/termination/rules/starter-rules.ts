import type { Rule } from './rule.ts';
import { EPITHERMAL_GOLD_SILVER_RULES } from './starter/epithermal-gold-silver.ts';
import { IRON_FORMATION_RULES } from './starter/iron-formation.ts';
import { LATERITIC_NICKEL_RULES } from './starter/lateritic-nickel.ts';
import { LITHIUM_PEGMATITE_RULES } from './starter/lithium-pegmatite.ts';
import { OROGENIC_GOLD_RULES } from './starter/orogenic-gold.ts';
import { PORPHYRY_COPPER_GOLD_RULES } from './starter/porphyry-copper-gold.ts';
import { USUAL_RULES } from './starter/usual.ts';

const BY_STYLE: Readonly<Record<string, readonly Rule[]>> = {
  'orogenic-gold': OROGENIC_GOLD_RULES,
  'porphyry-copper-gold': PORPHYRY_COPPER_GOLD_RULES,
  'lateritic-nickel': LATERITIC_NICKEL_RULES,
  'iron-formation': IRON_FORMATION_RULES,
  'lithium-pegmatite': LITHIUM_PEGMATITE_RULES,
  'epithermal-gold-silver': EPITHERMAL_GOLD_SILVER_RULES,
};

/**
 * Termination rules that a project of a starter style begins with. Depths of the place (permit, maximum) are the program's to add: a
 * made-up one would look like a real one. Figures are common practice; `offsider termination --replay` tunes them on finished holes.
 */
export function starterRules(style: string): readonly Rule[] {
  return BY_STYLE[style] ?? USUAL_RULES;
}
