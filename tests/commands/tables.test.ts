import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { runCommandLine } from '../../src/commands/command-line/run.ts';
import { inflateExactly } from '../../src/files/inflate.ts';
import { openBundle } from '../../src/handover/bundle/open-bundle.ts';
import { asking } from '../handover/support/engine.ts';
import { copyOfSample, freshFolder, hear, SAMPLE } from './support/outside.ts';

async function run(...argv: string[]) {
  const heard = hear();
  const code = await runCommandLine(argv, { outside: heard.outside, openConsole: async () => 0 });
  return { code, out: heard.out(), err: heard.err() };
}

const read = (folder: string, file: string) => readFileSync(join(folder, file), 'utf8');
const rowsOf = (csv: string) => parse(csv, { columns: true }) as Record<string, string>[];

describe('tables', () => {
  it('lists every table with its rows, on a screen of 80 columns, and prints one, as text and as CSV', async () => {
    const list = await run('tables', '--project', SAMPLE);
    expect(list.code).toBe(0);
    expect(list.out).toMatch(/^geology +306 +The log$/m);
    expect(list.out.split('\n').filter((line) => line.length > 80)).toEqual([]);
    const shown = await run('tables', 'drilling', '--project', SAMPLE);
    expect(shown.out).toMatch(/^MBRC002 +1 +0 +24 +RC +RC7 /m);
    const csv = await run('tables', 'collars', '--csv', '--project', SAMPLE);
    expect(rowsOf(csv.out).find((each) => each.hole === 'MBRC002A')).toMatchObject({
      parent: 'MBRC002',
      east_m: '412436',
      latitude_deg: '-36.12057102',
      final_m: '90',
    });
  });

  it('writes all of them into a folder: CSV, JSON and the page, the same rows in each', async () => {
    const folder = join(freshFolder(), 'new', 'flat');
    const { code, out } = await run('tables', '--to', folder, '--project', SAMPLE);
    expect(code).toBe(0);
    expect(out).toContain('TABLES.md');
    const json = JSON.parse(read(folder, 'tables.json')) as Record<
      string,
      { rows: unknown[]; columns: object }
    >;
    const files = readdirSync(folder).filter((file) => file.endsWith('.csv'));
    expect(files.sort()).toEqual(
      Object.keys(json)
        .map((name) => `${name}.csv`)
        .sort(),
    );
    for (const [name, { rows, columns }] of Object.entries(json)) {
      const csv = read(folder, `${name}.csv`);
      expect(csv.startsWith(`${Object.keys(columns).join(',')}\r\n`)).toBe(true);
      expect(rowsOf(csv).length, name).toBe(rows.length);
    }
    expect(read(folder, 'TABLES.md')).toContain('Key: hole + from_m + to_m.');
    asking(readFileSync(join(folder, 'tables.gpkg')), (all) => {
      for (const [name, { rows }] of Object.entries(json))
        expect(all(`select count(*) as n from "${name}"`), name).toEqual([{ n: rows.length }]);
    });
    for (const file of ['collars.geojson', 'traces.geojson'])
      expect(JSON.parse(read(folder, file)).type).toBe('FeatureCollection');
  });

  it('writes again over its own tables, and never into a folder with someone’s files', async () => {
    const folder = join(freshFolder(), 'flat');
    await run('tables', '--to', folder, '--project', SAMPLE);
    writeFileSync(join(folder, 'collars.csv'), 'old');
    expect((await run('tables', '--to', folder, '--project', SAMPLE)).code).toBe(0);
    expect(read(folder, 'collars.csv')).toContain('MBRC001');
    const theirs = join(freshFolder(), 'theirs');
    mkdirSync(theirs);
    writeFileSync(join(theirs, 'samples.csv'), 'mine');
    const refused = await run('tables', '--to', theirs, '--project', SAMPLE);
    expect(refused.code).toBe(2);
    expect(refused.err).toContain('it holds files that are not tables of offsider');
    expect(readdirSync(theirs)).toEqual(['samples.csv']);
    expect(read(theirs, 'samples.csv')).toBe('mine');
  });

  it('leaves no partition of a hole that is gone, and writes no project over another', async () => {
    const project = copyOfSample();
    const folder = join(freshFolder(), 'flat');
    await run('tables', '--to', folder, '--project', project);
    const holes = () =>
      readdirSync(join(folder, 'parquet/geology/project=Mulgara Bend')).filter(
        (hole) => readdirSync(join(folder, 'parquet/geology/project=Mulgara Bend', hole)).length > 0,
      );
    expect(holes()).toEqual(['hole=MBRC001', 'hole=MBRC002', 'hole=MBRC002A', 'hole=MBRC003']);
    rmSync(join(project, 'holes/MBRC002.json'));
    await run('tables', '--to', folder, '--project', project);
    expect(holes()).toEqual(['hole=MBRC001', 'hole=MBRC002A', 'hole=MBRC003']);
    const settings = join(project, 'project.json');
    writeFileSync(settings, readFileSync(settings, 'utf8').replace('"Mulgara Bend"', '"Elsewhere"'));
    const refused = await run('tables', '--to', folder, '--project', project);
    expect(refused.code).toBe(2);
    expect(refused.err).toContain('it holds tables of another project: Mulgara Bend');
  });

  it('say which hole is missing where its file can’t be read, and exit with 1', async () => {
    const project = copyOfSample();
    writeFileSync(join(project, 'holes/MBRC001.json'), '{ broken');
    const { code, err, out } = await run('tables', 'collars', '--project', project);
    expect(code).toBe(1);
    expect(err).toContain('MBRC001');
    expect(out).not.toMatch(/^MBRC001 /m);
  });

  it('name a table that is not there, and a use that means nothing', async () => {
    expect((await run('tables', 'assay', '--project', SAMPLE)).err).toContain('assays');
    expect((await run('tables', '--csv', '--project', SAMPLE)).code).toBe(2);
    expect((await run('tables', 'collars', '--to', 'x', '--project', SAMPLE)).code).toBe(2);
  });

  it('are in every bundle, of what is packed, and are left alone when it is received', async () => {
    const project = copyOfSample();
    await run('pack', 'MBRC003', '--project', project);
    const [zip = ''] = readdirSync(join(project, 'outbox')).filter((file) => file.endsWith('.zip'));
    const opened = openBundle(readFileSync(join(project, 'outbox', zip)), zip, inflateExactly);
    if (!opened.ok) return expect.fail('the bundle does not open');
    const tables = opened.value.files.filter(({ name }) => name.startsWith('tables/'));
    const text = (name: string) =>
      new TextDecoder().decode(tables.find((each) => each.name === `tables/${name}`)?.bytes);
    expect(new Set(rowsOf(text('geology.csv')).map((each) => each.hole))).toEqual(new Set(['MBRC003']));
    expect(rowsOf(text('geology.csv')).length).toBe(46);
    expect(text('TABLES.md')).toContain('# Tables of Mulgara Bend');
    const other = copyOfSample();
    const received = await run('receive', join(project, 'outbox', zip), '--project', other);
    expect(received.code).toBe(0);
    expect(received.out).toContain('MBRC003');
    expect(readdirSync(other)).not.toContain('tables');
  });
});
