import { describe, expect, it } from 'vitest';
import { formatNeeded } from '../../../src/files/document-file.ts';
import { EVENTS } from '../../../src/handover/tables/events.ts';
import { rowsDown } from '../../../src/hole/hole.ts';
import type { Stamp } from '../../../src/quantity/stamp.ts';
import { adviceFor } from '../../../src/standing/advice.ts';
import { crewNote } from '../../../src/standing/crew-note.ts';
import { headsOf } from '../../../src/standing/heads.ts';
import { type Files, type Sitting, sampleFiles, sitDown } from '../support/sitting.ts';

const HOLE = 'MBRC003';
const NOW = '2026-03-14T17:00:00+08:00' as Stamp;
const code = (name: string, label: string, pair: string, more: object = {}) => ({
  code: name,
  label,
  look: '',
  pair,
  ...more,
});

/** The sample project with events at a point and a rule that reads them. The rig is ahead of the log. */
function files(): Files {
  const all = sampleFiles();
  const logging = JSON.parse(all['logging.json'] ?? '');
  logging.fields = [
    {
      name: 'events',
      label: 'events',
      kind: 'events',
      list: 'events',
      carry: false,
      required: false,
      unsaid: 'none',
      canBeNone: true,
    },
  ];
  logging.lists.events = {
    label: 'events',
    codes: [
      code('WST', 'water strike', 'jw', { measure: { unit: 'L/s', min: 0, max: 60, decimals: 1 } }),
      code('FLT', 'fault', 'jf', {
        caution: { kind: 'other', words: 'Ground may be broken: go by site procedures.' },
      }),
      code('LCI', 'lost circulation', 'jl', { noChips: true }),
    ],
  };
  return { ...all, 'logging.json': JSON.stringify(logging) };
}

const sit = (): Promise<Sitting> => sitDown(files(), '2026-03-14T09:08:00+08:00');
const waiting = (sitting: Sitting) => Object.values(sitting.hole(HOLE).tables.waitingEvents ?? {});
const lastRow = (sitting: Sitting) => rowsDown(sitting.hole(HOLE)).at(-1)?.[1];
const shown = (sitting: Sitting, columns = 100, lines = 30) => sitting.screen(columns, lines).join('\n');
/** Logs rows until the log reaches a depth. */
function logTo(sitting: Sitting, toMm: number): void {
  for (let tries = 0; tries < 30 && headsOf(sitting.hole(HOLE)).loggedMm < toMm; tries += 1)
    sitting.enter('p3 =');
  expect(headsOf(sitting.hole(HOLE)).loggedMm).toBe(toMm);
}
/** A sitting where water was heard 0.2 m below the last rod. */
async function struck() {
  const sitting = await sit();
  const { drilledMm } = headsOf(sitting.hole(HOLE));
  const atMm = drilledMm + 200;
  sitting.enter(`;at ${atMm / 1000} jw2`);
  expect(shown(sitting, 80, 24)).toContain('waits for its row');
  sitting.press('enter');
  return { sitting, atMm, drilledMm };
}

