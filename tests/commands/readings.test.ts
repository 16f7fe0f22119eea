import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { holes } from '../../src/commands/holes.ts';
import { type ReadingsAsked, readings } from '../../src/commands/readings.ts';
import { copyOfSample, hear, SAMPLE } from './support/outside.ts';

const COLUMNS = { from: 'From', to: 'To', reading: 'K', unit: '1e-5 SI' };

async function take(text: string, more: Partial<ReadingsAsked> = {}) {
  const folder = more.folder ?? copyOfSample();
  const file = join(folder, 'ms.csv');
  if (folder !== SAMPLE) writeFileSync(file, text);
  const heard = hear();
  const code = await readings(heard.outside, {
    folder,
    hole: 'MBRC003',
    file,
    field: 'magsus',
    columns: COLUMNS,
    choices: {},
    preview: false,
    json: false,
    ...more,
  });
  return { code, out: heard.out(), err: heard.err(), folder };
}

async function lastDeed(folder: string): Promise<{ readonly what: string; readonly by: string }> {
  const heard = hear();
  await holes(heard.outside, { folder, json: true, history: 'MBRC003' });
  return JSON.parse(heard.out()).at(-1);
}

describe('readings of an instrument', () => {
  it('go from a CSV into the rows of a hole as one edit of its history, in the unit of the column', async () => {
    const { code, out, folder } = await take('From,To,K\n0,1,31\n1,2,42\n');
    expect([code, out]).toEqual([0, '2 readings of magnetic susceptibility taken.\n']);
    expect(await lastDeed(folder)).toMatchObject({
      what: 'magnetic susceptibility of 2 rows from ms.csv',
      by: 'NOK',
    });
    const again = await take('From,To,K\n0,1,31\n1,2,42\n', { folder });
    expect(again.out).toBe('0 readings of magnetic susceptibility taken, 2 there already.\n');
  });

  it('are shown and not written with --preview', async () => {
    const { code, out, folder } = await take('From,To,K\n0,1,31\n', { preview: true });
    expect(code).toBe(0);
    expect(out).toContain('0–1  0.31 1e-3 SI');
    expect(out).toContain('1 reading of magnetic susceptibility would be taken; nothing was written.');
    expect((await lastDeed(folder)).what).not.toContain('ms.csv');
  });

  it('give 1 where a line can’t be taken, with nothing of the file written', async () => {
    const { code, err, folder } = await take('From,To,K\n0,1,31\n400,401,42\n');
    expect(code).toBe(1);
    expect(err).toContain('ms.csv:3, MBRC003, field magsus: 400–401 is not logged yet');
    expect(err).toContain('Nothing of the file was taken.');
    expect((await lastDeed(folder)).what).not.toContain('ms.csv');
  });

  it('are data with --json, what was refused too', async () => {
    const { out } = await take('From,To,K\n0,1,31\n', { json: true });
    expect(JSON.parse(out)).toMatchObject({
      field: 'magsus',
      written: true,
      taken: [{ fromMm: 0, toMm: 1000, now: { number: 0.31 } }],
    });
    const refused = await take('From,To,K\n400,401,42\n', { json: true });
    expect([refused.code, JSON.parse(refused.out)[0].code]).toEqual([1, 'reading-not-taken']);
  });

  it('take the headings that the field keeps in logging.json; what is said comes before them', async () => {
    const folder = copyOfSample();
    const path = join(folder, 'logging.json');
    const logging = JSON.parse(readFileSync(path, 'utf8'));
    logging.fields = [{ name: 'magsus', csv: { depth: 'Depth', reading: 'K', unit: '1e-5 SI' } }];
    writeFileSync(path, JSON.stringify(logging));
    const kept = await take('Depth,K\n0.5,31\n', { folder, columns: {} });
    expect([kept.code, kept.err]).toEqual([0, '']);
    const said = await take('From,To,SI\n1,2,0.42\n', {
      folder,
      columns: { from: 'From', to: 'To', reading: 'SI', unit: '1e-3 SI' },
    });
    expect([said.code, said.err]).toEqual([0, '']);
  });

  it('give 2 for a column, a hole or a file that is not there', async () => {
    for (const more of [{ field: 'gold' }, { field: undefined }, { hole: 'MBRC099' }, { file: '/no/such' }])
      expect((await take('From,To,K\n', more)).code).toBe(2);
    const { err } = await take('From,To,K\n', { field: undefined });
    expect(err).toContain('Give --field with one of magsus, arsenic.');
  });
});
