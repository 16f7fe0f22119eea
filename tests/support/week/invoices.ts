/**
 * What each shift of the week comes to, worked by hand from the terms: to 1 April 80.00 a metre to 50 m, 95.50 to 100 m, 110.25 below
 * (with a bit to 120 mm 70.00 and 84.20 below 50 m), from 2 April 82.35, 98.15, 113.40 (72.00 and 86.50). Active 600.00 an hour,
 * standby 400.00, a move 450.00 past its first hour at a hole, a booster 95.00, each line of hours in half hours, rounded up. A shot
 * 90.00, a wet metre 5.00, a hammer bit 1,500.00 plus 10 %. A shift has 4,000.00 at the least, consumables apart, a finished hole
 * 2,000.00. Tax 10 % on everything.
 */
export const INVOICES: Readonly<Record<string, readonly string[]>> = {
  'R7_2026-03-30_DAY': [
    'metres WK101 10,980.00', // 0–120: 50 × 80.00 + 50 × 95.50 + 20 × 110.25
    'active hourly 900.00', // lining up 0:20 + conditioning 1:00 = 1:20, 1.5 h × 600.00
    'hours move 225.00', // 1:10 − 1:00 = 0:10, 0.5 h × 450.00
    'shots 180.00', // 2 × 90.00
    'tax 10 % 1,228.50', // of 12,285.00
    '13,513.50',
  ],
  'R7_2026-03-30_NIGHT': [
    'metres WK101 1,323.00', // 120–132: 12 × 110.25
    'metres WK102 10,318.50', // 0–114, across midnight: 4,000.00 + 4,775.00 + 14 × 110.25
    'active hourly 300.00', // 0:30
    'standby hourly 600.00', // 1:15, 1.5 h × 400.00
    'hours move 225.00', // 1:30 − 1:00 = 0:30
    'shots 90.00',
    'tax 10 % 1,285.65', // of 12,856.50
    '14,142.15',
  ],
  'R7_2026-03-31_DAY': [
    'metres WK102 3,969.00', // 114–150: 36 × 110.25
    'metres WK103 2,880.00', // 0–36: 36 × 80.00, drilled before the rods were left in it
    'active hourly 2,100.00', // lining up 0:20 + 3:00 = 3:20, 3.5 h × 600.00; the move, 0:50, is free
    'hours booster 285.00', // 3:00 × 95.00
    'shots 90.00',
    'hammer bit 1,650.00', // 1,500.00 + 150.00
    'tax 10 % 1,097.40', // of 10,974.00
    '12,071.40',
  ],
  'R7_2026-03-31_NIGHT': [
    'metres WK103A 7,438.50', // 36–114 of the redrill, 0–36 not payable: 14 × 80.00 + 50 × 95.50 + 14 × 110.25
    'active hourly 300.00', // 0:20
    'standby hourly 600.00', // 1:30
    'shots 90.00',
    'tax 10 % 842.85', // of 8,428.50
    '9,271.35',
  ],
  'R7_2026-04-01_DAY': [
    'metres WK103A 661.50', // 114–120: 6 × 110.25
    'metres WK104 5,528.00', // 0–66: 4,000.00 + 16 × 95.50
    'metres WK104, bit to 120 mm 3,536.40', // 66–108 with 114.3 mm: 42 × 84.20
    'wet metres WK104 30.00', // 48–54: 6 × 5.00
    'active hourly 300.00', // 0:30
    'hours move 225.00', // 1:10 − 1:00
    'shots 90.00',
    'tax 10 % 1,037.09', // of 10,370.90
    '11,407.99',
  ],
  'R7_2026-04-01_NIGHT': [
    'metres WK104, bit to 120 mm 1,010.40', // 108–120, the bit of the day: 12 × 84.20
    'standby hourly 1,200.00', // 3:00 × 400.00
    'minimum of the shift 1,789.60', // 4,000.00 − 2,210.40
    'tax 10 % 400.00',
    '4,400.00',
  ],
  'R7_2026-04-02_DAY': [
    'metres WK104, bit to 120 mm 1,557.00', // 120–138: 18 × 86.50
    'metres WK105 11,973.40', // 0–126: 50 × 82.35 + 50 × 98.15 + 26 × 113.40
    'active hourly 600.00', // 0:25 + 0:30 = 0:55
    'hours move 225.00', // 1:20 − 1:00 = 0:20
    'shots 180.00',
    'tax 10 % 1,453.54', // of 14,535.40
    '15,988.94',
  ],
  'R7_2026-04-02_NIGHT': [
    'metres WK105 2,721.60', // 126–150: 24 × 113.40
    'metres WK106 9,932.20', // 0–108: 4,117.50 + 4,907.50 + 8 × 113.40
    'active hourly 300.00', // 0:30
    'hours move 225.00', // 1:10 − 1:00
    'shots 180.00',
    'tax 10 % 1,335.88', // of 13,358.80
    '14,694.68',
  ],
  'R7_2026-04-03_DAY': [
    'metres WK106 2,721.60', // 108–132: 24 × 113.40
    'metres WK107 7,454.60', // 0–84: 4,117.50 + 34 × 98.15
    'active hourly 900.00', // 0:30 + 1:00; the move, 0:50, is free
    'shots 90.00',
    'hammer bit 1,650.00',
    'tax 10 % 1,281.62', // of 12,816.20
    '14,097.82',
  ],
  'R7_2026-04-03_NIGHT': [
    'metres WK107 7,240.40', // 84–150: 16 × 98.15 + 50 × 113.40
    'metres WK108 4,510.10', // 0–54: 4,117.50 + 4 × 98.15
    'active hourly 900.00', // 0:30 + 0:40 = 1:10, 1.5 h
    'hours booster 285.00', // 2:50, 3 h × 95.00
    'shots 90.00',
    'tax 10 % 1,302.55', // of 13,025.50
    '14,328.05',
  ],
  'R7_2026-04-04_DAY': [
    'metres WK108 6,782.90', // 54–120: 46 × 98.15 + 20 × 113.40
    'metres WK109 5,099.00', // 0–60: 4,117.50 + 10 × 98.15
    'active hourly 600.00', // 0:30 + 0:30
    'standby hourly 400.00', // 0:40, 1 h
    'hours move 225.00', // 1:20 − 1:00
    'shots 90.00',
    'tax 10 % 1,319.69', // of 13,196.90
    '14,516.59',
  ],
  // Thirteen hours: at 03:00 it was 02:00 again.
  'R7_2026-04-04_NIGHT': [
    'metres WK109 6,194.00', // 60–120: 40 × 98.15 + 20 × 113.40
    'metres WK110 3,952.80', // 0–48: 48 × 82.35
    'active hourly 300.00', // 0:30; the move, 0:50, is free
    'standby hourly 400.00', // 1:00
    'shots 90.00',
    'tax 10 % 1,093.68', // of 10,936.80
    '12,030.48',
  ],
  'R7_2026-04-05_DAY': [
    'metres WK110 7,340.20', // 48–120: 2 × 82.35 + 50 × 98.15 + 20 × 113.40
    'metres WK111 1,482.30', // 0–18: 18 × 82.35
    'active hourly 900.00', // 0:30 + 1:00
    'standby hourly 800.00', // 2:00
    'shots 90.00',
    'minimum of WK111 517.70', // 2,000.00 − 1,482.30
    'tax 10 % 1,113.02', // of 11,130.20
    '12,243.22',
  ],
  'R7_2026-04-05_NIGHT': [
    'metres WK112 12,653.80', // 0–132: 4,117.50 + 4,907.50 + 32 × 113.40
    'active hourly 900.00', // 0:20 + 1:00 = 1:20, 1.5 h
    'hours move 225.00', // 1:10 − 1:00
    'shots 90.00',
    'tax 10 % 1,386.88', // of 13,868.80
    '15,255.68',
  ],
  ...rig8('DAY', 201, ['2026-03-30', '2026-03-31', '2026-04-01'], (hole) => [
    `metres ${hole} 10,980.00`, // 0–120: 4,000.00 + 4,775.00 + 20 × 110.25
    'active hourly 1,200.00', // 0:20 + 1:30 = 1:50, 2 h; the move, 0:50, is free
    'shots 90.00',
    'tax 10 % 1,227.00', // of 12,270.00
    '13,497.00',
  ]),
  ...rig8('NIGHT', 202, ['2026-03-30', '2026-03-31', '2026-04-01'], (hole) => [
    `metres ${hole} 10,318.50`, // 0–114: 4,000.00 + 4,775.00 + 14 × 110.25
    'active hourly 300.00', // 0:30
    'standby hourly 600.00', // 1:20, 1.5 h
    'hours move 225.00', // 1:20 − 1:00
    'shots 90.00',
    'tax 10 % 1,153.35', // of 11,533.50
    '12,686.85',
  ]),
  ...rig8('DAY', 207, ['2026-04-02', '2026-04-03', '2026-04-04', '2026-04-05'], (hole) => [
    `metres ${hole} 11,293.00`, // 4,117.50 + 4,907.50 + 20 × 113.40
    'active hourly 1,200.00',
    'shots 90.00',
    'tax 10 % 1,258.30', // of 12,583.00
    '13,841.30',
  ]),
  ...rig8('NIGHT', 208, ['2026-04-02', '2026-04-03', '2026-04-04', '2026-04-05'], (hole) => [
    `metres ${hole} 10,612.60`, // 4,117.50 + 4,907.50 + 14 × 113.40
    'active hourly 300.00',
    'standby hourly 600.00',
    'hours move 225.00',
    'shots 90.00',
    'tax 10 % 1,182.76', // of 11,827.60
    '13,010.36',
  ]),
};

