import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { surveyRun } from '../../../src/hole/direction.ts';
import { readRunSaid } from '../../../src/survey/shots/run-said.ts';
import { WHEN } from '../build.ts';

describe('a survey run said on one line', () => {
  it.each([
    ['north-seeking', { toolClass: 'north-seeking gyro', north: 'true' }],
    ['aligned', { toolClass: 'gyro aligned at the collar', north: 'grid' }],
    ['magnetic', { toolClass: 'magnetic', north: 'magnetic' }],
  ])('%s alone has all else as usual', (said, run) => {
    expect(readRunSaid(said)).toEqual({
      ok: true,
      on: undefined,
      northSaid: false,
      run: {
        tool: 'not named',
        pass: 'single',
        inside: 'rods',
        toolOffsetMm: 0,
        operator: 'driller',
        ...run,
      },
    });
  });

  it('takes what is not as usual in any order, the name of the tool last and whole', () => {
    expect(
      readRunSaid(
        'magnetic open steel 8.5 offset 3 from grid out rank 70 on 2026-03-12 by JPE tool single shot 5',
      ),
    ).toEqual({
      ok: true,
      on: '2026-03-12',
      northSaid: true,
      run: {
        tool: 'single shot 5',
        toolClass: 'magnetic',
        north: 'grid',
        pass: 'out',
        inside: 'open hole',
        toolOffsetMm: 3000,
        steelMm: 8500,
        rank: 70,
        operator: 'JPE',
      },
    });
  });

  it('given twice of one thing is the last that was said', () => {
    expect(readRunSaid('magnetic open rods out single')).toMatchObject({
      ok: true,
      run: { inside: 'rods', pass: 'single' },
    });
  });

  it('names the tool whole, whatever is in its name', () => {
    expect(readRunSaid('magnetic in tool shot tool 5 by out')).toMatchObject({
      ok: true,
      run: { tool: 'shot tool 5 by out', pass: 'in', operator: 'driller' },
    });
  });

  it('is read or refused in words, whatever is typed', () => {
    const word = fc.oneof(
      fc.constantFrom(
        'magnetic',
        'in',
        'from',
        'offset',
        'tool',
        '__proto__',
        '1.5',
        '=',
        ' ',
        'on',
        '2026-03-12',
      ),
      fc.string({ maxLength: 6 }),
    );
    fc.assert(
      fc.property(fc.array(word, { maxLength: 8 }), (words) => {
        const read = readRunSaid(words.join(' '));
        if (read.ok) expect(surveyRun.safeParse({ rank: 40, ...read.run, at: WHEN }).success).toBe(true);
        else expect(read.problem.trim()).not.toBe('');
      }),
    );
  });

  it.each([
    ['', 'nothing is not a class of tool'],
    ['gyro', 'gyro is not a class of tool'],
    ['constructor', 'constructor is not a class of tool'],
    ['magnetic up', '"up" says nothing'],
    ['magnetic from east', '"from east" says nothing'],
    ['magnetic offset', '"offset " says nothing'],
    ['magnetic offset 500', '"offset 500" says nothing'],
    ['magnetic rank 101', '"rank 101" says nothing'],
    ['magnetic on 12.3.2026', '12.3.2026 is not a date'],
  ])('%j is refused: %s', (said, why) => {
    expect(readRunSaid(said)).toMatchObject({ ok: false, problem: expect.stringContaining(why) });
  });
});
