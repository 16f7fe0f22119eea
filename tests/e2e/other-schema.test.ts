import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { OTHER_SCHEMA_TEXT } from '../support/other-schema.ts';
import { tellOneStory } from '../support/story.ts';
import { WHOLE_HOLE_PROJECT } from '../support/whole-hole/files.ts';
import type { Act } from '../support/whole-hole/script.ts';
import { play } from './support/play.ts';
import { offsiderBundle } from './support/program.ts';
import type { Pty } from './support/pty.ts';
import { newRig, type Rig } from './support/rig.ts';

/** Settings of another kind of project: rods of 3 m, rows and samples of 2 m, a rule on a field of its own schema. */
function otherSettings(): string {
  const settings = JSON.parse(WHOLE_HOLE_PROJECT['project.json']);
  settings.name = 'Coolibah Tank';
  settings.log.intervalM = 2;
  settings.rigs = [{ name: 'RC3', rodM: 3, firstRodOffsetM: 0, bitMm: 139.7 }];
  settings.sampling.numbers.blocks = [{ rig: 'RC3', first: 'MB000001', last: 'MB002000' }];
  settings.sampling.sampled.lengthM = 2;
  settings.sampling.controls.onDemand = [];
  settings.termination.rules = [
    {
      name: 'into shale',
      words: 'Footwall shale, four metres of it: the ore is above.',
      verdict: 'end',
      when: { inARow: { where: { field: 'horizon', is: 'SH 5' }, forM: 4 } },
    },
  ];
  return JSON.stringify(settings);
}

let program: string;
let rig: Rig;
let pty: Pty;
beforeAll(async () => {
  program = await offsiderBundle();
  rig = newRig(program, { 'project.json': otherSettings(), 'logging.json': OTHER_SCHEMA_TEXT });
  pty = rig.open();
});
afterAll(() => rig.remove());

/** Rows of two metres said on the line, from a depth down. */
const lines = (fromM: number, ...said: readonly string[]): readonly Act[] =>
  said.map((line, index) => {
    const next = fromM + 2 * (index + 1);
    return { keys: `${line}<enter>`, see: [` ${next}–${next + 2} ▸`] };
  });

/** The same by fields: the keys in the form, without the F4 that opens it and the F4 that logs the row. */
const fields = (fromM: number, ...said: readonly string[]): readonly Act[] =>
  said.flatMap((keys, index) => {
    const next = fromM + 2 * (index + 1);
    return [
      { keys: '<f4>', see: [`by fields ${next - 2}–${next}`] },
      { keys: `${keys}<f4>`, see: [` ${next}–${next + 2} ▸`] },
    ];
  });

/** Rods of three metres done, one after the other: every sample of two metres that a rod completes has its bag. */
const rods = (first: number, last: number): readonly Act[] =>
  Array.from({ length: last - first + 1 }, (_, index) => first + index).flatMap((count): readonly Act[] => [
    { keys: '<f2>', after: 6, see: [`rod ${count} done at ${count * 3} m`] },
    { keys: '<enter>', see: [`Rod ${count} done at ${count * 3} m`] },
  ]);

const tell = (...acts: readonly Act[]) => play(rig, pty, { title: '', acts });

tellOneStory();

