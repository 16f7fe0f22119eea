import { describe, expect, it, vi } from 'vitest';
import { checkHole } from '../../src/check/check-hole.ts';
import { rowsDown } from '../../src/hole/hole.ts';
import { formatInterval } from '../../src/quantity/interval.ts';
import type { Change, Document, DocumentName } from '../../src/record/document.ts';
import { openQuestions } from '../../src/standing/questions.ts';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const HOLE = { kind: 'hole', id: 'MBRC003' } as const;
const ASKED = 'waits to be settled: ;questions.';

async function edit({ desk }: Sitting, document: DocumentName, changes: readonly Change[]): Promise<void> {
  const done = desk.submit({ what: 'edited', parts: [{ document, changes }] });
  if (!done.ok) throw new Error(done.problem);
  await done.durable;
}

function rowId(sitting: Sitting): string {
  const found = Object.entries(sitting.hole(HOLE.id).tables.rows ?? {}).find(
    ([, row]) => row.fromMm === 45_000,
  );
  if (found === undefined) throw new Error('no such row');
  return found[0];
}

/** The rig's console, opened on a project into which a copy of camp's was taken that had changed the same cells. */
async function afterReceiving(
  changes: (which: string, row: string) => readonly Change[],
  document: DocumentName = HOLE,
) {
  const rig = await sitDown(sampleFiles());
  const camp = await (await sitDown(sampleFiles())).reopen('IFA');
  const row = rowId(rig);
  await edit(rig, document, changes('fresh', row));
  await edit(camp, document, changes('oxidised', row));
  const received = rig.desk.receive(camp.desk.get(document) as Document);
  if (!received.ok) throw new Error(received.problem);
  await received.durable;
  return { sitting: await rig.reopen(), camp, row };
}

const remarks = (which: string, row: string): readonly Change[] => [
  { patch: ['rows', row], set: { remark: which } },
];

