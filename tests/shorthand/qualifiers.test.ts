import { describe, expect, test } from 'vitest';
import { evaluate } from '../../src/condition/evaluate.ts';
import { cautionsIn } from '../../src/schema/cautions.ts';
import { meaningsOf } from '../../src/schema/legend.ts';
import type { Code, Field, LoggingSchema } from '../../src/schema/logging-schema.ts';
import { readerOf } from '../../src/schema/read-cell.ts';
import { complete } from '../../src/shorthand/complete.ts';
import { explain } from '../../src/shorthand/explain.ts';
import { parseLine } from '../../src/shorthand/parse.ts';
import { writeLine } from '../../src/shorthand/write.ts';
import type { Cell } from '../../src/value/cell.ts';
import type { RowSaid } from '../../src/value/row.ts';
import { schema as fixture } from './fixture-schema.ts';

const base = { required: false, carry: true, unsaid: 'not observed', canBeNone: true } as const;
const code = (name: string, label: string, pair?: string, more: Partial<Code> = {}): Code => ({
  code: name,
  label,
  look: 'as drawn',
  ...(pair === undefined ? {} : { pair }),
  ...more,
});
const list = (name: string, codes: readonly Code[]) => ({ [name]: { name, label: name, codes } });

const FIBRE = { kind: 'fibre', words: 'May hold fibre: go by site procedures.' } as const;

/** The fixture with styles of alteration, habits of sulphides, and a colour of hue, shade and second hue. */
const schema: LoggingSchema = {
  ...fixture,
  fields: [
    ...fixture.fields.map((field): Field => {
      if (field.name === 'alteration') return { ...field, qualifiers: [{ list: 'styles' }] } as Field;
      if (field.name === 'sulphides')
        return { ...field, qualifiers: [{ list: 'styles' }, { list: 'habits', of: ['pyr'] }] } as Field;
      return field;
    }),
    {
      ...base,
      name: 'colour',
      label: 'colour',
      kind: 'code',
      list: 'hues',
      second: false,
      qualifiers: [{ list: 'hues' }, { list: 'shades' }],
    },
  ],
  lists: {
    ...fixture.lists,
    ...list('styles', [
      code('PER', 'pervasive', 'pv'),
      code('SEL', 'as selvages', 'sg'),
      code('PAT', 'patchy'),
      code('FIB', 'as fibres', 'fb', { caution: FIBRE }),
    ]),
    ...list('habits', [code('CUB', 'cubic', 'cu'), code('DIS', 'disseminated', 'di')]),
    ...list('hues', [code('GRY', 'grey', 'gy'), code('GRN', 'green', 'gn'), code('RED', 'red', 'rd')]),
    ...list('shades', [code('PAL', 'pale', 'pa'), code('DAR', 'dark', 'dk')]),
  },
};

function row(line: string, above?: RowSaid): RowSaid {
  const read = parseLine(line, { schema, above });
  if (read.kind !== 'row') throw new Error(`${line}: ${JSON.stringify(read)}`);
  return read.row;
}
const cell = (line: string, field: string, above?: RowSaid): Cell | undefined =>
  row(line, above).cells[field];
const refused = (line: string, above?: RowSaid): unknown => {
  const read = parseLine(line, { schema, above });
  return read.kind === 'refused' ? `${read.problem}. ${read.remedy}` : read;
};
const echo = (line: string, above: RowSaid) =>
  explain(row(line, above), { schema, above }).map(({ text }) => text);

