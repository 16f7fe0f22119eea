import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { formatCents } from '../../src/quantity/cents.ts';
import { shiftSettings } from '../../src/shift/settings.ts';
import { PEOPLE } from '../support/week/project.ts';
import { command, nextAt, sitThrough, type WeekShift } from '../support/week/rigs.ts';

/*
 * Rates that leave fractions of a cent, hours in quarters to the nearest one, a bit that drills on through three shifts and two holes, hours typed
 * late, a shot misread, a minimum of a hole and one of a shift, tax once on the sum. What each line comes to is worked by hand beside it.
 */
const bands = (...rates: readonly number[]) =>
  rates.map((centsPerM, index) =>
    index === rates.length - 1 ? { centsPerM } : { toM: 50 * (index + 1), centsPerM },
  );
const kind = (code: string, label: string, charge: string, key: string) => ({ code, label, charge, key });
const SHIFT = shiftSettings.parse({
  shifts: [
    { name: 'day', startsAt: '06:00', endsAt: '18:00' },
    { name: 'night', startsAt: '18:00', endsAt: '06:00' },
  ],
  activities: [
    kind('prestart', 'Pre-start', 'no charge', 'p'),
    kind('mobilising', 'Mobilising', 'lump sum', 'o'),
    kind('move', 'Move', 'active hourly', 'm'),
    kind('line-up', 'Lining up', 'active hourly', 'l'),
    kind('drilling', 'Drilling', 'metres', 'd'),
    kind('survey', 'Surveying', 'no charge', 'v'),
    kind('fishing', 'Fishing', 'active hourly', 'f'),
    kind('standby', 'Standby', 'standby hourly', 's'),
    kind('breakdown', 'Breakdown', 'no charge', 'b'),
    kind('crib', 'Crib', 'no charge', 'k'),
  ],
  contract: {
    currency: '$',
    rounding: 'half-up',
    metreRates: bands(7333, 8950, 10_125),
    bitSizes: [{ toMm: 138, metreRates: bands(6817, 8333) }],
    activeHourlyCents: 58_333,
    standbyHourlyCents: 41_175,
    hourlyRates: [{ activity: 'fishing', centsPerHour: 50_001 }],
    hourStep: { minutes: 15, rounding: 'nearest' },
    concurrent: [{ item: 'booster', centsPerHour: 13_333 }],
    lumpSums: [{ activity: 'mobilising', cents: 60_000 }],
    freeTime: [{ activity: 'move', freeMinutes: 60 }],
    shotCents: 7750,
    consumables: [{ item: 'hammer bit', costCents: 148_999, plusPercent: 12.5 }],
    minimumShiftCents: 450_000,
    minimumHoleCents: 300_000,
    taxPercent: 10,
  },
  tolerances: { minutes: 15, metresM: 0.5, shots: 0, consumables: 0, cents: 100 },
});

const SHIFTS: readonly WeekShift[] = [
  {
    rig: 'K9',
    date: '2026-03-23',
    name: 'day',
    sheet: '0501',
    record: `
06:00 p
06:05 : crew Mick Tarrant, Dee Raun
06:20 o KP001
07:35 l
08:05 d 8
11:05 v
11:10 shot 48
11:12 > ;shot 48 -60.2 270.4 corrects =
11:25 k
11:55 d 5
14:10 : bit 137.5 new face
14:15 d 4
16:00 f
17:20 : standby by Ines Falk: lightning
18:00 end`,
    plod: `
crew Mick, Dee Raun
0600-0620 p
-0735 o KP001
-0805 l
-1105 d 0-48
-1125 v 1sh
-1155 k
-1410 d -78
-1600 d -102
-1720 f
-1800 s: lightning`,
  },
  {
    rig: 'K9',
    date: '2026-03-23',
    name: 'night',
    sheet: '0502',
    record: `
18:00 p
18:15 : drilling KP001 +booster /3
19:50 finish
20:00 m KP002
21:40 l
22:05 d 5
00:10 k
00:40 d 4
02:30 v
02:35 shot 54
02:50 b
04:20 d 2
05:50 : breakdown 18:40-19:00 valve
06:00 end`,
    plod: `
1800-1815 p
-1840 d KP001 102-108 +booster
-1900 b: valve
-1950 d -120 +booster
-2000 k
-2140 m KP002
-2205 m KP002
-0010 d 0-30
-0040 k
-0230 d -54
-0250 v 1sh
-0420 b: hose
-0600 d -66`,
  },
  {
    rig: 'K9',
    date: '2026-03-24',
    name: 'day',
    sheet: '0503',
    record: `
06:00 p
06:15 d 1
07:00 : standby by Ines Falk: dust storm
11:00 finish
11:10 m KP003
12:05 l
12:35 d 4
14:45 : used 1 hammer bits
14:50 finish
15:00 b
18:00 end`,
    plod: `
0600-0615 p
-0700 d KP002 66-72
-1110 s: dust storm
-1205 m KP003
-1235 l
-1500 d 0-24
-1800 b used 1 hammer-bit`,
  },
];

