import type { Rule } from './rule.ts';
import { CARBONATITE_RARE_EARTHS_RULES } from './starter/carbonatite-rare-earths.ts';
import { CLAY_RARE_EARTHS_RULES } from './starter/clay-rare-earths.ts';
import { EPITHERMAL_GOLD_SILVER_RULES } from './starter/epithermal-gold-silver.ts';
import { IRON_FORMATION_RULES } from './starter/iron-formation.ts';
import { IRON_OXIDE_COPPER_GOLD_RULES } from './starter/iron-oxide-copper-gold.ts';
import { KOMATIITE_NICKEL_SULPHIDE_RULES } from './starter/komatiite-nickel-sulphide.ts';
import { LATERITIC_NICKEL_RULES } from './starter/lateritic-nickel.ts';
import { LITHIUM_PEGMATITE_RULES } from './starter/lithium-pegmatite.ts';
import { OROGENIC_GOLD_RULES } from './starter/orogenic-gold.ts';
import { PORPHYRY_COPPER_GOLD_RULES } from './starter/porphyry-copper-gold.ts';
import { SEDIMENT_HOSTED_ZINC_LEAD_RULES } from './starter/sediment-hosted-zinc-lead.ts';
import { USUAL_RULES } from './starter/usual.ts';
import { VOLCANIC_MASSIVE_SULPHIDE_RULES } from './starter/volcanic-massive-sulphide.ts';

const BY_STYLE: Readonly<Record<string, readonly Rule[]>> = {
  'orogenic-gold': OROGENIC_GOLD_RULES,
  'porphyry-copper-gold': PORPHYRY_COPPER_GOLD_RULES,
  'lateritic-nickel': LATERITIC_NICKEL_RULES,
  'iron-formation': IRON_FORMATION_RULES,
  'lithium-pegmatite': LITHIUM_PEGMATITE_RULES,
  'epithermal-gold-silver': EPITHERMAL_GOLD_SILVER_RULES,
  'iron-oxide-copper-gold': IRON_OXIDE_COPPER_GOLD_RULES,
  'komatiite-nickel-sulphide': KOMATIITE_NICKEL_SULPHIDE_RULES,
  'volcanic-massive-sulphide': VOLCANIC_MASSIVE_SULPHIDE_RULES,
  'sediment-hosted-zinc-lead': SEDIMENT_HOSTED_ZINC_LEAD_RULES,
  'carbonatite-rare-earths': CARBONATITE_RARE_EARTHS_RULES,
  'clay-rare-earths': CLAY_RARE_EARTHS_RULES,
};

/**
 * Termination rules that a project of a starter style begins with. Depths of the place (permit, maximum) are the program's to add: a
 * made-up one would look like a real one. Figures are common practice; `offsider termination --replay` tunes them on finished holes.
 */
export function starterRules(style: string): readonly Rule[] {
  return BY_STYLE[style] ?? USUAL_RULES;
}
