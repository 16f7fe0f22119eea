import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { formatCents, percentOf } from '../../src/quantity/cents.ts';
import { sitAt } from '../console/support/sitting.ts';
import { INVOICES, PLANTED, WEEK_TOTAL } from '../support/week/invoices.ts';
import { PEOPLE, programOf, SHIFT_PART } from '../support/week/project.ts';
import { RIG_7 } from '../support/week/rig-7.ts';
import { RIG_8 } from '../support/week/rig-8.ts';
import { command, nextAt, offsetAt, sitThrough, stampAt, tellThrough } from '../support/week/rigs.ts';

const root = mkdtempSync(join(tmpdir(), 'offsider-week-'));
const start = nextAt(Date.parse('2026-03-29T00:00:00Z'), '18:00');
const after = nextAt(Date.parse('2026-04-06T00:00:00Z'), '12:00');
const SPAN = ['plod', '--reconcile', '2026-03-30..2026-04-05'];

/** A new project for a rig's laptop: its holes from a CSV; rigs, people and the contract written into project.json. */
async function newProject(rig: 'R7' | 'R8'): Promise<string> {
  mkdirSync(join(root, rig));
  const [folder, program] = [join(root, rig, 'warren-creek'), join(root, rig, 'program.csv')];
  writeFileSync(program, programOf(rig));
  const made = await command(folder, start, [
    ...['new', folder, '--program', program, '--epsg', '7851', '--by', 'NOK', '--rig', rig],
  ]);
  if (made.code !== 0) throw new Error(made.err);
  const file = join(folder, 'project.json');
  const settings = JSON.parse(readFileSync(file, 'utf8'));
  const rigs = ['R7', 'R8'].map((name) => ({ ...settings.rigs[0], name }));
  writeFileSync(file, JSON.stringify({ ...settings, people: PEOPLE, rigs, shift: SHIFT_PART }));
  return folder;
}

interface Reconciled {
  readonly total: { readonly own: number; readonly plod: number };
  readonly invoice: readonly { readonly what: string; readonly own: number; readonly plod: number }[];
  readonly shifts: readonly {
    readonly shift: string;
    readonly ownCents: number;
    readonly lines: readonly { readonly what: string; readonly own: number; readonly plod: number }[];
    readonly queries: readonly { readonly problem: string; readonly answer: string; readonly code: string }[];
  }[];
  readonly figures: { readonly pace: readonly { readonly hole: string; readonly mm: number }[] };
}

let folder = '';
let week: Reconciled;
const reconciled = async (): Promise<Reconciled> =>
  JSON.parse((await command(folder, after, [...SPAN, '--json'])).out);

beforeAll(async () => {
  folder = await newProject('R7');
  const other = await newProject('R8');
  await sitThrough(folder, RIG_7, ['NOK', 'TRI']);
  await tellThrough(other, RIG_8, 'TRI');
  await command(other, after, ['note', 'complete', 'fuel', 'at', '06:00', '--rig', 'R8', '--by', 'TRI']);
  const packed = await command(other, after, ['pack']);
  if (packed.code !== 0) throw new Error(packed.err);
  const outbox = join(other, 'outbox');
  const bundle = readdirSync(outbox).find((name) => name.endsWith('.zip'));
  const taken = await command(folder, after, ['receive', join(outbox, bundle ?? '')]);
  if (taken.code !== 0) throw new Error(taken.err + taken.out);
  week = await reconciled();
}, 240_000);
afterAll(() => rmSync(root, { recursive: true, force: true }));

