import { describe, expect, it } from 'vitest';
import { say, sayJson, sayTrouble, troubleText } from '../../src/commands/say.ts';
import { tableText } from '../../src/commands/table-text.ts';
import { defineFinding } from '../../src/finding/finding.ts';
import { hear } from './support/outside.ts';

const kind = defineFinding({ code: 'test', severity: 'fault', title: 't', rationale: 'r' });

describe('what is printed', () => {
  it('obeys nothing that a file holds: controls are shown, lines stay', () => {
    const heard = hear();
    say(heard.outside, 'a\u001b[2Jb\nc\u202ed');
    expect(heard.out()).toBe('a␛[2Jb\nc<202E>d\n');
    sayTrouble(heard.outside, { findings: [kind.at({ file: 'x\u0007' }, { problem: 'p', remedy: 'r' })] });
    expect(heard.err()).toBe('x␇: p\n  r\n');
  });

  it('escapes controls in data too, and stays JSON', () => {
    const heard = hear();
    sayJson(heard.outside, { a: '\u001b\u009b\u007f' });
    expect(heard.out()).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/);
    expect(JSON.parse(heard.out())).toEqual({ a: '\u001b\u009b\u007f' });
  });

  it('tells what was expected from a fault of the program’s own', () => {
    const finding = kind.at(
      { file: 'project.json', line: 3 },
      { excerpt: '"x"', problem: 'p', remedy: 'Do r.' },
    );
    expect(troubleText({ findings: [finding] })).toBe('project.json:3: p\n  | "x"\n  Do r.');
    const bug = troubleText({ bug: new Error('boom') });
    expect(bug).toContain('a fault of its own. Rows shown as saved are safe.');
    expect(bug).toContain('say.test.ts');
    expect(troubleText({ bug: 'boom' })).toContain('boom');
  });
});

describe('a table as text', () => {
  it('has columns as wide as their widest cell, figures to the right', () => {
    expect(
      tableText([
        ['hole', 'm'],
        ['A', '9'],
        ['BBBBBB', '120.5'],
      ]),
    ).toBe('hole        m\nA           9\nBBBBBB  120.5');
  });
  it('counts wide characters as two cells', () => {
    expect(
      tableText([
        ['金', 'x'],
        ['ab', 'y'],
      ]),
    ).toBe('金  x\nab  y');
  });
  it('of nothing is nothing', () => {
    expect(tableText([])).toBe('');
  });
});
