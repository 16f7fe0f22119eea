import carbonatiteRareEarths from '../../../schemas/styles/carbonatite-rare-earths.json' with {
  type: 'json',
};
import clayRareEarths from '../../../schemas/styles/clay-rare-earths.json' with { type: 'json' };
import common from '../../../schemas/styles/common.json' with { type: 'json' };
import epithermalGoldSilver from '../../../schemas/styles/epithermal-gold-silver.json' with { type: 'json' };
import ironFormation from '../../../schemas/styles/iron-formation.json' with { type: 'json' };
import ironOxideCopperGold from '../../../schemas/styles/iron-oxide-copper-gold.json' with { type: 'json' };
import komatiiteNickelSulphide from '../../../schemas/styles/komatiite-nickel-sulphide.json' with {
  type: 'json',
};
import lateriticNickel from '../../../schemas/styles/lateritic-nickel.json' with { type: 'json' };
import lithiumPegmatite from '../../../schemas/styles/lithium-pegmatite.json' with { type: 'json' };
import orogenicGold from '../../../schemas/styles/orogenic-gold.json' with { type: 'json' };
import porphyryCopperGold from '../../../schemas/styles/porphyry-copper-gold.json' with { type: 'json' };
import sedimentHostedZincLead from '../../../schemas/styles/sediment-hosted-zinc-lead.json' with {
  type: 'json',
};
import volcanicMassiveSulphide from '../../../schemas/styles/volcanic-massive-sulphide.json' with {
  type: 'json',
};
import type { TextFile } from '../read/places.ts';

/** Starter styles by name, built in, so that a project can start without a network or a second file. */
export const STYLES: Readonly<Record<string, unknown>> = {
  'orogenic-gold': orogenicGold,
  'porphyry-copper-gold': porphyryCopperGold,
  'lateritic-nickel': lateriticNickel,
  'iron-formation': ironFormation,
  'lithium-pegmatite': lithiumPegmatite,
  'epithermal-gold-silver': epithermalGoldSilver,
  'iron-oxide-copper-gold': ironOxideCopperGold,
  'komatiite-nickel-sulphide': komatiiteNickelSulphide,
  'volcanic-massive-sulphide': volcanicMassiveSulphide,
  'sediment-hosted-zinc-lead': sedimentHostedZincLead,
  'carbonatite-rare-earths': carbonatiteRareEarths,
  'clay-rare-earths': clayRareEarths,
};

/** What sets each style apart from the others, for whoever has to choose one. */
export const SETS_APART: Readonly<Record<string, string>> = {
  'orogenic-gold': 'veins and shears: arsenopyrite, carbonates, chromian mica, panned grains',
  'porphyry-copper-gold': 'veins by generation, phases, sulphide ratio, enrichment, copper oxides',
  'lateritic-nickel': 'horizons, minerals by eye in percent, fresh boulders, hardness',
  'iron-formation': 'ore zones, oxides by streak, goethite by kind, shale bands, fibre',
  'lithium-pegmatite': 'zones, crystal size, spodumene by colour and state, holmquistite',
  'epithermal-gold-silver': 'vein fill and vein textures, clays by kind, adularia, silver minerals',
  'iron-oxide-copper-gold': 'iron oxides by kind, brecciation, counts, magnetite against hematite',
  'komatiite-nickel-sulphide': 'parts of the flow, spinifex and cumulates, sulphide textures, fibre',
  'volcanic-massive-sulphide': 'forms of sulphide, sphalerite by colour, barite, feeder alteration',
  'sediment-hosted-zinc-lead': 'carbonate rocks, sphalerite by colour, oxidised ore, cavities, gas',
  'carbonatite-rare-earths': 'carbonatites by carbonate, fenite, rare-earth and niobium minerals',
  'clay-rare-earths': 'clay horizons, clays by kind, plasticity, grit left, pH of the clay',
};

/** Parts that styles start from: what every log has, once. No project starts from them alone, but one can extend them. */
const PARTS: Readonly<Record<string, unknown>> = { common };

/** A built-in style or part of styles as a text that can be read like a file, or undefined where there is none of that name. */
export function styleFile(name: string): TextFile | undefined {
  const file = [STYLES, PARTS].find((files) => Object.hasOwn(files, name))?.[name];
  if (file === undefined) return undefined;
  return { file: `style ${name}`, text: JSON.stringify(file, null, 2), builtIn: true };
}
