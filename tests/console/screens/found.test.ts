import { describe, expect, it } from 'vitest';
import { listOf } from '../../../src/console/lists/list-of.ts';
import { allLines } from '../../../src/console/lists/listed.ts';
import { themeFor } from '../../../src/console/theme.ts';
import { copiesMerged } from '../../../src/files/findings.ts';
import { apply } from '../../../src/record/apply.ts';
import type { Thing } from '../../../src/record/document.ts';
import { merge } from '../../../src/record/merge.ts';
import { type Files, type Sitting, sampleFiles, sitDown } from '../support/sitting.ts';

const HOLE = 'holes/MBRC003.json';
const text = (sitting: Sitting): string => sitting.screen(100, 40).join('\n');

/** The sample with its files changed. */
function changed(change: (files: Files) => Record<string, string>): Promise<Sitting> {
  const files = sampleFiles();
  return sitDown({ ...files, ...change(files) });
}

interface HoleFile {
  readonly tables: {
    readonly rows: Record<string, { fromMm: number; remark?: string }>;
    readonly plan: { plan: { depthMm: number } };
  };
}

/** The hole with one row taken out, one remark changed, and another depth planned, as an editor might leave it. */
function edited(files: Files): Record<string, string> {
  const hole = JSON.parse(files[HOLE] ?? '') as HoleFile;
  const rows = Object.entries(hole.tables.rows);
  const [last = ''] = rows.find(([, row]) => row.fromMm === 45_000) ?? [];
  const [first = ''] = rows.find(([, row]) => row.fromMm === 0) ?? [];
  delete hole.tables.rows[last];
  const row = hole.tables.rows[first];
  if (row !== undefined) row.remark = 'changed at camp';
  hole.tables.plan.plan.depthMm = 132_000;
  return { [HOLE]: JSON.stringify(hole) };
}

describe('what was found on opening', () => {
  it('comes first where it is more than a note: place, problem, remedy, what was kept', async () => {
    const sitting = await changed(() => ({ [HOLE]: '{ "format": 1, ', 'holes/notes.txt': '' }));
    expect(sitting.state().screen.name).toBe('found');
    const screen = text(sitting);
    expect(screen).toContain('found on opening, worst first · 2');
    expect(screen).toMatch(/FAULT {2}holes\/MBRC003\.json:1:\d+/);
    expect(screen).toContain('or restore a good copy.');
    expect(screen).toContain('WARNING  holes/notes.txt');
    expect(screen.indexOf('FAULT')).toBeLessThan(screen.indexOf('WARNING'));
    sitting.press('escape');
    expect(sitting.state().screen.name).toBe('holes');
  });

  it('shows of a hole that was edited outside what was changed, row by row', async () => {
    const sitting = await changed(edited);
    const screen = text(sitting);
    expect(screen).toContain('its tables are not what its history makes: it was edited outside offsider');
    expect(screen).toMatch(/taken out 45–46: .*basalt/);
    expect(screen).toContain('0–1 remark: ');
    expect(screen).toContain('→ changed at camp');
    expect(screen).toContain('depth: 120 m → 132 m');
    sitting.press('escape');
    expect(sitting.state().screen).toMatchObject({ name: 'log', hole: 'MBRC003' });
  });

  it('is a line only where it is a note, and ;found shows it whole', async () => {
    const sitting = await changed((files) => ({ ...files, 'journal/lock.json': '{ "half' }));
    expect(sitting.state().screen.name).toBe('log');
    expect(text(sitting)).toContain('Found on opening: A console ended without closing the project.');
    sitting.enter(';found');
    expect(text(sitting)).toContain('NOTE  journal/lock.json');
    expect(text(sitting)).toContain('Every row that it showed as saved is here.');
  });

  it('is nothing where every file is as it was left, and says so', async () => {
    const sitting = await changed(() => ({}));
    expect(sitting.state().screen.name).toBe('log');
    expect(sitting.state().message).toBeUndefined();
    sitting.press('ctrl-f');
    expect(text(sitting)).toContain('Nothing: every file is as it was left.');
  });

  it('shows of a hole that another copy lay over who did what there, and what it changed', async () => {
    const sitting = await changed(() => ({}));
    const hole = sitting.hole('MBRC003');
    const [row = ''] = Object.entries(hole.tables.rows ?? {}).at(-1) ?? [];
    const edit = (at: string, set: Thing) => {
      const deed = { edit: `camp-${at}`, at: `2026-03-14T1${at}:00:00+08:00`, by: 'KL', what: `row ${at}` };
      const made = apply(hole, deed, [{ patch: ['rows', row], set }]);
      if (!made.ok) throw new Error(made.problem);
      return made.document;
    };
    const deed = {
      edit: 'here-9',
      at: '2026-03-14T12:00:00+08:00',
      by: 'NOK',
      what: 'merged with another copy',
    };
    const merged = merge(edit('0', { mark: 'look' }), edit('1', { remark: 'wet' }), deed);
    const finding = copiesMerged.at(
      { file: HOLE },
      { problem: 'another copy lay over it', remedy: 'Both are merged.' },
    );
    const state = {
      ...sitting.state(),
      found: [finding],
      documents: new Map([[`hole/${hole.id}`, merged.document]]),
    };
    const lines = listOf(
      state,
      { name: 'found', cursor: 0, find: '', from: 'head' },
      90,
      themeFor({ colour: false, ascii: false }),
    );
    const shown = allLines(lines).map((each) => each.map((span) => span.text).join(''));
    expect(shown.join('\n')).toMatch(
      /theirs: 2026-03-14 11:00:00 KL: row 1[\s\S]*45–46 remark: nothing → wet/,
    );
  });
});