describe('a week of two rigs, typed at the console of one and told by the command line of the other', () => {
  it('is fourteen shifts of each, day and night, in one project after the bundle came over', () => {
    expect(week.shifts.map(({ shift }) => shift).toSorted()).toEqual(Object.keys(INVOICES).toSorted());
  });

  it.each(Object.entries(INVOICES))('comes to the invoice worked by hand, to the cent: %s', (name, lines) => {
    const shift = week.shifts.find((each) => each.shift === name);
    const own = (shift?.lines ?? []).filter((line) => line.own !== 0);
    const before = shift?.ownCents ?? 0;
    const tax = percentOf(before, 10, 'half-up');
    expect([
      ...own.map((line) => `${line.what} ${formatCents(line.own)}`),
      `tax 10 % ${formatCents(tax)}`,
      formatCents(before + tax),
    ]).toEqual(lines);
    expect(own.reduce((sum, line) => sum + line.own, 0)).toBe(shift?.ownCents);
  });

  it('comes to one total, which text, CSV and page have too', async () => {
    expect(formatCents(week.total.own)).toBe(WEEK_TOTAL);
    expect(week.invoice.reduce((sum, line) => sum + line.own, 0)).toBe(week.total.own);
    expect(week.invoice.reduce((sum, line) => sum + line.plod, 0)).toBe(week.total.plod);
    const [text, csv, page] = await Promise.all(
      [[], ['--csv'], ['--html']].map(async (as) => (await command(folder, after, [...SPAN, ...as])).out),
    );
    expect(text).toMatch(new RegExp(`^total +${WEEK_TOTAL} `, 'm'));
    expect(csv?.trimEnd().split('\r\n').at(-1)).toMatch(new RegExp(`^total,,${week.total.own},`));
    expect(page).toContain(`<td>total</td><td class="n">${WEEK_TOTAL}</td>`);
  });

  it('has queries where a sheet was put wrong, pointed at in time, and none on any other sheet', () => {
    const found = week.shifts.filter((each) => each.queries.length > 0);
    expect(found.map(({ shift }) => shift).toSorted()).toEqual(Object.keys(PLANTED).toSorted());
    for (const { shift, queries } of found) expect(queries[0]?.problem).toMatch(PLANTED[shift] ?? '');
  });

  it('has the note for the next crew of the other rig, packed with its shift and acknowledged here', async () => {
    const by = ['--rig', 'R8', '--by', 'NOK'];
    const note = await command(folder, after, ['note', ...by]);
    expect(note.out).toContain('Completed by TRI');
    expect(note.out).toContain('Added\n  fuel at 06:00');
    expect((await command(folder, after, ['note', 'acknowledge', ...by])).code).toBe(0);
    const file = JSON.parse(readFileSync(join(folder, 'shifts/R8_2026-04-05_NIGHT.json'), 'utf8'));
    expect(file.format).toBe(3);
  });

  it('holds each rod once: the metres of its shifts are those of its holes', () => {
    const byShift = week.figures.pace.reduce((sum, { mm }) => sum + mm, 0);
    const holes = readdirSync(join(folder, 'holes')).map((file) =>
      JSON.parse(readFileSync(join(folder, 'holes', file), 'utf8')),
    );
    const drilled = holes.map(({ tables }) =>
      Math.max(0, ...Object.values<{ depthMm: number }>(tables.rods ?? {}).map((rod) => rod.depthMm)),
    );
    expect(byShift).toBe(drilled.reduce((sum, mm) => sum + mm, 0));
  });

  it('is agreed, corrected or left open, and signed, at the console and by command; a change since shows both figures', async () => {
    const sitting = await sitAt(folder, stampAt(after), { rig: 'R7', person: 'NOK', seed: 90_000, offsetAt });
    sitting.press('f8');
    for (let shift = 0; shift < 10; shift += 1) sitting.press('left');
    sitting.press('tab');
    expect(sitting.screen().join('\n')).toContain('plod and queries of R7_2026-03-31_NIGHT');
    sitting.enter('correct 02:30 sheet changed to standby');
    sitting.enter('sign 0704 with Mick Tarrant');
    expect(sitting.state().message?.text).toBe('plod 0704 signed by NOK with 2 open queries');
    await sitting.desk.close();
    const shift = ['--shift', 'R8_2026-04-01_DAY'];
    for (const line of ['agree shots WK205 two runs', 'sign 0803'])
      expect((await command(folder, after, ['plod', ...line.split(' '), ...shift])).code).toBe(0);
    // The last 24 m were drilled at 16:06: 96 m are 8,393.00, conditioning 2:20 is 2.5 h, 1,500.00; with the shot and tax 10,981.30.
    await command(folder, after, ['activity', 'conditioning', '16:00', '--shift', 'R8_2026-04-01_DAY']);
    const signed = (await reconciled()).shifts.find((each) => each.shift === 'R8_2026-04-01_DAY');
    expect(signed?.queries.filter(({ code }) => code === 'plod-changed-since-signed')).toEqual([
      expect.objectContaining({
        problem: expect.stringMatching(
          /at 13,497\.00 by the record and 13,596\.00 by the plod; now it is 10,981\.30 and 13,596\.00\. Changed since: /,
        ),
      }),
    ]);
  });
});
