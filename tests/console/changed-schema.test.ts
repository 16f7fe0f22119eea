import { describe, expect, it } from 'vitest';
import { rowsDown } from '../../src/hole/hole.ts';
import { styleHash } from '../../src/schema/read/chain.ts';
import { type Files, sampleFiles, sitDown } from './support/sitting.ts';

/** The sample project with codes of its rocks changed. */
function withRocks(...codes: readonly object[]): Files {
  const files = sampleFiles();
  const logging = JSON.parse(files['logging.json'] ?? '');
  logging.lists.rocks.codes.push(...codes);
  return { ...files, 'logging.json': JSON.stringify(logging, null, 2) };
}

const sit = (files: Files) => sitDown(files, '2026-03-14T09:08:00+08:00');

describe('a schema that was changed over an open hole', () => {
  it('is shown on opening: what changed, and what the logged rows would mean', async () => {
    const sitting = await sit(withRocks({ code: 'BAS', label: 'andesite' }));
    expect(sitting.state().screen.name).toBe('found');
    const screen = sitting.screen().join(' ').replace(/\s+/g, ' ');
    expect(screen).toContain('MBRC003, list rocks, code BAS');
    expect(screen).toMatch(
      /BAS was basalt and is now andesite: \d+ rows, the first \S+, would read andesite/,
    );
  });

  it('never lets a pair mean another thing in the hole: what was typed with it is refused there', async () => {
    const sitting = await sit(
      withRocks({ code: 'BAS', pair: 'hx' }, { code: 'TLC', label: 'soapstone', look: 'soapy', pair: 'ba' }),
    );
    const found = sitting.state().found.map(({ problem }) => problem);
    expect(found).toContain('ba typed basalt, and now types soapstone; over these rows it is refused');
    sitting.press('escape');
    const before = rowsDown(sitting.hole('MBRC003')).length;
    sitting.enter('ba');
    expect(rowsDown(sitting.hole('MBRC003'))).toHaveLength(before);
    expect(sitting.state().message).toEqual({
      tone: 'alert',
      text: "ba typed basalt in this hole, and logging.json now gives it to soapstone. Say soapstone by its field: rock'TLC. ;found says how to give ba back.",
    });
    sitting.press('escape');
    sitting.enter("rock'TLC");
    expect(rowsDown(sitting.hole('MBRC003')).at(-1)?.[1].cells.rock).toEqual({ code: 'TLC' });
    expect(sitting.hole('MBRC003').tables.legendCodes?.['rocks TLC']).not.toHaveProperty('pair');
  });

  it('is told of a style that is not as it was when the project was agreed with it', async () => {
    const files = sampleFiles();
    const logging = JSON.parse(files['logging.json'] ?? '');
    logging.extendsHash = '0'.repeat(64);
    const sitting = await sit({ ...files, 'logging.json': JSON.stringify(logging, null, 2) });
    expect(sitting.state().screen.name).toBe('found');
    expect(sitting.screen().join(' ')).toContain('style orogenic-gold is not as it was');
    logging.extendsHash = styleHash('orogenic-gold');
    const agreed = await sit({ ...files, 'logging.json': JSON.stringify(logging, null, 2) });
    expect(agreed.state().screen.name).toBe('log');
  });

  it('opens on the log where nothing of it touches what was logged', async () => {
    const sitting = await sit(withRocks({ code: 'TLC', label: 'soapstone', look: 'soapy', pair: 'hx' }));
    expect(sitting.state().screen.name).toBe('log');
  });
});
