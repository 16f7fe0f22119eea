import { describe, expect, it } from 'vitest';
import { checkSchema } from '../../../src/schema/check/check-schema.ts';
import { SETS_APART, STYLES, styleFile } from '../../../src/schema/styles/index.ts';
import { checkRules } from '../../../src/termination/rules/check-rules.ts';
import { starterRules } from '../../../src/termination/rules/starter-rules.ts';
import { resolveStyle } from '../../support/styles.ts';

const NAMES = Object.keys(STYLES);
/** Styles that start from the common parts; the first one, written before them, is on its own. */
const ON_PARTS = NAMES.filter((name) => name !== 'orogenic-gold');

describe.each(NAMES)('the style %s', (name) => {
  const schema = resolveStyle(name)!;
  const codes = Object.values(schema.lists).flatMap((list) => list.codes);

  it('passes the schema check without a finding, and its termination rules theirs', () => {
    expect(checkSchema(schema)).toEqual([]);
    // Whom to call is the site's own: a new project is told to name someone.
    const found = checkRules(starterRules(name), schema, {});
    expect(found.filter(({ code }) => code !== 'termination-rule-calls-no-one')).toEqual([]);
  });

  it('is set apart from the others in a line', () => {
    expect(SETS_APART[name]?.length).toBeGreaterThan(40);
    expect(SETS_APART[name]?.length).toBeLessThanOrEqual(76);
    expect(Object.keys(SETS_APART)).toEqual(NAMES);
  });

  it('forms each code by the rule in its list’s header, and has it once in the project', () => {
    for (const list of Object.values(schema.lists))
      expect(list.formedBy).toMatch(/^Three letters of the term/);
    for (const { code, label } of codes) {
      expect(code).toMatch(/^[A-Z]{3}$/);
      const term = label.toUpperCase();
      expect(term[0], label).toBe(code[0]);
      const end = [...code].reduce(
        (from, letter) => (from < 0 ? from : term.indexOf(letter, from) + 1 || -1),
        0,
      );
      expect(end, `${code} ${label}`).toBeGreaterThan(0);
    }
    const levels = Object.values(schema.scales).flatMap(({ levels }) =>
      levels.flatMap(({ code }) => code ?? []),
    );
    const all = [...codes.map(({ code }) => code), ...levels];
    expect(all.filter((code, index) => all.indexOf(code) < index)).toEqual([]);
  });

  it('tells a graduate what each code and level looks like', () => {
    const looks = [...codes, ...Object.values(schema.scales).flatMap(({ levels }) => levels)];
    for (const { look, label } of looks) expect(look.length, label).toBeGreaterThan(5);
  });

  it('has a void and a loss of return with their cautions, and leaves every ruling to the site', () => {
    const rocks = schema.lists.rocks?.codes ?? [];
    expect(rocks.find(({ code }) => code === 'VOI')?.caution?.kind).toBe('void');
    expect(rocks.find(({ code }) => code === 'LOR')).toMatchObject({
      noChips: true,
      caution: { kind: 'other' },
    });
    const cautions = [...codes, ...schema.fields].flatMap(({ caution }) => caution ?? []);
    for (const { words } of cautions) expect(words).toMatch(/site procedures|rules of the place/);
    for (const field of schema.fields)
      if (/XRF|radiometric|gamma/.test(field.label))
        expect(field.caution?.kind, field.label).toBe('radiation');
  });

  it('warns of silica, fibre and arsenic where the thing can hold it', () => {
    const kindOf: readonly (readonly [RegExp, string])[] = [
      [/vein quartz|chert|silcrete|^quartz veins$/, 'silica dust'],
      [/actinolite|tremolite|amphibole|serpentin|ultramafic|crocidolite/, 'fibre'],
      [/enargite|tennantite|scorodite|cobaltite|niccolite|gersdorffite/, 'other'],
      [/uraninite|monazite|pyrochlore|allanite|xenotime/, 'radiation'],
      [/^gas$|cerussite|anglesite|pyromorphite/, 'other'],
    ];
    for (const [label, kind] of kindOf)
      for (const code of codes.filter((each) => label.test(each.label)))
        expect([code.label, code.caution?.kind]).toEqual([code.label, kind]);
  });

  it('knows what weathering leaves of a density, level by level', () => {
    expect(Object.keys(schema.lists.rocks?.densityShares?.weathering ?? {})).toEqual([
      '2',
      '3',
      '4',
      '5',
      '6',
    ]);
    expect(codes.filter(({ densityGcm3 }) => densityGcm3 !== undefined).length).toBeGreaterThan(3);
  });
});

describe.each(ON_PARTS)('the style %s on the common parts', (name) => {
  const schema = resolveStyle(name)!;
  const common = JSON.parse(styleFile('common')?.text ?? '');

  it('has the scales of the common parts as they are, and 40 to 80 codes of its own', () => {
    for (const [scale, { levels }] of Object.entries<{ levels: unknown }>(common.scales))
      expect(schema.scales[scale]?.levels).toEqual(levels);
    const own = Object.values<{ codes: unknown[] }>(JSON.parse(styleFile(name)?.text ?? '').lists);
    const count = own.reduce((sum, { codes }) => sum + codes.length, 0);
    expect(count).toBeGreaterThanOrEqual(40);
    expect(count).toBeLessThanOrEqual(80);
  });

  it('types the common parts with the same strokes as every other style', () => {
    for (const [list, { codes }] of Object.entries<{ codes: { code: string; pair: string }[] }>(common.lists))
      for (const { code, pair } of codes)
        expect([code, schema.lists[list]?.codes.find((each) => each.code === code)?.pair]).toEqual([
          code,
          pair,
        ]);
  });
});

describe('parts of styles', () => {
  it('are no style that a project starts from, and are found by their name', () => {
    expect(NAMES).not.toContain('common');
    expect(styleFile('common')).toBeDefined();
  });
});