/** The same day or night of rig 8 on several dates, every other hole from the first. */
function rig8(
  name: 'DAY' | 'NIGHT',
  first: number,
  dates: readonly string[],
  lines: (hole: string) => readonly string[],
): Record<string, readonly string[]> {
  return Object.fromEntries(
    dates.map((date, index) => [`R8_${date}_${name}`, lines(`WK${first + 2 * index}`)]),
  );
}

/** Rig 7 177,961.85; rig 8 3 × (13,497.00 + 12,686.85) + 4 × (13,841.30 + 13,010.36) = 185,958.19. */
export const WEEK_TOTAL = '363,920.04';

/** What was put wrong on a sheet, and what the query list then says first. */
export const PLANTED: Readonly<Record<string, RegExp>> = {
  'R7_2026-03-31_NIGHT':
    /^02:30–04:00, 1:30 h: the sheet has conditioning \(line 9\), active hourly; the record standby on WK103A/,
  'R7_2026-04-03_DAY': /line 9, 14:30–17:00, claims 84–90, where no rod was done$/,
  'R8_2026-03-31_NIGHT':
    /^03:40–05:00, 1:20 h: the sheet has conditioning \(line 8\), active hourly; the record standby on WK204/,
  'R8_2026-04-01_DAY':
    /^shots in WK205: the sheet has 2, the record 1: 1 more; line 7, 14:10–14:30, claims 2$/,
};
