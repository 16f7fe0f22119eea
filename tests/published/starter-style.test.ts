import { describe, expect, it } from 'vitest';
import { resolveStyle } from '../support/styles.ts';

const schema = resolveStyle('orogenic-gold')!;
const codes = Object.values(schema.lists).flatMap((list) => list.codes);

describe('the orogenic gold style against published standards', () => {
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
    const printed: Readonly<Record<string, string>> = {
      chlorite: 'Chl',
      silica: 'Qz',
      calcite: 'Cal',
      ankerite: 'Ank',
      dolomite: 'Dol',
      albite: 'Ab',
      biotite: 'Bt',
      hematite: 'Hem',
      epidote: 'Ep',
      actinolite: 'Act',
      talc: 'Tlc',
      tourmaline: 'Tur',
      magnetite: 'Mag',
      pyrite: 'Py',
      arsenopyrite: 'Apy',
      pyrrhotite: 'Pyh',
      chalcopyrite: 'Ccp',
      galena: 'Gn',
      sphalerite: 'Sp',
      stibnite: 'Sbn',
      quartz: 'Qz',
      'vein quartz': 'Qz',
    };
    const used = codes.flatMap((code) => (code.mineral === undefined ? [] : [[code.label, code.mineral]]));
    for (const [label, mineral] of used) {
      const term = label?.split(/[–-]/)[0] ?? '';
      expect(printed[label ?? ''] ?? printed[term], label).toBe(mineral);
    }
    expect(used.length).toBeGreaterThan(20);
  });

  it('gives sericite and fuchsite no mineral symbol: Warr (2021) has none, and Ser there is serendibite', () => {
    for (const code of codes.filter((each) => /sericite|fuchsite/.test(each.label)))
      expect(code).not.toHaveProperty('mineral');
  });

  it('cross-refers rocks to ids of the CGI (IUGS) Simple Lithology vocabulary and alteration to its alteration types', () => {
    const lithology = [
      'sand',
      'clay',
      'duricrust',
      'residual_material',
      'basalt',
      'doleritic_rock',
      'gabbro',
      'komatiitic_rock',
      'ultramafic_igneous_rock',
      'serpentinite',
      'schist',
      'mica_schist',
      'andesite',
      'dacite',
      'rhyolite',
      'porphyry',
      'granite',
      'granodiorite',
      'non_clastic_siliceous_sedimentary_rock',
      'iron_rich_sedimentary_rock',
      'shale',
      'siltstone',
      'clastic_sandstone',
      'wacke',
      'clastic_conglomerate',
      'amphibolite',
      'mylonitic_rock',
      'breccia_gouge_series',
    ];
    const alteration = [
      'chloritic_alteration',
      'sericitic_alteration',
      'silicification',
      'carbonate_alteration',
      'albitic_alteration',
      'potassic_alteration',
      'hematitic_alteration',
      'epidote_alteration',
    ];
    const ids = (list: string) => schema.lists[list]?.codes.flatMap((code) => code.cgi ?? []) ?? [];
    for (const id of ids('rocks')) expect(lithology).toContain(id);
    for (const id of ids('alterationMinerals')) expect(alteration).toContain(id);
    expect(ids('rocks').length).toBeGreaterThan(25);
  });
});