describe('questions of two copies', () => {
  it('are said on opening, and listed at 80 by 24 with both values and both keys', async () => {
    const { sitting } = await afterReceiving(remarks);
    expect(sitting.state().message?.text).toContain(`1 place where two copies differ ${ASKED}`);
    sitting.press('escape');
    sitting.enter(';questions');
    const screen = sitting.screen(80, 24).join('\n');
    for (const part of [
      'MBRC003',
      '45–46, remark',
      '← ours    fresh',
      '→ theirs  oxidised',
      'ours',
      'theirs',
    ])
      expect(screen).toContain(part);
  });

  it('are settled with one key, and Ctrl-U takes that back', async () => {
    const { sitting, row } = await afterReceiving(remarks);
    const remark = () => sitting.hole(HOLE.id).tables.rows?.[row]?.remark;
    sitting.press('escape');
    sitting.enter(';questions');
    sitting.press('right');
    expect(sitting.state().message?.text).toBe(
      'settled 45–46, remark: theirs taken, fresh → oxidised. Ctrl-U takes it back.',
    );
    await vi.waitFor(() => expect(remark()).toBe('oxidised'));
    expect(sitting.screen(80, 24).join('\n')).toContain('Nothing is open');
    sitting.press('right');
    expect(sitting.state().message?.text).toBe('take theirs: no question is open.');
    sitting.press('ctrl-u');
    expect(remark()).toBe('fresh');
    expect(openQuestions(sitting.hole(HOLE.id))).toHaveLength(1);
    sitting.press('left');
    expect(remark()).toBe('fresh');
    expect(openQuestions(sitting.hole(HOLE.id))).toEqual([]);
  });

  it('are picked by the arrows, and of what is searched for', async () => {
    const { sitting, row } = await afterReceiving((which, id) => [
      ...remarks(which, id),
      { patch: ['plan', 'plan'], set: { target: which } },
    ]);
    sitting.press('escape');
    sitting.enter(';questions');
    sitting.press('down');
    sitting.press('right');
    sitting.press('left');
    const { rows, plan } = sitting.hole(HOLE.id).tables;
    expect([rows?.[row]?.remark, plan?.plan?.target].sort()).toEqual(['fresh', 'oxidised']);
    expect(openQuestions(sitting.hole(HOLE.id))).toEqual([]);
  });

  it('of a shift are settled and taken back there, whatever hole is in hand', async () => {
    const first = (await sitDown(sampleFiles())).desk.documents().values();
    const shift = [...first].find((document) => document.kind === 'shift');
    if (shift === undefined) throw new Error('no shift');
    const [activity] = Object.keys(shift.tables.activities ?? {});
    const name = { kind: shift.kind, id: shift.id };
    const { sitting } = await afterReceiving(
      (which) => [{ patch: ['activities', String(activity)], set: { remark: which } }],
      name,
    );
    const remark = () => sitting.desk.get(name)?.tables.activities?.[String(activity)]?.remark;
    sitting.press('escape');
    sitting.enter(';questions');
    expect(sitting.screen(80, 24).join('\n')).toContain(`shift ${shift.id}`);
    sitting.press('right');
    expect(remark()).toBe('oxidised');
    sitting.press('ctrl-u');
    expect(remark()).toBe('fresh');
  });

  it('settled at the rig are not asked again by the next copy, at either side', async () => {
    const { sitting, camp, row } = await afterReceiving(remarks);
    sitting.press('escape');
    sitting.enter(';questions');
    sitting.press('left');
    await edit(camp, HOLE, [{ patch: ['plan', 'plan'], set: { target: 'looked at in camp' } }]);
    const [ours, theirs] = [sitting, camp].map(({ desk }) => desk.get(HOLE) as Document) as [
      Document,
      Document,
    ];
    for (const received of [sitting.desk.receive(theirs), camp.desk.receive(ours)]) {
      if (!received.ok) throw new Error(received.problem);
      expect(received).toMatchObject({ outcome: 'merged', questions: 0 });
      expect(openQuestions(received.document)).toEqual([]);
      expect(received.document.tables.rows?.[row]?.remark).toBe('fresh');
    }
  });

  it('of a metre that both logged are shown until one key settles them: the first, the second, or both by splitting', async () => {
    for (const [key, rows] of [
      ['left', ['90–91 camp']],
      ['right', ['90–91 rig']],
      ['ctrl-b', ['90–90.5 camp', '90.5–91 rig']],
    ] as const) {
      const { sitting } = await afterReceiving((which) => [
        {
          put: ['rows', which === 'fresh' ? 'rig-9001' : 'camp-9001'],
          thing: { fromMm: 90_000, toMm: 91_000, cells: {}, remark: which === 'fresh' ? 'rig' : 'camp' },
        },
      ]);
      const there = () =>
        rowsDown(sitting.hole(HOLE.id))
          .filter(([, row]) => row.fromMm >= 90_000)
          .map(([, row]) => `${formatInterval(row).replace(' m', '')} ${row.remark}`);
      expect(sitting.state().message?.text).toContain(`1 place where two copies differ ${ASKED}`);
      expect(checkHole(sitting.state().project, sitting.hole(HOLE.id), [])).toContainEqual(
        expect.objectContaining({ code: 'rows-logged-twice' }),
      );
      sitting.press('escape');
      sitting.enter(';questions');
      const screen = sitting.screen(80, 24).join('\n');
      for (const part of ['90–91, logged twice', '← first', '→ second', 'Ctrl-B both'])
        expect(screen).toContain(part);
      sitting.press(key);
      expect(there()).toEqual(rows);
      expect(sitting.screen(80, 24).join('\n')).toContain('Nothing is open');
      sitting.press('ctrl-u');
      expect(there()).toHaveLength(2);
    }
  });

  it('of a rod that both recorded are settled by one key, in check and with Ctrl-U', async () => {
    const bags = (which: string) => `${which}-9002`;
    const { sitting } = await afterReceiving((which) => [
      {
        put: ['rods', `${which}-9001`],
        thing: { at: `2026-03-16T09:0${which === 'fresh' ? 1 : 3}:00+08:00`, rod: 40, depthMm: 240_000 },
      },
      {
        put: ['bags', bags(which)],
        thing: { number: 'ZQ009001', kind: 'primary', fromMm: 239_000, toMm: 240_000, rod: `${which}-9001` },
      },
    ]);
    const found = () =>
      checkHole(sitting.state().project, sitting.hole(HOLE.id), []).filter(
        ({ code }) => code === 'rod-recorded-twice',
      );
    expect(sitting.state().message?.text).toContain(`1 place where two copies differ ${ASKED}`);
    expect(found()[0]).toMatchObject({ severity: 'fault', remedy: expect.stringContaining(';questions') });
    const ofBags = checkHole(sitting.state().project, sitting.hole(HOLE.id), []).filter(
      ({ problem, remedy }) => `${problem} ${remedy}`.includes('ZQ009001'),
    );
    expect(ofBags.map(({ problem }) => problem).filter((problem) => problem.includes('both'))).toEqual([]);
    sitting.press('escape');
    sitting.enter(';questions');
    const screen = sitting.screen(80, 24).join('\n');
    for (const part of [
      'rod 40, recorded twice',
      '← first   rod 40 to 240 m at 2026-03-16 09:01',
      'bag ZQ009001',
    ])
      expect(screen).toContain(part);
    expect(screen).not.toContain('Ctrl-B both');
    sitting.press('right');
    const { rods, bags: left } = sitting.hole(HOLE.id).tables;
    expect(Object.keys(rods ?? {})).not.toContain('fresh-9001');
    expect(Object.keys(rods ?? {})).toContain('oxidised-9001');
    expect(left?.[bags('fresh')]).toBeUndefined();
    expect(left?.[bags('oxidised')]).toBeDefined();
    expect(found()).toEqual([]);
    sitting.press('ctrl-u');
    expect(found()).toHaveLength(1);
  });
});
