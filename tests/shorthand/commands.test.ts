import { describe, expect, test } from 'vitest';
import { COMMANDS } from '../../src/shorthand/commands.ts';
import { parseLine } from '../../src/shorthand/parse.ts';
import { above, schema } from './fixture-schema.ts';

const parse = (line: string) => parseLine(line, { schema, above });

describe('a word behind ;', () => {
  test.each([
    [';u', { does: 'undo' }],
    [';r', { does: 'redo' }],
    [';q', { does: 'leave' }],
    [';rod', { does: 'rod done' }],
    [';rod 163 x6 controls1', { does: 'rod done', check: '163 x6 controls1' }],
    [';rod 163 heavy fix:two-metres-in-one-bag:2', { check: '163 heavy fix:two-metres-in-one-bag:2' }],
    [';fix', { does: 'mend' }],
    [';fix 163 first158', { does: 'mend', check: '163 first158' }],
    [';scan 46.5 ZQ163', { does: 'scan', number: 'ZQ163', depthMm: 46_500 }],
    [';scan 46-47 second 163', { does: 'scan', number: '163', depthMm: 46_000, chute: 'second' }],
    [';swap 163', { does: 'swap pair', lastDigits: '163' }],
    [';later no blanks on site', { does: 'put control off', reason: 'no blanks on site' }],
    [';bag 46-47 ZQ163', { does: 'bag', kind: 'primary', fromMm: 46_000, toMm: 47_000, number: 'ZQ163' }],
    [
      ';bag duplicate 46-47 ZQ164',
      { does: 'bag', kind: 'duplicate', fromMm: 46_000, toMm: 47_000, number: 'ZQ164' },
    ],
    [';bag standard ZQ166', { does: 'control', kind: 'standard', number: 'ZQ166' }],
    [';bag blank ZQ167', { does: 'control', kind: 'blank', number: 'ZQ167' }],
    [';spoiled ZQ163 torn on the ute', { does: 'spoiled bag', number: 'ZQ163', reason: 'torn on the ute' }],
    [';copy 44-46', { does: 'copy', fromMm: 44_000, toMm: 46_000 }],
    [';copy 44-46 50.5', { does: 'copy', fromMm: 44_000, toMm: 46_000, atMm: 50_500 }],
    [';shift 44-46 1', { does: 'shift', fromMm: 44_000, toMm: 46_000, byMm: 1_000 }],
    [';shift 44-46 -.5', { does: 'shift', fromMm: 44_000, toMm: 46_000, byMm: -500 }],
    [';clear 44-46', { does: 'clear', fromMm: 44_000, toMm: 46_000 }],
    [';insert 44-45', { does: 'insert', fromMm: 44_000, toMm: 45_000 }],
    [';split 46.5', { does: 'split', atMm: 46_500 }],
    [';merge 44-46', { does: 'merge', fromMm: 44_000, toMm: 46_000 }],
  ])('%s', (line, command) => {
    expect(parse(line)).toMatchObject({ kind: 'command', insisted: false, command });
  });

  test('says where its text stands', () => {
    expect(parse(';later  no blanks')).toMatchObject({ word: 'later', text: 'no blanks', position: 8 });
  });

  test('takes = in the place of its preview, and only where it has one', () => {
    expect(parse(';clear 44-46 =')).toMatchObject({ insisted: true, command: { does: 'clear' } });
    expect(parse(';later it is a=')).toMatchObject({ insisted: false, command: { reason: 'it is a=' } });
  });

  test('has one spelling each, and a first form that reads as the command it stands for', () => {
    expect(new Set(COMMANDS.map((each) => each.word)).size).toBe(COMMANDS.length);
    for (const { word, form } of COMMANDS) {
      const [first = ''] = form.split(/,? or |, /);
      expect(parse(first), first).toMatchObject({ kind: 'command', word });
    }
  });

  test.each([
    [';u 3', ';u: ;u takes nothing after it', 'Type ;u'],
    [';later', ';later: Needs a reason', 'Type it like ;later no blanks on site'],
    [';bag 47-46 ZQ163', ';bag: Needs what is in the bag, then its number', 'Type it like ;bag 46-47 163'],
    [';spoiled ZQ163', ';spoiled: Needs a bag number and a reason', 'Type it like ;spoiled 163 torn'],
    [';copy 44', ';copy: Needs two depths, then a depth to copy to', 'Type it like ;copy 44-46 50'],
    [
      ';shift 44-46 0',
      ';shift: Needs two depths, then how many metres to move',
      'Type it like ;shift 44-46 1',
    ],
    [';clear 46-44', ';clear: Needs two depths, the upper first', 'Type it like ;clear 44-46'],
    [';split 44-46', ';split: Needs a depth', 'Type it like ;split 46.5'],
    [';merge 6000-7000', ';merge: Needs two depths, the upper first', 'Type it like ;merge 44-46'],
  ])('%s is refused with its form', (line, problem, remedy) => {
    expect(parse(line)).toMatchObject({ kind: 'refused', problem, remedy });
  });

  test('that takes the word void for a torn bag is told the word for it: a void is a cavity', () => {
    expect(parse(';void ZQ163 torn')).toMatchObject({
      kind: 'refused',
      suggestions: [{ text: ';spoiled', label: 'A bag is torn or lost: its number is never used again' }],
    });
  });

  test('that is unknown is refused with the words that it could be', () => {
    expect(parse(';merg 44-46')).toMatchObject({
      kind: 'refused',
      problem: 'No command is called merg',
      position: 1,
      suggestions: [{ text: ';merge', label: 'Make one row of several' }],
    });
    expect(parse(';')).toMatchObject({ kind: 'refused', problem: '; starts a command' });
  });
});

describe('a range', () => {
  test('is two depths and what is said of every row between them', () => {
    const parsed = parse(';44-46.5 py2v0');
    expect(parsed).toMatchObject({ kind: 'range', fromMm: 44_000, toMm: 46_500, insisted: false });
    expect(parsed).toMatchObject({ items: [{ text: 'py2' }, { text: 'v0' }] });
    expect(parse(';44-46 py2 =')).toMatchObject({ kind: 'range', insisted: true });
    expect(parse(';44-46 py2=')).toMatchObject({ kind: 'range', insisted: true });
  });

  test.each([
    [';44 py2', '44 is not a range'],
    [';49-44 py2', '49-44 is not a range'],
    [';44-49', 'Nothing is given for these rows'],
    [';44-49 py2/wet', 'A range takes no remark'],
    [';44-49 zz2', 'zz is unknown'],
  ])('%s is refused', (line, problem) => {
    expect(parse(line)).toMatchObject({ kind: 'refused', problem });
  });
});