describe('an event that the log has not come to', () => {
  it('waits for its row, is shown at both sizes, and goes into the row when that is logged, in one edit', async () => {
    const { sitting, atMm, drilledMm } = await struck();
    expect(waiting(sitting)).toMatchObject([{ field: 'events', code: 'WST', atMm, number: 2 }]);
    expect(formatNeeded(sitting.hole(HOLE))).toBe(4);
    for (const [columns, lines] of [
      [80, 24],
      [100, 30],
    ] as const)
      expect(shown(sitting, columns, lines)).toContain(`@${atMm / 1000} water strike 2 L/s`);
    logTo(sitting, drilledMm);
    expect(waiting(sitting)).toHaveLength(1);
    expect(shown(sitting)).toContain(`@ water strike 2 L/s at ${atMm / 1000} m`);
    sitting.enter('p3 =');
    expect(sitting.state().message?.text).toContain(`water strike at ${atMm / 1000} m`);
    expect(lastRow(sitting)?.cells.events).toEqual({ events: { WST: { atMm, number: 2 } } });
    expect(waiting(sitting)).toEqual([]);
    sitting.enter(';u');
    expect(waiting(sitting)).toHaveLength(1);
    expect(headsOf(sitting.hole(HOLE)).loggedMm).toBe(drilledMm);
    sitting.enter(';r');
    expect(waiting(sitting)).toEqual([]);
    expect(lastRow(sitting)?.cells.events).toEqual({ events: { WST: { atMm, number: 2 } } });
  });

  it('is undone, is taken off with 0, and takes the place of the same one at the same depth', async () => {
    const { sitting, atMm } = await struck();
    sitting.enter(';u');
    expect(waiting(sitting)).toEqual([]);
    sitting.enter(';r');
    sitting.enter(`;at ${atMm / 1000} jw5`);
    sitting.press('enter');
    expect(waiting(sitting)).toMatchObject([{ number: 5 }]);
    sitting.enter(`;at ${atMm / 1000} jw0`);
    sitting.press('enter');
    expect(waiting(sitting)).toEqual([]);
    sitting.enter(`;at ${atMm / 1000} jw0`);
    expect(sitting.state().message?.text).toContain('No water strike');
    expect(sitting.state().message?.text).toContain('waits for a row');
  });

  it('shows its caution before it is made, and is refused more than a rod below the bit', async () => {
    const { sitting, drilledMm } = await struck();
    sitting.enter(`;at ${drilledMm / 1000 + 1} jf`);
    expect(shown(sitting)).toContain('CAUTION');
    sitting.press('enter');
    expect(waiting(sitting)).toHaveLength(2);
    sitting.enter(`;at ${drilledMm / 1000 + 60} jw2`);
    expect(sitting.state().message?.text).toContain('more than a rod below the bit');
    expect(waiting(sitting)).toHaveLength(2);
  });

  it('stays where its row says the same at another depth, has no chips, or says that none came up', async () => {
    const { sitting, atMm, drilledMm } = await struck();
    sitting.enter(`;at ${atMm / 1000} jl`);
    sitting.press('enter');
    logTo(sitting, drilledMm);
    sitting.enter(`p3jw4@${(atMm + 300) / 1000} =`);
    expect(lastRow(sitting)?.cells.events).toEqual({ events: { WST: { atMm: atMm + 300, number: 4 } } });
    expect(waiting(sitting)).toHaveLength(2);
    expect(shown(sitting)).toContain(`@${atMm / 1000} `);
    sitting.enter(`;at ${atMm / 1000} jw0`);
    sitting.press('enter');
    expect(waiting(sitting)).toMatchObject([{ code: 'LCI' }]);
    expect(lastRow(sitting)?.cells.events).toEqual({ events: { WST: { atMm: atMm + 300, number: 4 } } });
    sitting.enter(`;at ${(atMm + 800) / 1000 + 1} jw2`);
    sitting.press('enter');
    sitting.enter('nr');
    expect(lastRow(sitting)?.noReturn).toBe(true);
    expect(waiting(sitting)).toHaveLength(2);
  });

  it('is read by a rule at once, and never makes one hold that asks for what is not there', async () => {
    const { sitting } = await struck();
    const rules = (where: object) => {
      const { project } = sitting.state();
      const rule = {
        name: 'event',
        words: 'event met',
        priority: 1,
        effect: 'end',
        when: { seen: { where, forM: 0.1 } },
      };
      const settings = {
        ...project.settings,
        termination: { ...project.settings.termination, rules: [rule] },
      } as never;
      return adviceFor({ ...project, settings }, sitting.hole(HOLE), []).outcomes[0]?.state;
    };
    expect(rules({ field: 'events', of: 'WST', atLeast: 2 })).toBe('met');
    expect(rules({ field: 'events', of: 'WST', atLeast: 3 })).toBe('cannot tell');
    expect(rules({ field: 'events', of: 'FLT', seen: false })).not.toBe('met');
  });

  it('stands in the tables for camp and in the note for the next crew', async () => {
    const { sitting, atMm } = await struck();
    const { project, documents } = sitting.state();
    const all = [...documents.values()];
    const events = EVENTS.rows({ project, documents: all, of: all, now: NOW });
    expect(events).toContainEqual(
      expect.objectContaining({
        kind: 'event ahead of the log',
        depth_m: atMm / 1000,
        words: `water strike 2 L/s at ${atMm / 1000} m`,
      }),
    );
    const note = crewNote(project, all, 'RC7', NOW);
    expect(JSON.stringify(note)).toContain(`water strike 2 L/s at ${atMm / 1000} m: waits for its row`);
  });
});
