import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { copyOfSample, runAt } from './support/outside.ts';

const run = (folder: string, ...args: readonly string[]) => runAt(folder, '', ...args);

/** The sample's own program with some of its lines put otherwise; false takes a line out. */
function programWith(
  folder: string,
  change: (hole: string, cells: readonly string[]) => readonly string[] | false,
  more: readonly string[] = [],
): string {
  const [head = '', ...lines] = readFileSync(join(folder, 'program.csv'), 'utf8').trim().split(/\r?\n/);
  const changed = lines.flatMap((each) => {
    const cells = change(each.split(',')[0] ?? '', each.split(','));
    return cells === false ? [] : [cells.join(',')];
  });
  const file = join(folder, 'later.csv');
  writeFileSync(file, [head, ...changed, ...more, ''].join('\n'));
  return file;
}

const holeFile = (folder: string, hole: string) =>
  JSON.parse(readFileSync(join(folder, `holes/${hole}.json`), 'utf8'));
const column = (folder: string, name: string) =>
  (readFileSync(join(folder, 'program.csv'), 'utf8').split(/\r?\n/)[0] ?? '').split(',').indexOf(name);

describe('a later program', () => {
  it('that says what the project has changes nothing', async () => {
    const folder = copyOfSample();
    const before = holeFile(folder, 'MBRC004');
    const { code, out } = await run(folder, 'program', join(folder, 'program.csv'));
    expect(code).toBe(0);
    expect(out).toMatch(/^0 new, 0 revised, \d+ as they are; not named, and left as they are: MBRC002A\.\n$/);
    expect(holeFile(folder, 'MBRC004').tables).toEqual(before.tables);
  });

  it('adds holes and revises those that are only planned, after a preview that records nothing', async () => {
    const folder = copyOfSample();
    const depth = column(folder, 'depth');
    const easting = column(folder, 'easting');
    const file = programWith(
      folder,
      (hole, cells) => {
        if (hole === 'MBRC004') return cells.with(depth, '150');
        if (hole === 'MBRC005') return cells.with(easting, String(Number(cells[easting]) + 10));
        return cells;
      },
      [],
    );
    const text = readFileSync(file, 'utf8').trim().split('\n');
    const last = (text.at(-1) ?? '').split(',');
    writeFileSync(file, [...text, last.with(0, 'MBRC008').join(','), ''].join('\n'));

    const preview = await run(folder, 'program', file, '--preview');
    expect(preview.code).toBe(0);
    expect(preview.out).toContain('MBRC004: depth 130 m → 150 m\n');
    expect(preview.out).toMatch(/MBRC005: position \S+ \S+ \S+ → \S+ \S+ \S+\n/);
    expect(preview.out).toContain('MBRC008: new\n');
    expect(preview.out).toContain('1 new, 2 revised,');
    expect(preview.out).toContain('Nothing is recorded: this is the preview.');
    expect(holeFile(folder, 'MBRC004').tables.plan.plan.depthMm).toBe(130_000);

    expect((await run(folder, 'program', file, '--by', 'IFA')).code).toBe(0);
    expect(holeFile(folder, 'MBRC004').tables.plan.plan.depthMm).toBe(150_000);
    // Both planned positions stand: the later one counts.
    expect(Object.keys(holeFile(folder, 'MBRC005').tables.collars)).toHaveLength(2);
    const made = holeFile(folder, 'MBRC008');
    expect(made.tables.hole.hole.state).toBe('planned');
    const edits = ['MBRC004', 'MBRC005', 'MBRC008'].map((hole) => holeFile(folder, hole).history.at(-1));
    expect(new Set(edits.map(({ edit }) => edit)).size).toBe(1);
    expect(edits[0]).toMatchObject({ by: 'IFA', what: 'program later.csv: one hole planned, 2 revised' });
    expect((await run(folder, 'program', file)).out).toContain('0 new, 0 revised,');
  });

  it('may deepen a hole that is drilled, and never turns or moves one; one that is over it leaves alone', async () => {
    const folder = copyOfSample();
    const [depth, dip] = [column(folder, 'depth'), column(folder, 'dip')];
    const deeper = programWith(folder, (hole, cells) =>
      hole === 'MBRC003' ? cells.with(depth, '140') : cells,
    );
    expect((await run(folder, 'program', deeper, '--preview')).out).toContain('MBRC003: depth 120 m → 140 m');

    const turned = programWith(folder, (hole, cells) =>
      hole === 'MBRC003' ? cells.with(dip, '-70') : cells,
    );
    const refused = await run(folder, 'program', turned);
    expect(refused.code).toBe(2);
    expect(refused.err).toContain('MBRC003: the hole is drilling: its direction and position are drilled');
    expect(refused.err).toContain('Nothing is recorded.');

    const over = programWith(folder, (hole, cells) =>
      hole === 'MBRC001' ? cells.with(depth, '200') : cells,
    );
    expect((await run(folder, 'program', over)).err).toContain(
      'MBRC001: the hole is complete, and the program says',
    );
  });

  it('with a bad line records nothing, or with --keep-going the others', async () => {
    const folder = copyOfSample();
    const depth = column(folder, 'depth');
    const file = programWith(folder, (hole, cells) => {
      if (hole === 'MBRC004') return cells.with(depth, 'deep');
      return hole === 'MBRC005' ? cells.with(depth, '170') : cells;
    });
    const refused = await run(folder, 'program', file);
    expect(refused.code).toBe(2);
    expect(refused.err).toContain('this is not a planned depth in metres');
    expect(holeFile(folder, 'MBRC005').tables.plan.plan.depthMm).toBe(160_000);
    expect((await run(folder, 'program', file, '--keep-going')).code).toBe(1);
    expect(holeFile(folder, 'MBRC005').tables.plan.plan.depthMm).toBe(170_000);
  });
});
