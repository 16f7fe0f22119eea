import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { LONG_RUN } from '../support/long-run.ts';
import { run } from '../trust/every-command.ts';

/** Holes of each of two rigs. */
const HOLES = LONG_RUN ? 20 : 2;
const RIGS = [
  { rig: 'RC1', by: 'AA', holes: Array.from({ length: HOLES }, (_, index) => nameOf(index + 1)) },
  { rig: 'RC2', by: 'BB', holes: Array.from({ length: HOLES }, (_, index) => nameOf(HOLES + index + 1)) },
] as const;
const ALL = RIGS.flatMap(({ holes }) => holes);

function nameOf(count: number): string {
  return `ZQRC${String(count).padStart(3, '0')}`;
}

async function fine(argv: readonly string[], stdin = ''): Promise<string> {
  const { code, out, err } = await run(argv, stdin);
  expect([code, err]).toEqual([0, '']);
  return out;
}

/** Camp plans every hole, for two rigs with a block of numbers each. */
async function campWith(home: string, east = 412_480): Promise<string> {
  const camp = join(home, 'camp');
  const lines = ALL.map(
    (hole, index) => `${hole},${east + 20 * index},${6_002_200 + 40 * index},431.5,270,grid,-60,60`,
  );
  writeFileSync(
    join(home, 'program.csv'),
    ['hole,easting,northing,elevation,azimuth,north,dip,depth', ...lines, ''].join('\n'),
  );
  await fine([
    'new',
    camp,
    '--style',
    'orogenic-gold',
    '--program',
    join(home, 'program.csv'),
    '--epsg',
    '7851',
  ]);
  const file = join(camp, 'project.json');
  const settings = JSON.parse(readFileSync(file, 'utf8'));
  settings.people = [
    { initials: 'AA', name: 'Ada Ang', role: 'geologist' },
    { initials: 'BB', name: 'Ben Bo', role: 'geologist' },
    { initials: 'CC', name: 'Cy Cole', role: 'camp' },
  ];
  settings.rigs = RIGS.map(({ rig }) => ({ ...settings.rigs[0], name: rig }));
  settings.sampling.numbers.blocks = [
    { rig: 'RC1', first: 'ZQ000001', last: 'ZQ004999' },
    { rig: 'RC2', first: 'ZQ005001', last: 'ZQ009999' },
  ];
  settings.camp = { to: ['camp@example.com'], mailMB: 0.1 };
  writeFileSync(file, JSON.stringify(settings));
  return camp;
}

/** Two rods of each hole: numbered, drilled, logged, each hole a little otherwise. */
async function drill(folder: string, { rig, by, holes }: (typeof RIGS)[number]): Promise<void> {
  for (const [index, hole] of holes.entries()) {
    const first = (rig === 'RC1' ? 1 : 5001) + index * 30;
    const number = (serial: number) => `ZQ${String(serial).padStart(6, '0')}`;
    const log = Array.from({ length: 12 }, (_, metre) =>
      metre === 0 ? `bawx1ox1cl2py${1 + (index % 3)}` : metre === 7 ? 'py2' : '.',
    );
    const typed = [`;numbered ${number(first)} ${number(first + 29)}`, ';rod', ';rod', ...log, ''].join('\n');
    const { code, err } = await run(['enter', hole, '--rig', rig, '--by', by, '--project', folder], typed);
    expect([code, err]).toEqual([0, '']);
  }
}

async function packed(folder: string, by: string): Promise<readonly string[]> {
  rmSync(join(folder, 'outbox'), { recursive: true, force: true });
  expect((await run(['pack', '--by', by, '--project', folder])).err).toBe('');
  return readdirSync(join(folder, 'outbox'))
    .filter((name) => name.endsWith('.eml'))
    .map((name) => join(folder, 'outbox', name));
}

type Row = Readonly<Record<string, string>>;
async function table(folder: string, name: string): Promise<readonly Row[]> {
  const out = await fine(['tables', name, '--csv', '--project', folder]);
  return parse(out, { columns: true }) as Row[];
}
const tablesIn = (folder: string, hole: string): Readonly<Record<string, Readonly<Record<string, object>>>> =>
  JSON.parse(readFileSync(join(folder, 'holes', `${hole}.json`), 'utf8')).tables;
const sum = (rows: readonly Row[], column: string): number =>
  rows.reduce((all, row) => all + Number(row[column] ?? 0), 0);