describe('a schema with nothing of the sample’s, rows of 2 m and rods of 3 m', () => {
  it('begins a hole whose rods are of 3 m and whose first row is of 2 m', async () => {
    await tell(
      { keys: 'n', see: ['a hole that is not in the program'] },
      { keys: 'CT001 90t -75 42<enter>', see: ['CT001 made.'] },
      { keys: '<enter>', see: ['drilling with RC3', ' 0–2 ▸', 'horizon'] },
      { keys: ';numbered MB000001 MB000030<enter>', see: ['30 numbered bags left', 'MB000001  0–2'] },
      ...rods(1, 4),
    );
  });

  it('logs ten rows by the line, in the strokes of this schema', async () => {
    await tell(
      ...lines(0, 'dthd2mt60ky40', '.', 'hchd3gk40ky0oc2 =', 't30k70 =', 'k80t20 ='),
      ...rods(5, 8),
      ...lines(10, 'oyhd2edup30', 't40k60 =', 'zb1/thin band', 'blhd3t80k20 =', 't90k10'),
    );
  });

  it('shows a second hue, an amount and a code with a space in it as this schema has them', async () => {
    await pty.waitForText('drilled 24 of 42 m');
    const row = (from: number) =>
      pty.screen().find((line) => new RegExp(`^│ *${from} +${from + 2} `).test(line)) ?? '';
    expect(row(0)).toContain('dt 1');
    expect(row(14)).toContain('1%');
    expect(row(18)).toContain('op 3');
  });

  it('logs ten rows by its fields, with pick lists, and warns where a code has a caution', async () => {
    await tell(
      ...rods(9, 14),
      { keys: '<f4>', see: ['by fields 20–22', 'horizon', 'hardcap', 'Vuggy goethite, hard'] },
      { keys: 'formation<enter>', see: ['friable', 'firm', 'Rings on steel'] },
      { keys: '2<enter>', see: ['hematite', 'Red streak'] },
      { keys: 'mt0<enter>', see: ['line: if hd2 mt0'] },
      { keys: 'gk0<enter>magn<enter>', see: ['magnetite: now its amount.'] },
      { keys: '60<enter>qc40<enter>', see: ['line: if hd2 mt0 gk0 ax60 qc40'] },
      { keys: '<f4>', see: ['magnetite goes from 0 % to 60 % in one row', 'Add = to accept it'] },
      { keys: '=<enter>', see: [' 22–24 ▸', 'CAUTION iron formation: May hold fibrous amphibole.'] },
      ...fields(22, '<tab>3<enter>', '<tab><tab>ax50<enter>qc50<enter>', '<tab>2<enter>', 'shale<enter>'),
      {
        keys: '<f4><tab><tab>ax40<enter>sl10<enter><f4>',
        see: [' 32–34 ▸', /logged 30–32\. The line \S+ would have done the same/],
      },
      ...fields(32, '<tab>1<enter>', '<tab><tab>ax30<enter>sl20<enter>', '<tab>2<enter>', '<tab>1<enter>'),
    );
  });

  it('advises by its own rule, and leaves a file that holds rows of 2 m, rods of 3 m and these codes', async () => {
    await tell(
      { keys: '<f5>', see: ['Esc back', 'Footwall shale, four metres of it'] },
      { keys: '<escape>', see: [' 40–42 ▸'], gone: ['Esc back'] },
    );
    // Drilled to 42 m and logged to 40: the last two metres could be anything.
    await pty.waitForText('log 2 m');
    await tell({ keys: '.<enter>', see: [' 42–44 ▸'] });
    await pty.waitForText('END: into shale');
    pty.type(';q\r');
    expect(await pty.exited).toEqual({ exitCode: 0, signal: 0 });
    const { tables } = JSON.parse(rig.read('holes/CT001.json'));
    const rows = Object.values<{ fromMm: number; toMm: number; cells: Record<string, unknown> }>(tables.rows);
    expect(rows.map(({ fromMm, toMm }) => [fromMm, toMm])).toEqual(
      Array.from({ length: 21 }, (_, index) => [index * 2000, (index + 1) * 2000]),
    );
    expect(Object.values<{ depthMm: number }>(tables.rods).map(({ depthMm }) => depthMm)).toEqual(
      Array.from({ length: 14 }, (_, index) => (index + 1) * 3000),
    );
    expect(rows[10]?.cells).toMatchObject({
      horizon: { code: 'IF 4' },
      hard: { level: 2 },
      make: { percents: { m: 60, c: 40 } },
    });
    expect(rows[19]?.cells).toMatchObject({
      horizon: { code: 'SH 5' },
      make: { percents: { m: 30, c: 50, s: 20 } },
    });
    expect(tables.legendCodes).toBeDefined();
  });
});