const BY_HAND: Readonly<Record<string, readonly string[]>> = {
  'K9_2026-03-23_DAY': [
    'metres KP001 6,172.50', // 0–78: 50 × 73.33 + 28 × 89.50
    'metres KP001, bit to 138 mm 1,999.92', // 78–102, the new bit: 24 × 83.33
    'active hourly 291.67', // lining up 0:30: 291.665
    'standby hourly 308.81', // 0:40 is 0:45: 308.8125
    'hours fishing 625.01', // 1:20 is 1:15: 625.0125
    'lump sum mobilising 600.00',
    'shots 77.50', // one, misread and corrected
    '10,075.41',
  ],
  'K9_2026-03-23_NIGHT': [
    'metres KP001, bit to 138 mm 1,499.94', // 102–120, the bit of the day: 18 × 83.33
    'metres KP002, bit to 138 mm 4,741.78', // 0–66 with it: 50 × 68.17 + 16 × 83.33
    'active hourly 583.33', // move 1:40 − 1:00, lining up 0:25: 1:05 is 1:00
    'hours booster 166.66', // 18:15–19:50 less the valve, told at 05:50, 0:20: 1:15, 166.6625
    'shots 77.50',
    '7,069.21',
  ],
  'K9_2026-03-24_DAY': [
    'metres KP002, bit to 138 mm 499.98', // 66–72: 6 × 83.33
    'metres KP003, bit to 138 mm 1,636.08', // 0–24: 24 × 68.17
    'active hourly 291.67', // lining up 0:30; the move, 0:55, is free
    'standby hourly 1,749.94', // 4:10 is 4:15: 1,749.9375
    'minimum of KP003 1,363.92', // 3,000.00 − 1,636.08; KP002 has 5,241.76
    'hammer bit 1,676.24', // 1,489.99 + 12.5 %: 1,676.23875
    '7,217.83',
  ],
  'K9_2026-03-24_NIGHT': [
    'standby hourly 1,647.00', // 4:00
    'minimum of the shift 2,853.00', // 4,500.00 − 1,647.00
    '4,500.00',
  ],
};

const root = mkdtempSync(join(tmpdir(), 'offsider-odd-cents-'));
const folder = join(root, 'kestrel-pan');
const start = nextAt(Date.parse('2026-03-22T00:00:00Z'), '18:00');
const after = nextAt(Date.parse('2026-03-25T00:00:00Z'), '12:00');
const SPAN = ['plod', '--reconcile', '2026-03-23..2026-03-24'];
interface Reconciled {
  readonly total: { readonly own: number; readonly plod: number };
  readonly invoice: readonly { readonly what: string; readonly own: number }[];
  readonly shifts: readonly {
    readonly shift: string;
    readonly ownCents: number;
    readonly lines: readonly { readonly what: string; readonly own: number }[];
    readonly queries: readonly { readonly problem: string; readonly code: string }[];
  }[];
}
let days: Reconciled;

beforeAll(async () => {
  const program = join(root, 'program.csv');
  const holes = [1, 2, 3].map((each) => `KP00${each},${500_000 + 40 * each},6500000,420,270,grid,-60,120`);
  writeFileSync(program, ['hole,easting,northing,elevation,azimuth,north,dip,depth', ...holes].join('\n'));
  const made = await command(folder, start, [
    ...['new', folder, '--program', program, '--epsg', '7851', '--by', 'NOK', '--rig', 'K9'],
  ]);
  if (made.code !== 0) throw new Error(made.err);
  const file = join(folder, 'project.json');
  const settings = JSON.parse(readFileSync(file, 'utf8'));
  const rigs = [{ ...settings.rigs[0], name: 'K9', bitMm: 140 }];
  writeFileSync(file, JSON.stringify({ ...settings, people: PEOPLE, rigs, shift: SHIFT }));
  await sitThrough(folder, SHIFTS, ['NOK', 'TRI']);
  const night = nextAt(Date.parse('2026-03-24T19:00:00Z'), '06:00');
  const lines =
    'begin 18:00\nprestart 18:00\nstandby 18:20-22:20 by Ines Falk: dust storm\ncrib 22:20\nend 06:00\n';
  const told = await command(folder, night, ['activity', '--by', 'TRI'], lines);
  if (told.code !== 0) throw new Error(told.err + told.out);
  const sheet = '1800-1820 p\n-2220 s: dust\n-0600 k\n';
  const name = ['--shift', 'K9_2026-03-24_NIGHT', '--by', 'TRI'];
  const typed = await command(folder, night + 600_000, ['plod', 'new', '0504', ...name], sheet);
  if (typed.code !== 0) throw new Error(typed.err + typed.out);
  days = JSON.parse((await command(folder, after, [...SPAN, '--json'])).out);
}, 120_000);
afterAll(() => rmSync(root, { recursive: true, force: true }));

describe('two days at odd rates, typed at the console and by the command line', () => {
  it.each(Object.entries(BY_HAND))('come to what was worked by hand, to the cent: %s', (name, lines) => {
    const shift = days.shifts.find((each) => each.shift === name);
    const own = (shift?.lines ?? []).filter((line) => line.own !== 0);
    expect([
      ...own.map((line) => `${line.what} ${formatCents(line.own)}`),
      formatCents(shift?.ownCents ?? 0),
    ]).toEqual(lines);
  });

  it('come to one invoice, taxed once on 28,862.45: 2,886.245, a cent more than shift by shift', () => {
    expect(days.invoice.find(({ what }) => what === 'tax 10 %')?.own).toBe(288_625);
    expect(formatCents(days.total.own)).toBe('31,748.70');
    expect(days.invoice.reduce((sum, line) => sum + line.own, 0)).toBe(days.total.own);
    expect(days.total.plod).toBe(days.total.own);
  });

  it('raise one query: the line-up that a sheet calls a move, which no sum shows', () => {
    const queries = days.shifts.flatMap(({ shift, queries: found }) =>
      found.map(({ code, problem }) => [shift, code, problem]),
    );
    expect(queries).toEqual([
      [
        'K9_2026-03-23_NIGHT',
        'plod-activity-differs',
        '21:40–22:05, 0:25 h: the sheet has move on KP002 (line 7), the record lining up on KP002',
      ],
    ]);
  });
});