describe(`two rigs of ${HOLES} holes each, one camp`, () => {
  let home = '';
  let camp = '';
  let rigs: readonly string[] = [];
  let mails: readonly string[] = [];
  let aMail: Uint8Array = new Uint8Array();

  beforeAll(async () => {
    home = mkdtempSync(join(tmpdir(), 'offsider-two-rigs-'));
    camp = await campWith(home);
    const plan = await packed(camp, 'CC');
    rigs = RIGS.map(({ rig }) => join(home, rig));
    for (const [index, each] of RIGS.entries()) {
      await fine(['receive', '--new', rigs[index]!, ...plan, '--by', each.by]);
      await drill(rigs[index]!, each);
    }
    const sent = await Promise.all(RIGS.map(({ by }, index) => packed(rigs[index]!, by)));
    // Shuffled by a fixed order: the last mail first, those of the two rigs between each other.
    mails = sent
      .flat()
      .toReversed()
      .sort((a, b) => a.slice(-12).localeCompare(b.slice(-12)));
    aMail = readFileSync(mails[0]!);
  });

  afterAll(() => rmSync(home, { recursive: true, force: true }));

  it('comes to the same data, whatever the order of the mails, and received twice over', async () => {
    for (const round of [mails, mails.toReversed()])
      for (const mail of round)
        expect((await run(['receive', mail, '--by', 'CC', '--project', camp])).err).toBe('');
    for (const [index, { holes }] of RIGS.entries())
      for (const hole of holes) expect(tablesIn(camp, hole)).toEqual(tablesIn(rigs[index]!, hole));
    expect(await fine(['questions', '--project', camp])).toContain('No question is open');
  });

  it('gives tables whose rows and sums are those of the files', async () => {
    const files = ALL.map((hole) => tablesIn(camp, hole));
    const count = (name: string) =>
      files.reduce((all, each) => all + Object.keys(each[name] ?? {}).length, 0);
    const [geology, samples, rods, collars] = await Promise.all(
      ['geology', 'samples', 'rods', 'collars'].map((name) => table(camp, name)),
    );
    expect(geology).toHaveLength(count('rows'));
    expect(geology).toHaveLength(12 * ALL.length);
    expect(samples).toHaveLength(count('bags'));
    expect(rods).toHaveLength(count('rods'));
    expect(collars).toHaveLength(ALL.length);
    const metres = files.flatMap(
      (each) => Object.values(each.rows ?? {}) as { fromMm: number; toMm: number }[],
    );
    const down = metres.reduce((all, { fromMm, toMm }) => all + (fromMm + toMm) / 1000, 0);
    expect(sum(geology!, 'from_m') + sum(geology!, 'to_m')).toBeCloseTo(down, 6);
  });

  it('sends its answer back, and then only what is new goes along', async () => {
    const answer = await packed(camp, 'CC');
    const [rig = ''] = rigs;
    for (const mail of answer) await run(['receive', mail, '--by', 'AA', '--project', rig]);
    await fine(['enter', ALL[0]!, '--rig', 'RC1', '--by', 'AA', '--project', rig], ';rod\n.\n');
    const [next = ''] = await packed(rig, 'AA');
    const taken = await run(['receive', next, '--by', 'CC', '--project', camp]);
    expect(taken.err).toBe('');
    expect(tablesIn(camp, ALL[0]!)).toEqual(tablesIn(rig, ALL[0]!));
  });

  it('sets aside what does not belong here: a damaged mail, another project, a hole of the same name elsewhere', async () => {
    const before = ALL.map((hole) => tablesIn(camp, hole));
    const torn = join(home, 'torn.eml');
    writeFileSync(torn, aMail.subarray(0, 9000));
    expect((await run(['receive', torn, '--by', 'CC', '--project', camp])).code).not.toBe(0);
    const other = join(home, 'other');
    mkdirSync(other);
    const elsewhere = await campWith(other, 500_000);
    const [twin = ''] = await packed(elsewhere, 'CC');
    const twins = await run(['receive', twin, '--by', 'CC', '--project', camp]);
    expect([twins.code, twins.err]).toEqual([
      1,
      expect.stringContaining('it is another hole that goes by the name ZQRC001'),
    ]);
    expect(ALL.map((hole) => tablesIn(camp, hole))).toEqual(before);
    const settings = join(elsewhere, 'project.json');
    writeFileSync(settings, readFileSync(settings, 'utf8').replace('"name":"camp"', '"name":"Another"'));
    const [foreign = ''] = await packed(elsewhere, 'CC');
    const refused = await run(['receive', foreign, '--by', 'CC', '--project', camp]);
    expect([refused.code, refused.err]).toEqual([1, expect.stringContaining('it is of the project Another')]);
    expect(ALL.map((hole) => tablesIn(camp, hole))).toEqual(before);
  });
});