describe('what more is said of one mineral', () => {
  const above = row('bswe1cl2pvpy2cu');

  test('stands right behind it, and is of it alone', () => {
    expect(cell('bswe1cl2pvse1sg', 'alteration')).toEqual({
      levels: { chl: 2, ser: 1 },
      qualified: { chl: { styles: 'PER' }, ser: { styles: 'SEL' } },
    });
    expect(cell('bswe1py2dipv', 'sulphides')).toEqual({
      percents: { pyr: 2 },
      qualified: { pyr: { habits: 'DIS', styles: 'PER' } },
    });
    expect(cell("bswe1 alteration'chl'2 styles'pat", 'alteration')).toMatchObject({
      qualified: { chl: { styles: 'PAT' } },
    });
  });

  test('stays while the mineral does, whatever its amount', () => {
    expect(cell('.', 'alteration', above)).toEqual(above.cells.alteration);
    expect(cell('c3', 'alteration', above)).toEqual({
      levels: { chl: 3 },
      qualified: { chl: { styles: 'PER' } },
    });
    expect(cell('c0se1', 'alteration', above)).toEqual({ levels: { ser: 1 } });
  });

  test('changes without the amount being said again, and goes with 0', () => {
    expect(cell('clsg', 'alteration', above)).toEqual({
      levels: { chl: 2 },
      qualified: { chl: { styles: 'SEL' } },
    });
    expect(cell('clpv0', 'alteration', above)).toEqual({ levels: { chl: 2 } });
    expect(cell("cl2 styles'0", 'alteration', above)).toEqual({ levels: { chl: 2 } });
  });

  test('is refused of nothing, of what is not there, of a mineral it is not for, twice, and with an amount', () => {
    expect(refused('pvbswe1')).toBe(
      'pervasive says more of alteration or sulphides, and none comes before it. Type it right after what it is about, amount first: cl2pv',
    );
    expect(refused('sepv', above)).toBe('sericite is not there: how much?. Type its amount before pv');
    expect(refused('hl1cu', above)).toBe(
      'cubic is not said of chalcopyrite. Leave it out, or say it in the remark: /',
    );
    expect(refused('cl2pvsg', above)).toBe('chlorite is given twice. Give it once: nothing was taken');
    expect(refused('cl2pv3', above)).toBe('pervasive takes no amount. Type pv, or pv0 to take it out');
    expect(refused("styles'per", above)).toContain('styles says more of alteration or sulphides');
  });

  test('is in the echo, as what changed where it changed', () => {
    expect(echo('c3', above)).toContain('chlorite 2→3 pervasive ▲');
    expect(explain(row('clsg', above), { schema, above })).toContainEqual({
      text: 'chlorite 2 as selvages (not pervasive)',
      kind: 'new',
    });
    expect(echo('se1', above)).toContain('chlorite 2 pervasive');
  });

  test('can hurt as a code can', () => {
    expect(cautionsIn(schema, row('bswe1cl2fb').cells)).toEqual([{ about: 'as fibres', caution: FIBRE }]);
  });

  test('is asked by a condition as what that mineral is', () => {
    const read = readerOf(schema, above.cells);
    const of = { field: 'alteration', of: 'chl' };
    expect(evaluate({ ...of, is: 'PER' }, read)).toBe('yes');
    expect(evaluate({ ...of, is: 'SEL' }, read)).toBe('no');
    expect(evaluate({ ...of, atLeast: 2 }, read)).toBe('yes');
    expect(evaluate({ ...of, atLeast: 3 }, read)).toBe('no');
    expect(evaluate({ field: 'alteration', of: 'ser', is: 'PER' }, read)).toBe('no');
  });

  test('is written into the legend, so that the hole decodes alone', () => {
    expect(meaningsOf(schema, [above]).codes).toMatchObject({
      'styles PER': { list: 'styles', code: 'PER', label: 'pervasive', pair: 'pv' },
      'habits CUB': { label: 'cubic' },
    });
  });

  test('is written with the fewest keys', () => {
    const next = (alteration: Cell) =>
      writeLine({ cells: { ...above.cells, alteration } }, { schema, above });
    expect(next({ levels: { chl: 2 }, qualified: { chl: { styles: 'SEL' } } })).toBe('clsg');
    expect(next({ levels: { chl: 2 }, qualified: { chl: { styles: 'PAT' } } })).toBe("c2 styles'pat");
    expect(next({ levels: { chl: 3 }, qualified: { chl: { styles: 'SEL' } } })).toBe('c3sg');
    expect(next({ levels: { chl: 2 } })).toBe('clpv0');
  });

  test('an insistence behind it is on the mineral', () => {
    expect(parseLine('se4pv=', { schema, above })).toMatchObject({ kind: 'row', asks: [] });
    expect(parseLine('se4pv', { schema, above })).toMatchObject({ asks: [{ about: 'level jump' }] });
  });

  test('is offered by Tab', () => {
    expect(complete('cl2p', { schema, above }).options).toContainEqual({ text: 'pv', label: 'pervasive' });
    expect(complete("cl2 styles'p", { schema, above }).options.map(({ text }) => text)).toContain(
      "styles'pat",
    );
  });
});

describe('a colour of hue, shade and second hue', () => {
  const above = row('bswe1gypagn');

  test('is said in any order behind the hue', () => {
    expect(above.cells.colour).toEqual({ code: 'GRY', qualified: { GRY: { hues: 'GRN', shades: 'PAL' } } });
    expect(cell('bswe1gygnpa', 'colour')).toEqual(above.cells.colour);
    expect(cell('bswe1gygn', 'colour')).toEqual({ code: 'GRY', qualified: { GRY: { hues: 'GRN' } } });
  });

  test('changes its shade alone; a hue said again is that hue alone', () => {
    expect(cell('dk', 'colour', above)).toEqual({
      code: 'GRY',
      qualified: { GRY: { hues: 'GRN', shades: 'DAR' } },
    });
    expect(cell('rd', 'colour', above)).toEqual({ code: 'RED' });
    expect(cell('py2dk', 'colour', above)).toMatchObject({ qualified: { GRY: { shades: 'DAR' } } });
  });

  test('reads as colours are named', () => {
    expect(echo('.', above)).toContain('pale green-grey');
    expect(echo('rddk', above)).toContain('pale green-grey→dark red');
  });

  test('is refused where no hue stands, and the same hue twice', () => {
    expect(refused('bswe1pa')).toBe('No colour is there to say more of. Say the colour first');
    expect(refused('gygy', above)).toBe('grey is given twice. Give it once: nothing was taken');
  });

  test('is written out as it is typed', () => {
    const next = (colour: Cell) => writeLine({ cells: { ...above.cells, colour } }, { schema, above });
    expect(next({ code: 'GRY', qualified: { GRY: { hues: 'GRN', shades: 'DAR' } } })).toBe('dk');
    expect(next({ code: 'GRY', qualified: { GRY: { shades: 'PAL' } } })).toBe('gypa');
    expect(next({ code: 'GRY' })).toBe('gy');
  });
});
