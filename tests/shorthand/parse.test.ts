import { describe, expect, test } from 'vitest';
import { type EntryContext, insistOn, parseLine } from '../../src/shorthand/parse.ts';
import { NONE, NOT_OBSERVED } from '../../src/value/cell.ts';
import { above, rowOf, schema } from './fixture-schema.ts';

function refusalOf(line: string, context: Partial<EntryContext> = { above }) {
  const parsed = parseLine(line, { schema, ...context });
  if (parsed.kind !== 'refused') throw new Error(`${line} was taken`);
  return parsed;
}

function asksOf(line: string, context: Partial<EntryContext> = { above }): readonly string[] {
  return rowOf(line, context).asks.map((ask) => ask.reason);
}

const cellsOf = (line: string, context: Partial<EntryContext> = { above }) => rowOf(line, context).row.cells;

describe('what a line is', () => {
  test('an empty one logs nothing, = alone settles, ; starts a command', () => {
    expect(parseLine('', { schema })).toEqual({ kind: 'empty' });
    expect(parseLine('   ', { schema })).toEqual({ kind: 'empty' });
    expect(parseLine('=', { schema })).toEqual({ kind: 'settle' });
    expect(parseLine(';u', { schema })).toMatchObject({ kind: 'command', command: { does: 'undo' } });
  });

  test('a whole match of the bag pattern is a bag, and nothing less is', () => {
    const context = { schema, above, bagPattern: /ZQ\d{6}/g };
    expect(parseLine('ZQ000163', context)).toEqual({ kind: 'bag', number: 'ZQ000163' });
    expect(parseLine('ZQ00016', context)).toMatchObject({
      kind: 'refused',
      problem: 'Z is a capital: Caps Lock?',
    });
    expect(parseLine('163', { ...context, bagPattern: /\d{3}/ })).toEqual({ kind: 'bag', number: '163' });
  });

  test('a row is a point, nr, or what is said; a remark may follow each', () => {
    expect(rowOf('./iron stain', { above }).row).toMatchObject({ repeat: true, remark: 'iron stain' });
    expect(rowOf('nr/blocked').row).toMatchObject({ noReturn: true, remark: 'blocked' });
    expect(rowOf('p3 / 5 cm vein', { above }).row.remark).toBe('5 cm vein');
  });
});

describe('items', () => {
  test('are read by longest match, glued or with spaces between', () => {
    expect(cellsOf('dop3v2')).toEqual(cellsOf('do  p3 v2'));
    expect(cellsOf('dop3v2')).toMatchObject({ rock: { code: 'DOL' }, veins: { percent: 2 } });
  });

  test('take a comma for a trace, a semicolon or a point and digits for a half, and 0 to take out', () => {
    expect(cellsOf('p,=')).toMatchObject({ sulphides: { percents: { pyr: 'trace' } } });
    expect(cellsOf('v.5=')).toMatchObject({ veins: { percent: 0.5 } });
    expect(cellsOf('v0.5=')).toEqual(cellsOf('v.5='));
    expect(cellsOf('v;p;')).toEqual(cellsOf('v.5p.5'));
    expect(cellsOf('c0s0v0')).toMatchObject({ alteration: NONE, veins: NONE });
    expect(cellsOf('c0')).toMatchObject({ alteration: { levels: { sil: 1 } } });
  });

  test('name the second rock by an amount behind its pair; a first said alone is alone', () => {
    const mixed = rowOf('sh30', { above }).row;
    expect(mixed.cells.rock).toEqual({ code: 'BST', second: { code: 'SHL', percent: 30 } });
    expect(cellsOf('sh0', { above: mixed }).rock).toEqual({ code: 'BST' });
    expect(cellsOf('do', { above: mixed }).rock).toEqual({ code: 'DOL' });
    expect(cellsOf('dosh30', { above: mixed }).rock).toEqual({
      code: 'DOL',
      second: { code: 'SHL', percent: 30 },
    });
  });

  test('said by their field hold what has no strokes: codes in either case, negative numbers, words, absences', () => {
    expect(cellsOf("rock'bif weathering'sli magsus'-2.5 note''it''s / wet = cold'")).toMatchObject({
      rock: { code: 'BIF' },
      weathering: { level: 2 },
      magsus: { number: -2.5 },
      note: { text: "it's / wet = cold" },
    });
    expect(cellsOf("rock'nr veins'0 alteration'sil'2")).toMatchObject({
      rock: NOT_OBSERVED,
      veins: NONE,
      alteration: { levels: { chl: 2, sil: 2 } },
    });
    expect(cellsOf("contact'1").contact).toEqual({ flag: true });
    expect(cellsOf('ct').contact).toEqual({ flag: true });
  });

  test('of a field that a condition asks for are wanted where it holds, and refused where it does not', () => {
    expect(cellsOf('we4=sp').regolith).toEqual({ code: 'SAP' });
    expect(refusalOf('we4=').problem).toBe('regolith unit is needed in this row');
    expect(refusalOf('sp')).toMatchObject({
      problem: 'regolith unit is not asked of a row like this',
      position: 0,
      length: 2,
    });
    expect(cellsOf('p3')).not.toHaveProperty('regolith');
  });
});

