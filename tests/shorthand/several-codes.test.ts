import { describe, expect, test } from 'vitest';
import type { Field, LoggingSchema } from '../../src/schema/logging-schema.ts';
import { explain } from '../../src/shorthand/explain.ts';
import { type ParsedRow, parseLine } from '../../src/shorthand/parse.ts';
import { writeLine } from '../../src/shorthand/write.ts';
import { type Cell, NONE, NOT_OBSERVED } from '../../src/value/cell.ts';
import type { RowSaid } from '../../src/value/row.ts';
import { schema as fixture } from './fixture-schema.ts';

const base = { required: false, carry: true, unsaid: 'not observed', canBeNone: true } as const;
const look = 'as drawn';
const texture = (code: string, label: string, pair?: string) => ({
  code,
  label,
  look,
  ...(pair === undefined ? {} : { pair }),
});

/** The fixture with a third rock, textures without amounts, and sulphides that stop at a change of weathering. */
const schema: LoggingSchema = {
  ...fixture,
  fields: fixture.fields.flatMap((field): readonly Field[] => {
    if (field.kind === 'code' && field.name === 'rock') return [{ ...field, third: true }];
    if (field.name === 'sulphides') return [{ ...field, notAcross: ['weathering', 'rock'] }];
    return field.name === 'veins'
      ? [{ ...base, name: 'texture', label: 'texture', kind: 'codes', list: 'textures' }, field]
      : [field];
  }),
  lists: {
    ...fixture.lists,
    textures: {
      name: 'textures',
      label: 'textures',
      codes: [
        texture('VUG', 'vuggy', 'vu'),
        texture('POR', 'porphyritic', 'po'),
        texture('BRE', 'brecciated'),
      ],
    },
  },
};

function parsed(line: string, above?: RowSaid): ReturnType<typeof parseLine> {
  return parseLine(line, { schema, above });
}

function row(line: string, above?: RowSaid): RowSaid {
  const read = parsed(line, above);
  if (read.kind !== 'row') throw new Error(JSON.stringify(read));
  return (read as ParsedRow).row;
}

function cell(line: string, field: string, above?: RowSaid): Cell | undefined {
  return row(line, above).cells[field];
}

function refused(line: string, above?: RowSaid): string {
  const read = parsed(line, above);
  return read.kind === 'refused' ? read.problem : `not refused: ${read.kind}`;
}

const echo = (line: string, above: RowSaid) =>
  explain(row(line, above), { schema, above }).map(({ text }) => text);

describe('several codes of one list', () => {
  const above = row('bswe1vupo');

  test('are said one after the other, without amounts', () => {
    expect(above.cells.texture).toEqual({ codes: { VUG: true, POR: true } });
    expect(cell("bswe1vu texture'bre", 'texture')).toEqual({ codes: { VUG: true, BRE: true } });
  });

  test('stay until one is taken out with 0, or all with the field', () => {
    expect(cell('.', 'texture', above)).toEqual(above.cells.texture);
    expect(cell('vu0', 'texture', above)).toEqual({ codes: { POR: true } });
    expect(cell("texture'bre", 'texture', above)).toEqual({ codes: { VUG: true, POR: true, BRE: true } });
    expect(cell('vu0po0', 'texture', above)).toEqual(NONE);
    expect(cell("texture'0", 'texture', above)).toEqual(NONE);
    expect(cell("texture'nr", 'texture', above)).toEqual(NOT_OBSERVED);
  });

  test('take no amount, and nothing twice', () => {
    expect(refused('vu2', above)).toBe('vuggy is there or not');
    expect(refused('vuvu', above)).toBe('vuggy is given twice');
  });

  test('are named in the echo without an amount', () => {
    expect(echo("vu0 texture'bre", above)).toEqual(
      expect.arrayContaining(['brecciated', 'vuggy gone', 'porphyritic']),
    );
  });

  test('are written with the fewest keys', () => {
    expect(
      writeLine({ cells: { ...above.cells, texture: { codes: { POR: true } } } }, { schema, above }),
    ).toBe('vu0');
    expect(writeLine(above, { schema })).toBe('bswe1vupo');
  });
});

describe('a third rock', () => {
  const above = row('bswe1sh30do10');

  test('is beside the second, the larger share first however they are typed', () => {
    const cells = { code: 'BST', second: { code: 'SHL', percent: 30 }, third: { code: 'DOL', percent: 10 } };
    expect(above.cells.rock).toEqual(cells);
    expect(cell('bswe1do10sh30', 'rock')).toEqual(cells);
  });

  test('changes, goes and comes one by one; a rock said alone is alone', () => {
    expect(cell('do20', 'rock', above)).toMatchObject({ third: { code: 'DOL', percent: 20 } });
    expect(cell('do35', 'rock', above)).toMatchObject({
      second: { code: 'DOL', percent: 35 },
      third: { code: 'SHL', percent: 30 },
    });
    expect(cell('sh0', 'rock', above)).toEqual({ code: 'BST', second: { code: 'DOL', percent: 10 } });
    expect(cell('bs', 'rock', above)).toEqual({ code: 'BST' });
  });

  test('is refused as a fourth, and where it leaves the first less than another has', () => {
    expect(refused("rock'bif'10", above)).toBe(
      'banded iron would be a fourth beside basalt, shale and dolerite',
    );
    expect(cell("rock'bif'10 do0", 'rock', above)).toMatchObject({ third: { code: 'BIF', percent: 10 } });
    expect(refused('bssh40do30')).toBe('basalt is left with 30 %, less than shale');
    expect(refused('sh20', { cells: { ...above.cells, rock: { code: 'SHL' } } })).toBe(
      'shale is the first already',
    );
  });

  test('where only a second can stand, another one takes its place as before', () => {
    const two = parseLine('do10', { schema: fixture, above: row('bswe1sh30') });
    expect(two).toMatchObject({
      row: { cells: { rock: { code: 'BST', second: { code: 'DOL', percent: 10 } } } },
    });
  });
});

describe('a field that does not carry across a change of another', () => {
  const above = row('bswe1py2');

  test('carries while the other is as above', () => {
    expect(cell('cl2', 'sulphides', above)).toEqual(above.cells.sulphides);
    // Another share of a second rock is no other rock.
    expect(cell('sh20', 'sulphides', above)).toEqual(above.cells.sulphides);
  });

  test('means what unsaid means where the other has changed, and the echo says why', () => {
    expect(cell('we2', 'sulphides', above)).toEqual(NONE);
    expect(row('we2', above).carried).not.toContain('sulphides');
    expect(echo('we2', above)).toContain('no sulphides (not across a change of weathering)');
    expect(echo('do', above)).toContain('no sulphides (not across a change of rock)');
  });

  test('holds only what is said of it, so that nothing else rides along', () => {
    const two = row('bswe1py2hl1');
    expect(cell('we2py3', 'sulphides', two)).toEqual({ percents: { pyr: 3 } });
  });

  test('is asked for by name where a row needs it', () => {
    const strict: LoggingSchema = {
      ...schema,
      fields: schema.fields.map((field) =>
        field.name === 'sulphides' ? { ...field, required: true } : field,
      ),
    };
    expect(parseLine('we2', { schema: strict, above })).toMatchObject({
      kind: 'refused',
      problem: 'sulphides is needed in this row: it does not carry across a change of weathering',
    });
  });

  test('is written out again where it goes on across the change', () => {
    const after: RowSaid = { cells: { ...above.cells, weathering: { level: 2 } } };
    const line = writeLine(after, { schema, above });
    expect(row(line, above).cells).toEqual(after.cells);
    expect(line).toBe('we2p2');
  });
});
