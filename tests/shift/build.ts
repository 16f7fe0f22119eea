import type { Result } from '../../src/finding/finding.ts';
import type { Made, Maker } from '../../src/hole/commands/made.ts';
import { type Stamp, stamp } from '../../src/quantity/stamp.ts';
import { applyChanges } from '../../src/record/apply.ts';
import { type Document, emptyDocument, type Table, type Thing } from '../../src/record/document.ts';
import { type ActivitySaid, startActivity, startShift } from '../../src/shift/commands.ts';
import { endShiftAt } from '../../src/shift/entry-changes.ts';
import { recordPlod } from '../../src/shift/plod-commands.ts';
import { type ShiftSettings, shiftSettings } from '../../src/shift/settings.ts';
import type { PlodLine, ShiftHeader } from '../../src/shift/shift.ts';
import { resolveShiftRules, type ShiftRules } from '../../src/shift/shift-rules.ts';

/** An invented contract in invented dollars, for the tests of this room. */
export const SETTINGS: ShiftSettings = shiftSettings.parse({
  shifts: [
    { name: 'day', startsAt: '06:00', endsAt: '18:00' },
    { name: 'night', startsAt: '18:00', endsAt: '06:00' },
  ],
  activities: [
    { code: 'drilling', label: 'Drilling', charge: 'metres', key: 'd' },
    { code: 'reaming', label: 'Reaming', charge: 'active hourly', key: 'r' },
    { code: 'standby', label: 'Standby', charge: 'standby hourly', key: 's' },
    { code: 'breakdown', label: 'Breakdown', charge: 'no charge', key: 'b' },
    { code: 'move', label: 'Move', charge: 'lump sum', key: 'm' },
    { code: 'travel', label: 'Travel', charge: 'active hourly', key: 't' },
  ],
  contract: {
    currency: '$',
    rounding: 'half-up',
    metreRates: [{ toM: 50, centsPerM: 8000 }, { toM: 100, centsPerM: 9550 }, { centsPerM: 11_025 }],
    activeHourlyCents: 60_000,
    standbyHourlyCents: 40_000,
    wetCentsPerM: 500,
    lumpSums: [{ activity: 'move', cents: 120_000 }],
    shotCents: 9000,
    freeTime: [{ activity: 'travel', freeMinutes: 30 }],
    consumables: [{ item: 'hammer bit', costCents: 150_000, plusPercent: 10 }],
  },
  tolerances: { minutes: 15, metresM: 0.5, shots: 0, consumables: 0, cents: 100 },
});

/** Settings with some parts of the contract put otherwise. */
export const withContract = (contract: Partial<ShiftSettings['contract']>): ShiftSettings => ({
  ...SETTINGS,
  contract: { ...SETTINGS.contract, ...contract },
});

/** The value of a result; throws with its reasons where there is none. */
export function granted<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.findings.map((finding) => finding.problem).join('; '));
  return result.value;
}

export const rulesOf = (settings: ShiftSettings): ShiftRules => granted(resolveShiftRules(settings));
export const RULES = rulesOf(SETTINGS);

/** An instant of the invented day, 14 March 2026, by a clock eight hours ahead: `at('07:42')`; `+1` is the next day. */
export function at(clock: string, days = 0): Stamp {
  const [hours = 0, minutes = 0, seconds = 0] = clock.split(':').map(Number);
  return stamp(Date.UTC(2026, 2, 14 + days, hours - 8, minutes, seconds), 480);
}

let made = 0;
/** What a command is given from outside, at an instant. */
export const makerAt = (instant: Stamp): Maker => ({
  newId: () => `k1-${++made}`,
  at: instant,
  by: 'Ada',
});

/** The document after a command. */
export function having(document: Document, command: Made): Document {
  const applied = applyChanges(document.tables, command.changes);
  if (!applied.ok) throw new Error(applied.problem);
  return { ...document, tables: applied.tables };
}

export const HEADER: ShiftHeader = {
  rig: 'RIG1',
  date: '2026-03-14',
  name: 'day',
  startsAt: at('06:00'),
  crew: ['Bo', 'Cy'],
  geologist: 'Ada',
};

export const STARTED = having(
  emptyDocument({ kind: 'shift', id: 'RIG1_2026-03-14_DAY' }),
  startShift(HEADER),
);

/** The activities of a shift, each with the time at which it starts. */
export const doing = (
  shift: Document,
  ...activities: readonly (readonly [clock: string, said: ActivitySaid])[]
): Document =>
  activities.reduce(
    (document, [clock, said]) =>
      having(document, granted(startActivity(document, RULES, said, makerAt(at(clock))))),
    shift,
  );

export const ended = (shift: Document, clock: string): Document =>
  having(shift, granted(endShiftAt(shift, at(clock))));

/** The shift with a plod of these lines. */
export const claimed = (shift: Document, ...lines: readonly Omit<PlodLine, 'plod'>[]): Document =>
  having(
    shift,
    granted(recordPlod(shift, { sheet: '1041', receivedAt: at('19:00') }, lines, makerAt(at('19:00')))),
  );

/** A hole of the invented program on RIG1 since the morning, with what is in its other tables. */
export function hole(id: string, tables: { readonly [table: string]: readonly Thing[] }): Document {
  const rig = { method: 'RC', rig: 'RIG1', fromMm: 0, startedAt: at('06:00') };
  const header = {
    name: id,
    state: 'drilling',
    logFromMm: 0,
    intervalMm: 1000,
    rodMm: 6000,
    firstRodOffsetMm: 0,
  };
  const table = (things: readonly Thing[]): Table =>
    Object.fromEntries(things.map((thing, index) => [`k2-${index}`, thing]));
  const given = Object.entries({ drilling: [rig], ...tables }).map(([name, things]) => [name, table(things)]);
  return {
    ...emptyDocument({ kind: 'hole', id }),
    tables: { ...Object.fromEntries(given), hole: { hole: header } },
  };
}

/** A rod done at a depth in metres. */
export const rod = (clock: string, depthM: number): Thing => ({
  at: at(clock),
  rod: Math.ceil(depthM / 6),
  depthMm: depthM * 1000,
});