describe('a first row', () => {
  test('takes for what is unsaid what the schema says that means', () => {
    expect(rowOf('bswe1').row).toEqual({
      cells: {
        rock: { code: 'BST' },
        weathering: { level: 1 },
        alteration: NONE,
        sulphides: NONE,
        veins: NONE,
        contact: NONE,
        magsus: NOT_OBSERVED,
        note: NOT_OBSERVED,
      },
    });
  });

  test('is refused without a required field, at the end of the line', () => {
    expect(refusalOf('bs', {})).toMatchObject({
      problem: 'weathering is needed in this row',
      remedy: "Say it, or weathering'nr if it was not observed",
      position: 2,
    });
  });

  test('has no row to repeat and no key that is above', () => {
    expect(refusalOf('.', {}).problem).toBe('There is no row above to repeat');
    expect(refusalOf('.', { loggedBefore: 'TQ' }).problem).toBe(
      'The row above is by TQ: . repeats only your own',
    );
    expect(refusalOf('bswe1p2', {}).problem).toBe('No row above carries pyrite into this one');
  });
  test('takes the key of a field that every row has: it has to be said anyway', () => {
    const fields = schema.fields.map((field) =>
      field.kind === 'level' && field.name === 'weathering' ? { ...field, key: 'w' } : field,
    );
    const keyed = { ...schema, fields };
    expect(parseLine('bsw1', { schema: keyed })).toMatchObject({
      kind: 'row',
      row: { cells: { weathering: { level: 1 } } },
    });
    expect(parseLine('bsw1p2', { schema: keyed })).toMatchObject({
      problem: 'No row above carries pyrite into this one',
    });
  });
});

describe('refused, with the place, the problem and what to do', () => {
  test.each([
    ['Py2', 0, 'P is a capital: Caps Lock?'],
    ['zz2', 0, 'zz is unknown'],
    ['p3p2', 2, 'pyrite is given twice'],
    ["alteration'0 c1", 13, 'chlorite is given twice'],
    ['dobs', 2, 'dolerite and basalt are both given as the first rock'],
    ['cl', 0, 'chlorite: how much?'],
    ['p', 0, 'p pyrite: how much?'],
    ['h2', 0, 'chalcopyrite is not in the row above'],
    ['p50v2 hl20', 6, 'sulphides adds up to 70 %, over the limit of 60'],
    ['c5', 0, 'chlorite: levels go from 1 to 4'],
    ['c,', 0, 'chlorite: levels go from 1 to 4'],
    ['we0', 0, "weathering is always something: it can't be none"],
    ['v101', 0, 'veins: 101 % is more than all of it'],
    ['sh60', 0, 'shale as the second: its share is over 0, up to 50 %'],
    ['bs20', 0, 'basalt is the first already'],
    ['dosh0', 2, 'shale is not the second'],
    ['sp2', 0, 'regolith unit takes no second one'],
    ['ct2', 0, 'contact is there or not'],
    ['ob', 0, 'old basalt (ob) was retired on 2026-01-01'],
    ["rock'old", 0, 'old basalt was retired on 2026-01-01 and can’t be used any more'],
    ["rok'bst", 0, 'No field is called rok'],
    ["rock'xyz", 0, 'xyz is not in the list'],
    ["p3rock'bst", 2, "rock' must start the line or follow a space"],
    ["note''wet'p3", 10, "Nothing can be glued to what note' says"],
    ["note'", 0, "note: nothing readable comes after the '"],
    ["magsus'3000", 0, 'susceptibility: 3000 is out of range'],
    ["magsus'1.25", 0, 'susceptibility: 1.25 has too many decimals'],
    ["magsus'wet", 0, 'susceptibility: wet is not a number'],
    ["veins'5'2", 0, 'veins: an amount has no meaning there'],
    ['nr p2', 2, 'nr means no return: nothing else fits the row'],
    ['p2nr', 2, 'nr means no return and is typed alone'],
    ['.p2', 1, '. repeats the row and is typed alone'],
    ['.5', 0, 'An amount has nothing before it'],
    ['2p', 0, '2 has nothing before it to measure'],
    ['p2;u', 2, '; starts a command and comes first'],
    ['/wet', 0, 'A remark needs a row'],
    ['=/wet', 0, '= accepts what comes before it'],
    ['p#', 0, 'p pyrite: how much?'],
    ['#', 0, '# has no meaning here'],
    ["'", 0, "' follows the name of a field"],
  ])('%s', (line, position, problem) => {
    expect(refusalOf(line)).toMatchObject({ position, problem });
    expect(refusalOf(line).remedy).not.toBe('');
  });

  test('an unknown pair names those that it could have been meant for', () => {
    expect(refusalOf('ch2')).toMatchObject({
      problem: 'ch is unknown',
      remedy: 'Did you mean cl chlorite, hl chalcopyrite?',
      suggestions: [
        { text: 'cl', label: 'chlorite' },
        { text: 'hl', label: 'chalcopyrite' },
      ],
    });
    expect(refusalOf('yp2').suggestions[0]).toEqual({ text: 'py', label: 'pyrite' });
  });

  test('gloves mode takes no single keys and names the pair', () => {
    expect(refusalOf('p3', { above, gloves: true })).toMatchObject({
      problem: 'Gloves mode takes no single keys: p',
      remedy: 'Type py and the amount',
    });
    expect(cellsOf('py3', { above, gloves: true })).toEqual(cellsOf('p3'));
  });

  test('where no one looked, one mineral taken out says nothing of the others', () => {
    const unseen = rowOf("alteration'nr", { above }).row;
    expect(refusalOf('cl0', { above: unseen }).problem).toBe(
      "chlorite can't be taken out: alteration was not observed",
    );
    expect(cellsOf('cl2', { above: unseen }).alteration).toEqual({ levels: { chl: 2 } });
  });
});

