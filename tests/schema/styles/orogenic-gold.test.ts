import { describe, expect, it } from 'vitest';
import { checkSchema } from '../../../src/schema/check/check-schema.ts';
import { slipsOf } from '../../../src/schema/check/keyboard.ts';
import { couldBeEither, strokesOf } from '../../../src/schema/strokes.ts';
import { STYLES } from '../../../src/schema/styles/index.ts';
import { resolveStyle } from '../../support/styles.ts';

const schema = resolveStyle('orogenic-gold')!;
const codes = Object.values(schema.lists).flatMap((list) => list.codes);

describe('every starter style', () => {
  for (const name of Object.keys(STYLES)) {
    it(`${name} passes the schema check without a finding`, () => {
      expect(checkSchema(resolveStyle(name)!)).toEqual([]);
    });
  }
});

describe('the orogenic gold style', () => {
  it('forms each code by the rule in its list’s header: three letters of the term, the first its first, in their order', () => {
    for (const list of Object.values(schema.lists))
      expect(list.formedBy).toMatch(/^Three letters of the term/);
    for (const { code, label } of codes) {
      expect(code).toMatch(/^[A-Z]{3}$/);
      const term = label.toUpperCase();
      expect(term[0], label).toBe(code[0]);
      const places = [...code].reduce(
        (from, letter) => (from < 0 ? from : term.indexOf(letter, from) + 1 || -1),
        0,
      );
      expect(places, `${code} ${label}`).toBeGreaterThan(0);
    }
  });

  it('has each code once in the project', () => {
    const levels = Object.values(schema.scales).flatMap((scale) =>
      scale.levels.flatMap((level) => level.code ?? []),
    );
    const all = [...codes.map((code) => code.code), ...levels];
    expect(new Set(all).size).toBe(all.length);
  });

  it('has no two strokes one slip apart that could both be meant, in any field', () => {
    const all = strokesOf(schema);
    for (const a of all)
      for (const b of all)
        if (a !== b && couldBeEither(a, b))
          expect(slipsOf(a.strokes), `${a.strokes} ${b.strokes}`).not.toContain(b.strokes);
  });

  it('gives a pair to every amount field and to every alteration mineral and sulphide that is common', () => {
    const typed = new Set(strokesOf(schema).map((stroke) => stroke.code?.code ?? stroke.field.name));
    for (const thing of ['weathering', 'oxidation', 'grain', 'veins', 'magnetism', 'fizz', 'contact'])
      expect(typed).toContain(thing);
    for (const thing of [
      'CHL',
      'SRC',
      'SIL',
      'CAL',
      'ANK',
      'DMT',
      'ALB',
      'BIO',
      'FUC',
      'PYR',
      'ARS',
      'PRR',
      'CCP',
    ])
      expect(typed).toContain(thing);
  });

  it('keeps every pair with an amount clear of other things’ keys, so that a letter left out is not another mineral, save where said', () => {
    const keys = new Map(strokesOf(schema).flatMap((s) => (s.is === 'key' ? [[s.strokes, s.label]] : [])));
    const risky = strokesOf(schema)
      .filter((stroke) => stroke.is === 'pair' && stroke.takes === 'amount')
      .filter((stroke) =>
        [...stroke.strokes].some((letter) => keys.has(letter) && keys.get(letter) !== stroke.label),
      );
    expect(risky.map((stroke) => stroke.label)).toEqual(['pyrrhotite']);
  });

  it('carries what is observed in chips and never a contact, a pan or an instrument', () => {
    const carried = schema.fields.filter((field) => field.carry).map((field) => field.name);
    expect(schema.fields.map((field) => field.name).filter((name) => !carried.includes(name))).toEqual([
      'contact',
      'gold',
      'magsus',
      'arsenic',
    ]);
  });

  it('takes sulphides, alteration and veins left unsaid in a first row for none seen, and no others', () => {
    expect(schema.fields.filter((field) => field.unsaid === 'none').map((field) => field.name)).toEqual([
      'alteration',
      'sulphides',
      'veins',
      'contact',
    ]);
  });

  it('says a caution where dust can hold fibre or silica, and leaves the ruling to the site', () => {
    const cautioned = codes.filter((code) => code.caution !== undefined);
    expect(cautioned.map((code) => code.code)).toEqual(
      expect.arrayContaining(['ULT', 'SER', 'AMP', 'IRF', 'ACT', 'CHE', 'VEQ']),
    );
    for (const code of cautioned) expect(code.caution?.words).toMatch(/site procedures/);
  });
});
