import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { rowsDown } from '../../src/hole/hole.ts';
import { copyOfSample, freshFolder } from '../commands/support/outside.ts';
import { run } from '../trust/every-command.ts';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const shown = (sitting: Sitting): string =>
  sitting
    .screen(80, 24)
    .join('\n')
    .replaceAll(/[\s│]+/g, ' ');

/** Lets what was begun come to its end. */
async function received(sitting: Sitting): Promise<void> {
  for (let tries = 0; sitting.state().received === undefined && tries < 400; tries += 1)
    await new Promise((done) => setTimeout(done, 5));
}

/** What the other laptop mails after it logged a row. */
async function theirBundle(line: string): Promise<string> {
  const folder = copyOfSample();
  const logged = await run(['enter', 'MBRC003', '--by', 'NOK', '--project', folder], `${line}\n`);
  expect(logged.code).toBe(0);
  const packed = await run(['pack', 'MBRC003', '--by', 'NOK', '--project', folder]);
  return join(folder, /outbox\/\S+\.zip/.exec(packed.out)?.[0] ?? '');
}

describe('what came, taken in from the console', () => {
  it('says what it did, shows its rows at once, and goes back with Esc', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.enter(`;receive ${await theirBundle('p3')}`);
    expect(shown(sitting)).toContain('Taking it in …');
    await received(sitting);
    expect(shown(sitting)).toContain('hole MBRC003: newer than ours, taken in: it added 1 row');
    expect(rowsDown(sitting.hole('MBRC003')).at(-1)?.[1].toMm).toBe(47_000);
    sitting.press('escape');
    expect(sitting.state().screen).toMatchObject({ name: 'log', hole: 'MBRC003' });
    expect(sitting.screen(80, 24).join('\n')).toMatch(/46 +47/);
  });

  it('leads to the questions where both logged the same metre', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.enter('p5');
    sitting.enter(`;receive ${await theirBundle('p3')}`);
    await received(sitting);
    expect(shown(sitting)).toContain('1 question to settle, nothing of theirs is lost');
    sitting.press('escape');
    sitting.enter(';questions');
    expect(shown(sitting)).toContain('46–47');
  });

  it('names a file that is not there, and one that is damaged, and changes nothing', async () => {
    const sitting = await sitDown(sampleFiles());
    const before = sitting.hole('MBRC003').tables;
    const torn = join(freshFolder(), 'torn.zip');
    writeFileSync(torn, readFileSync(await theirBundle('p3')).subarray(0, 3000));
    for (const [file, says] of [
      ['/nowhere/reply.eml', 'reply.eml'],
      [torn, 'torn.zip'],
    ] as const) {
      sitting.enter(`;receive ${file}`);
      await received(sitting);
      expect(shown(sitting)).toContain(says);
      sitting.press('escape');
    }
    expect(sitting.hole('MBRC003').tables).toEqual(before);
    sitting.enter(';receive');
    expect(shown(sitting)).toContain('Type the file that came behind it');
    rmSync(torn);
  });
});