describe('what stands already', () => {
  test.each([
    ['p2', [['pyrite', false]]],
    ['bssh30', [['basalt', false]]],
    ['se0', [['sericite', true]]],
    [
      'bsp2c3',
      [
        ['basalt', false],
        ['pyrite', false],
      ],
    ],
    ['p3', []],
    ['p2=', []],
    ['bsp2 =', []],
  ])('%s is noted and not asked', (line, notes) => {
    const read = rowOf(line, { above });
    expect(read.asks).toEqual([]);
    expect(read.notes.map(({ label, gone }) => [label, gone])).toEqual(notes);
  });
});

describe('asked, once', () => {
  test.each([
    ['c4', 'chlorite goes from 2 to 4 with no new rock'],
    ['se3', 'sericite goes from 0 to 3 with no new rock'],
    ['p7', 'pyrite goes from 2 % to 7 % in one row'],
    ['hl7', 'chalcopyrite goes from 0 % to 7 % in one row'],
    ['p4', 'pyrite 4 % is off the ladder (0.5 1 2 3 5 7 10 15 20 30 50)'],
    ['sh12', 'shale 12 %: shares go in fives, from 10'],
    ['sh5', 'shale 5 %: shares go in fives, from 10'],
  ])('%s: %s', (line, reason) => {
    expect(asksOf(line)).toEqual([reason]);
    expect(rowOf(line, { above }).row.asked).toEqual([reason]);
    expect(asksOf(insistOn(line))).toEqual([]);
    expect(rowOf(insistOn(line), { above }).row).not.toHaveProperty('asked');
  });

  test.each([
    'c3',
    'c1',
    'c0',
    "alteration'0",
    'se1',
    'se2',
    'p5',
    'p.5',
    'p;',
    'hl1',
    'hl2',
    'hl5',
    'hl,',
    'do',
    'doc4',
    'sh15',
  ])('%s is not', (line) => {
    expect(asksOf(line)).toEqual([]);
  });

  test.each([
    ['c4', 'c3', []],
    ['c4', 'c2', []],
    ['c4', 'c1', ['chlorite goes from 4 to 1 with no new rock']],
    ['p10', 'p3', []],
    ['p10', 'p2', ['pyrite goes from 10 % to 2 % in one row']],
    ['p5', 'p0', []],
    ['p7', 'p0', ['pyrite goes from 7 % to 0 % in one row']],
  ])('a fall is given a step more than a rise: below %s, %s', (standing, line, asks) => {
    const below = rowOf(`${standing}=`, { above }).row;
    expect(asksOf(line, { above: below })).toEqual(asks);
  });

  test('a fall of two levels is asked of what every row must have, and of anything in gloves mode', () => {
    const below = rowOf('we5lac4 =', { above }).row;
    expect(asksOf('we3', { above: below })).toEqual(['weathering goes from 5 to 3 with no new rock']);
    expect(asksOf('cl2', { above: below, gloves: true })).toEqual([
      'chlorite goes from 4 to 2 with no new rock',
    ]);
  });

  test('in gloves mode the first row is asked about: all below carries from it', () => {
    const reason = 'all below carries from this row: look it over';
    expect(asksOf('bswe1', { above: undefined, gloves: true })).toEqual([reason]);
    expect(asksOf('bswe1 =', { above: undefined, gloves: true })).toEqual([]);
    expect(asksOf('bswe1', { above: undefined })).toEqual([]);
  });

  test('a new rock may bring any level, in gloves mode not one three steps up', () => {
    expect(asksOf('docl4')).toEqual([]);
    expect(asksOf('docl4', { above, gloves: true })).toEqual([]);
    expect(asksOf('dose3', { above, gloves: true })).toEqual(['sericite goes from 0 to 3']);
  });

  test('nothing is asked of steps where nothing was observed to step from', () => {
    const unseen = rowOf("alteration'nr sulphides'nr", { above }).row;
    expect(asksOf('cl4py20', { above: unseen })).toEqual([]);
    expect(asksOf('py4', { above: unseen })).toEqual([
      'pyrite 4 % is off the ladder (0.5 1 2 3 5 7 10 15 20 30 50)',
    ]);
  });

  test('= behind an item insists on it, behind a space on the whole row', () => {
    expect(asksOf('c4=p20')).toEqual(['pyrite goes from 2 % to 20 % in one row']);
    expect(asksOf('c4=p20=')).toEqual([]);
    expect(asksOf('c4p20 =')).toEqual([]);
    expect(asksOf('c4p20 = / sure')).toEqual([]);
    expect(asksOf('c4p20/sure=')).toEqual([]);
    expect(asksOf('c4p20 / sure =  ')).toEqual([]);
    expect(rowOf('c4p20 / sure =', { above }).row.remark).toBe('sure');
    expect(rowOf('p3/ratio = 2', { above }).row.remark).toBe('ratio = 2');
  });

  test('insisting on a line puts the = before its remark', () => {
    expect(insistOn('c4p20')).toBe('c4p20 =');
    expect(insistOn("note''a/b' c4/wet")).toBe("note''a/b' c4 =/wet");
    expect(insistOn('.')).toBe('.=');
    for (const line of ['c4p20', 'c4p20/wet', '.', './wet']) {
      expect(asksOf(insistOn(line), { above, repeats: 3 })).toEqual([]);
    }
  });

  test("a repeat past the project's limit is asked once in its run, whichever way it is said", () => {
    const reason = '3 rows alike: look again, then = if it is right';
    expect(asksOf('.', { above, repeats: 2 })).toEqual([]);
    expect(asksOf('.', { above, repeats: 3 })).toEqual([reason]);
    expect(asksOf('.', { above, repeats: 4 })).toEqual([]);
    expect(asksOf('p2=', { above, repeats: 3 })).toEqual([reason]);
    expect(asksOf('p3', { above, repeats: 3 })).toEqual([]);
    // Below a metre without return it is asked for what it repeats, and for nothing else.
    expect(asksOf('.', { above, previous: rowOf('nr').row, repeats: 3 })).toEqual([
      'no return directly above: . repeats the last metre that was seen',
    ]);
  });

  test('what is seldom seen together is asked of the row where it newly stands so', () => {
    const words = 'dolerite with veins: look again';
    const when = {
      all: [
        { field: 'rock', is: 'DOL' },
        { field: 'veins', seen: true },
      ],
    };
    const wary = { ...schema, unlikely: [{ name: 'veinedDolerite', when, words }] };
    expect(asksOf('do', { schema: wary, above })).toEqual([words]);
    expect(rowOf('do', { schema: wary, above }).row.askedOf).toEqual(['rock', 'veins']);
    expect(asksOf('do =', { schema: wary, above })).toEqual([]);
    expect(asksOf('dov0=', { schema: wary, above })).toEqual([]);
    const standing = rowOf('do =', { schema: wary, above }).row;
    expect(asksOf('v3', { schema: wary, above: standing })).toEqual([]);
  });

  test('no return is never asked, though n5 be one slip from it: rules look for a void in it', () => {
    const keyed = {
      ...schema,
      fields: schema.fields.map((field) => (field.kind === 'percent' ? { ...field, key: 'n' } : field)),
    };
    const veined = rowOf('vn3=', { above }).row;
    expect(asksOf('nr', { schema: keyed, above: veined })).toEqual([]);
    expect(asksOf('nr=', { schema: keyed, above: veined })).toEqual([]);
    expect(asksOf('nr', { schema: keyed, above })).toEqual([]);
    expect(asksOf('nr', { schema: keyed })).toEqual([]);
  });
});

test('no return observes nothing: every field that is asked of it says so', () => {
  const { row } = rowOf('nr', { above });
  expect(new Set(Object.values(row.cells))).toEqual(new Set([NOT_OBSERVED]));
  expect(row.cells).not.toHaveProperty('regolith');
});
