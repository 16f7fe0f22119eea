import { describe, expect, it } from 'vitest';
import { STYLES } from '../../src/schema/styles/index.ts';
import { resolveStyle } from '../support/styles.ts';

describe.each(Object.keys(STYLES))('the style %s against published standards', (name) => {
  const schema = resolveStyle(name)!;
  const codes = Object.values(schema.lists).flatMap((list) => list.codes);

  it('grades weathering as ISRM (1978), Suggested methods for the quantitative description of discontinuities in rock masses', () => {
    expect(schema.scales.weathering?.levels.map((level) => [level.code, level.label])).toEqual([
      ['I', 'fresh'],
      ['II', 'slightly weathered'],
      ['III', 'moderately weathered'],
      ['IV', 'highly weathered'],
      ['V', 'completely weathered'],
      ['VI', 'residual soil'],
    ]);
  });

  it('parts grain sizes at the limits of Wentworth (1922), A scale of grade and class terms for clastic sediments', () => {
    const limits = schema.scales.grainSize?.levels.map((level) => level.look.match(/[\d.]+/g)?.map(Number));
    // Clay under 1/256 mm, silt to 1/16, then halves and doubles up to 2 mm; printed to three digits.
    expect(limits).toEqual([
      [0.004],
      [0.004, 0.063],
      [0.063, 0.125],
      [0.125, 0.25],
      [0.25, 0.5],
      [0.5, 1],
      [1, 2],
      [2],
    ]);
    expect((1 / 256).toFixed(3)).toBe('0.004');
    expect((1 / 16).toFixed(3)).toBe('0.063');
  });

  it('cross-refers to mineral symbols of Warr (2021), Mineralogical Magazine 85, 291–320', () => {
    const used = codes.flatMap(({ label, mineral }) =>
      mineral === undefined ? [] : [[label, mineral] as const],
    );
    for (const [label, mineral] of used) {
      const term = MINERAL_OF[label] ?? label.split(/[–,(]| vein| alteration/)[0]?.trim() ?? '';
      expect(PRINTED[term.toLowerCase()], label).toBe(mineral);
    }
    expect(used.length).toBeGreaterThanOrEqual(8);
  });

  it('gives sericite, fuchsite and limonite no mineral symbol: Warr (2021) has none, and Ser there is serendibite', () => {
    for (const code of codes.filter((each) => /sericite|fuchsite|limonite/.test(each.label)))
      expect(code).not.toHaveProperty('mineral');
  });

  it('cross-refers rocks to ids of the CGI (IUGS) Simple Lithology vocabulary and alteration to its alteration types', () => {
    const ids = (list: string) => schema.lists[list]?.codes.flatMap((code) => code.cgi ?? []) ?? [];
    for (const id of ids('rocks')) expect(LITHOLOGY).toContain(id);
    for (const id of ids('alterationMinerals')) expect(ALTERATION).toContain(id);
    expect(ids('rocks').length).toBeGreaterThanOrEqual(15);
  });
});

/** What a label is called where it is not the mineral's own name. */
const MINERAL_OF: Readonly<Record<string, string>> = {
  silica: 'quartz',
  'vein quartz': 'quartz',
  'native copper': 'copper',
  tennantite: 'tennantite-(fe)',
  barite: 'baryte',
  amethyst: 'quartz',
  'calcite in veins': 'calcite',
  'specular hematite': 'hematite',
  'earthy hematite': 'hematite',
  'saddle dolomite': 'dolomite',
};

/** Symbols as printed, for the minerals that the styles could name. */
const PRINTED: Readonly<Record<string, string>> = {
  quartz: 'Qz',
  albite: 'Ab',
  anorthite: 'An',
  microcline: 'Mcc',
  orthoclase: 'Or',
  plagioclase: 'Pl',
  'k-feldspar': 'Kfs',
  muscovite: 'Ms',
  biotite: 'Bt',
  phlogopite: 'Phl',
  chlorite: 'Chl',
  clinochlore: 'Clc',
  chamosite: 'Chm',
  epidote: 'Ep',
  clinozoisite: 'Czo',
  actinolite: 'Act',
  tremolite: 'Tr',
  hornblende: 'Hbl',
  diopside: 'Di',
  augite: 'Aug',
  olivine: 'Ol',
  forsterite: 'Fo',
  serpentine: 'Srp',
  talc: 'Tlc',
  kaolinite: 'Kln',
  illite: 'Ilt',
  smectite: 'Sme',
  montmorillonite: 'Mnt',
  pyrophyllite: 'Prl',
  dickite: 'Dck',
  alunite: 'Alu',
  calcite: 'Cal',
  dolomite: 'Dol',
  ankerite: 'Ank',
  siderite: 'Sd',
  magnesite: 'Mgs',
  anhydrite: 'Anh',
  gypsum: 'Gp',
  baryte: 'Brt',
  fluorite: 'Flr',
  apatite: 'Ap',
  fluorapatite: 'Fap',
  tourmaline: 'Tur',
  schorl: 'Srl',
  garnet: 'Grt',
  almandine: 'Alm',
  andradite: 'Adr',
  grossular: 'Grs',
  rutile: 'Rt',
  titanite: 'Ttn',
  ilmenite: 'Ilm',
  zircon: 'Zrn',
  magnetite: 'Mag',
  hematite: 'Hem',
  goethite: 'Gth',
  chromite: 'Chr',
  cassiterite: 'Cst',
  scheelite: 'Sch',
  pyrite: 'Py',
  pyrrhotite: 'Pyh',
  marcasite: 'Mrc',
  arsenopyrite: 'Apy',
  chalcopyrite: 'Ccp',
  bornite: 'Bn',
  chalcocite: 'Cc',
  covellite: 'Cv',
  galena: 'Gn',
  sphalerite: 'Sp',
  molybdenite: 'Mol',
  stibnite: 'Sbn',
  pentlandite: 'Pn',
  enargite: 'Eng',
  malachite: 'Mlc',
  azurite: 'Azu',
  cuprite: 'Cpr',
  silver: 'Ag',
  copper: 'Cu',
  graphite: 'Gr',
  spodumene: 'Spd',
  lepidolite: 'Lpd',
  beryl: 'Brl',
  jarosite: 'Jrs',
  gibbsite: 'Gbs',
  böhmite: 'Bhm',
  diaspore: 'Dsp',
  scorodite: 'Scd',
  gold: 'Au',
  'tetrahedrite-(fe)': 'Ttr-Fe',
  'tennantite-(fe)': 'Tnt-Fe',
  ferberite: 'Feb',
  hübnerite: 'Hbr',
};

/** Ids of the CGI (IUGS) Simple Lithology vocabulary. */
const LITHOLOGY: readonly string[] =
  `granite granodiorite tonalite monzogranite syenogranite alkali_feldspar_granite
    monzonite syenite diorite quartz_diorite gabbro anorthosite
    doleritic_rock pegmatite aplite porphyry basalt tholeiitic_basalt
    andesite dacite rhyolite trachyte latite komatiitic_rock
    boninite peridotite pyroxenite hornblendite serpentinite carbonatite
    ultramafic_igneous_rock tuffite ash_tuff_lapillistone_and_lapilli_tuff tuff_breccia_agglomerate_or_pyroclastic_breccia clastic_sandstone arenite
    wacke siltstone claystone shale clastic_mudstone clastic_conglomerate
    breccia diamictite limestone dolostone chalk travertine
    non_clastic_siliceous_sedimentary_rock iron_rich_sedimentary_rock phosphorite coal rock_salt rock_gypsum_or_anhydrite
    evaporite schist mica_schist phyllite slate gneiss
    orthogneiss paragneiss amphibolite granulite eclogite migmatite
    hornfels quartzite marble skarn metasomatic_rock mylonitic_rock
    cataclasite_series breccia_gouge_series fault_related_material duricrust bauxite residual_material
    clay silt sand gravel peat`.split(/\s+/);

/** Ids of the CGI (IUGS) alteration types. */
const ALTERATION: readonly string[] =
  `alteration_not_specified advanced_argillic_alteration albitic_alteration alunitic_alteration
    argillic_alteration calcsilicate_alteration carbonate_alteration chloritic_alteration
    deuteric_alteration epidote_alteration greisen hematitic_alteration
    kaolinitic_alteration not_altered potassic_alteration propylitic_alteration
    pyritic_alteration red_rock_alteration saussuritised sericitic_alteration
    serpentinisation silicification uralitisation zeolitic_alteration`.split(/\s+/);
