import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { check } from '../../src/commands/check.ts';
import { type TraysAsked, trays } from '../../src/commands/trays.ts';
import { obeyedInLines } from '../trust/vectors.ts';
import { copyOfSample, freshFolder, hear, SAMPLE } from './support/outside.ts';

async function run(folder: string, said: Partial<TraysAsked> = {}) {
  const heard = hear();
  const code = await trays(heard.outside, { folder, hole: 'MBRC003', as: 'text', ...said });
  return { code, out: heard.out(), err: heard.err() };
}

/** A folder with pictures of these names. */
function pictures(...names: readonly string[]): string {
  const folder = freshFolder();
  mkdirSync(join(folder, 'MBRC003_tray1.jpg.d'));
  for (const name of names) writeFileSync(join(folder, name), '');
  return folder;
}

describe('trays', () => {
  it('lists a hole’s trays with metres, label and photograph, the one being filled too', async () => {
    const { code, out } = await run(SAMPLE);
    expect(code).toBe(0);
    expect(out).toMatch(/^MBRC003 +1 +0 +20 +MBRC003 tray 1 0–20 m +MBRC003_tray1\.jpg$/m);
    expect(out).toMatch(/^MBRC003 +3 +40 +54 +MBRC003 tray 3 40–54 m +being filled$/m);
    expect(await run(SAMPLE, { hole: 'MBRC007' })).toMatchObject({
      code: 0,
      out: 'No chips of MBRC007 are in a tray yet.\n',
    });
  });

  it('gives the labels as CSV', async () => {
    const { out } = await run(SAMPLE, { as: 'csv' });
    expect(out.split('\r\n').slice(0, 2)).toEqual([
      'hole,tray,from_m,to_m,label,photo',
      'MBRC003,1,0,20,MBRC003 tray 1 0–20 m,MBRC003_tray1.jpg',
    ]);
  });

  it('registers the pictures of a folder by their names, once, and says which tell nothing', async () => {
    const folder = copyOfSample();
    const photos = pictures(
      'MBRC003 tray2.jpg',
      'tray1.png',
      'tray01.jpg',
      'IMG_1.JPG',
      'tray3.jpg',
      'list.txt',
    );
    const { code, out, err } = await run(folder, { photos });
    expect(code).toBe(0);
    expect(out).toContain('MBRC003 tray2.jpg');
    expect(out).toContain('MBRC003_tray1.jpg');
    expect(err).toContain('Tray 1 has several pictures, none is registered: tray01.jpg, tray1.png');
    expect(err).toContain('fits no finished tray: IMG_1.JPG, tray3.jpg');
    expect((await run(folder, { photos, as: 'json' })).code).toBe(0);
  });

  it('refuses a folder that is not there, and one without a picture that tells', async () => {
    expect(await run(copyOfSample(), { photos: '/nowhere/at/all' })).toMatchObject({ code: 2 });
    const none = await run(copyOfSample(), { photos: pictures('IMG_1.JPG') });
    expect(none).toMatchObject({ code: 2, err: expect.stringContaining('Name them like MBRC003_tray3.jpg') });
  });

  it('a name that a terminal would obey is shown', async () => {
    const { out, err } = await run(copyOfSample(), {
      photos: pictures('IMG\u001b]0;x\u0007.jpg', 'tray2\u202e.jpg'),
    });
    expect(obeyedInLines(out + err)).toBeUndefined();
  });

  it('a tray without its photograph is found by the check, where a project photographs its trays', async () => {
    const heard = hear();
    await check(heard.outside, { folder: SAMPLE, json: true });
    const codes = JSON.parse(heard.out()).map((each: { code: string }) => each.code);
    expect(codes).not.toContain('tray-without-photo');
  });
});
