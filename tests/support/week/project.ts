import { shiftSettings } from '../../../src/shift/settings.ts';

const bands = (...centsPerM: readonly [number, number, number]) => [
  { toM: 50, centsPerM: centsPerM[0] },
  { toM: 100, centsPerM: centsPerM[1] },
  { centsPerM: centsPerM[2] },
];

const TERMS = {
  currency: '$',
  rounding: 'half-up',
  metreRates: bands(8000, 9550, 11_025),
  bitSizes: [{ toMm: 120, metreRates: [{ toM: 50, centsPerM: 7000 }, { centsPerM: 8420 }] }],
  notPayable: [
    { hole: 'WK103A', fromM: 0, toM: 36, why: 'redrill at the driller’s fault: rods left in WK103' },
  ],
  activeHourlyCents: 60_000,
  standbyHourlyCents: 40_000,
  hourlyRates: [{ activity: 'move', centsPerHour: 45_000 }],
  freeTime: [{ activity: 'move', freeMinutes: 60 }],
  hourStep: { minutes: 30, rounding: 'up' },
  concurrent: [{ item: 'booster', centsPerHour: 9500 }],
  shotCents: 9000,
  wetCentsPerM: 500,
  consumables: [{ item: 'hammer bit', costCents: 150_000, plusPercent: 10 }],
  minimumShiftCents: 400_000,
  minimumHoleCents: 200_000,
  taxPercent: 10,
} as const;

/** An invented contract: two shifts a day, and dearer metres from Thursday on. */
export const SHIFT_PART = shiftSettings.parse({
  shifts: [
    { name: 'day', startsAt: '06:00', endsAt: '18:00' },
    { name: 'night', startsAt: '18:00', endsAt: '06:00' },
  ],
  activities: [
    { code: 'prestart', label: 'Pre-start', charge: 'no charge', key: 'p' },
    { code: 'move', label: 'Move', charge: 'active hourly', key: 'm' },
    { code: 'line-up', label: 'Lining up', charge: 'active hourly', key: 'l' },
    { code: 'drilling', label: 'Drilling', charge: 'metres', key: 'd' },
    { code: 'survey', label: 'Surveying', charge: 'no charge', key: 'v' },
    { code: 'conditioning', label: 'Conditioning', charge: 'active hourly', key: 'c' },
    { code: 'standby', label: 'Standby', charge: 'standby hourly', key: 's' },
    { code: 'breakdown', label: 'Breakdown', charge: 'no charge', key: 'b' },
    { code: 'crib', label: 'Crib', charge: 'no charge', key: 'k' },
  ],
  contract: TERMS,
  contracts: [
    {
      from: '2026-04-02',
      terms: {
        ...TERMS,
        metreRates: bands(8235, 9815, 11_340),
        bitSizes: [{ toMm: 120, metreRates: [{ toM: 50, centsPerM: 7200 }, { centsPerM: 8650 }] }],
      },
    },
  ],
  tolerances: { minutes: 15, metresM: 0.5, shots: 0, consumables: 0, cents: 100 },
  plodColumns: {
    from: 'Start',
    to: 'Finish',
    activity: 'Task',
    hole: 'Hole',
    metresFrom: 'From',
    metresTo: 'To',
    shots: 'Surveys',
    remark: 'Notes',
    activities: [{ written: 'Toolbox', activity: 'prestart' }],
  },
});

export const PEOPLE = [
  { initials: 'NOK', name: 'Nadia Okafor', role: 'geologist' },
  { initials: 'TRI', name: 'Tomas Rivas', role: 'geologist' },
  { initials: 'MTA', name: 'Mick Tarrant', role: 'driller' },
  { initials: 'IFA', name: 'Ines Falk', role: 'camp' },
];

/** The planned holes of a rig as a CSV: WK101 on for rig 7, WK201 on for rig 8. */
export const programOf = (rig: 'R7' | 'R8'): string =>
  [
    'hole,easting,northing,elevation,azimuth,north,dip,depth',
    ...Array.from(
      { length: rig === 'R7' ? 12 : 14 },
      (_, index) =>
        `WK${(rig === 'R7' ? 101 : 201) + index},${500_000 + 40 * index},6500000,420,270,grid,-60,150`,
    ),
  ].join('\n');
