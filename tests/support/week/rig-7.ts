import type { WeekShift } from './rigs.ts';

const R7 = (date: string, name: 'day' | 'night', sheet: string, record: string, plod: string): WeekShift => ({
  rig: 'R7',
  date,
  name,
  sheet,
  record,
  plod,
});

/** Rig 7, whose geologists work at the console: fourteen shifts, and the sheets as the driller wrote them. */
export const RIG_7: readonly WeekShift[] = [
  R7(
    '2026-03-30',
    'day',
    '0701',
    `
06:00 p
06:05 : crew Mick Tarrant, Dee Raun
06:30 m WK101
07:40 l
08:00 d 9
11:20 v
11:25 shot 54
11:40 d 2
12:20 k
12:50 d 6
15:20 v
15:25 shot 102
15:40 d 3
17:00 c
18:00 end`,
    `
crew Mick Tarrant, Dee Raun
0600-0630 p
-0740 m WK101
-0800 l
-1120 d 0-54
-1140 v 1sh
-1220 d -66
-1250 k
-1520 d -102
-1540 v 1sh
-1700 d -120
-1800 c`,
  ),
  R7(
    '2026-03-30',
    'night',
    '0702',
    `
18:00 p
18:20 d WK101 2
19:10 v
19:15 shot 132
19:20 finish
19:30 m WK102
21:00 l
21:30 d 6
23:30 k
00:00 d 9
03:20 : standby by Ines Falk: no water
04:35 d 4
06:00 end`,
    `
1800-1820 p
-1910 d WK101 120-132
-1930 v 1sh
-2100 m WK102
-2130 l
-2330 d 0-36
-0000 k
-0320 d -90
-0435 s: no water
-0600 d -114`,
  ),
  R7(
    '2026-03-31',
    'day',
    '0703',
    `
06:00 p
06:20 : drilling WK102 +booster /6
09:20 v
09:25 shot 150
09:30 finish
09:40 m WK103
10:30 l
10:50 d 6
13:00 k
13:30 b
13:35 : used 1 hammer bit
15:00 c
17:50 abandon rods left in the hole
18:00 end`,
    `
0600-0620 p
-0920 d WK102 114-150 +booster
-0940 v 1sh
-1030 m WK103
-1050 l
-1300 d 0-36
-1330 k
-1500 b used 1 hammer bit: worn out
-1800 c: rods left in the hole`,
  ),
  R7(
    '2026-03-31',
    'night',
    '0704',
    `
18:00 p
18:10 redrill WK103 rods left in the hole
18:20 m WK103A
18:50 l
19:10 d 6
21:30 d 4
23:00 k
23:30 d 6
02:10 v
02:15 shot 96
02:30 : standby by Ines Falk: dust, no water cart
04:00 d 3
06:00 end`,
    `
1800-1820 p
-1850 m WK103A
-1910 l
-2130 d 0-36
-2300 d -60
-2330 k
-0210 d -96
-0230 v 1sh
-0400 c: cleaned the hole
-0600 d -114`,
  ),
  R7(
    '2026-04-01',
    'day',
    '0705',
    `
06:00 p
06:20 d WK103A 1
06:50 finish
07:00 m WK104
08:10 l
08:40 d 8
11:40 k
12:10 wet
12:15 d 3
13:30 : bit 114.3 reduced
13:35 d 5
15:40 v
15:45 shot 96
16:00 d 2
18:00 end`,
    `
0600-0620 p
-0700 d WK103A 114-120
-0810 m WK104
-0840 l
-1140 d 0-48
-1215 k
-1335 d -66
-1540 d -96
-1600 v 1sh
-1800 d -108`,
  ),
  R7(
    '2026-04-01',
    'night',
    '0706',
    `
18:00 p
18:30 d WK104 2
19:20 : standby by Ines Falk: lightning
22:20 b
06:00 end`,
    `
1800-1830 p
-1920 d WK104 108-120
-2220 s: lightning
-0600 b: alternator`,
  ),
  R7(
    '2026-04-02',
    'day',
    '0707',
    `
06:00 p
06:20 d WK104 3
07:30 v
07:35 shot 138
07:40 finish
07:50 m WK105
09:10 l
09:30 : bit 139.7 new
09:35 d 9
12:30 k
13:00 d 9
16:00 v
16:05 shot 108
16:20 d 3
17:30 c
18:00 end`,
    `
0600-0620 p
-0730 d WK104 120-138
-0750 v 1sh
-0910 m WK105
-0935 l
-1230 d 0-54
-1300 k
-1600 d -108
-1620 v 1sh
-1730 d -126
-1800 c`,
  ),
  R7(
    '2026-04-02',
    'night',
    '0708',
    `
18:00 p
18:20 d WK105 4
20:00 v
20:05 shot 150
20:10 finish
20:20 m WK106
21:30 l
22:00 d 4
23:40 k
00:10 d 12
04:30 v
04:35 shot 96
04:50 d 2
06:00 end`,
    `
1800-1820 p
-2000 d WK105 126-150
-2020 v 1sh
-2130 m WK106
-2200 l
-2340 d 0-24
-0010 k
-0430 d -96
-0450 v 1sh
-0600 d -108`,
  ),
  R7(
    '2026-04-03',
    'day',
    '0709',
    `
06:00 p
06:30 d WK106 4
08:10 v
08:15 shot 132
08:20 finish
08:30 m WK107
09:20 l
09:50 d 8
12:30 k
13:00 b
13:10 : used 1 hammer bit
14:30 d 6
17:00 c
18:00 end`,
    `
0600-0630 p
-0810 d WK106 108-132
-0830 v 1sh
-0920 m WK107
-0950 l
-1230 d 0-48
-1300 k
-1430 b used 1 hammer bit: worn out
-1700 d -90 =
-1800 c`,
  ),
  R7(
    '2026-04-03',
    'night',
    '0710',
    `
18:00 p
18:20 d WK107 6
20:40 k
21:10 : drilling WK107 +booster /5
00:00 v
00:05 shot 150
00:10 finish
00:20 m WK108
01:10 l
01:40 d 9
05:20 c
06:00 end`,
    `
1800-1820 p
-2040 d WK107 84-120
-2110 k
-0000 d -150 +booster
-0020 v 1sh
-0110 m WK108
-0140 l
-0520 d 0-54
-0600 c`,
  ),
  R7(
    '2026-04-04',
    'day',
    '0711',
    `
06:00 p
06:20 d WK108 8
09:30 : standby by Ines Falk: no bags on the pad
10:10 d 3
11:40 v
11:45 shot 120
11:50 finish
12:00 m WK109
13:20 l
13:50 d 10
17:30 c
18:00 end`,
    `
0600-0620 p
-0930 d WK108 54-102
-1010 s: no bags on the pad
-1140 d -120
-1200 v 1sh
-1320 m WK109
-1350 l
-1730 d 0-60
-1800 c`,
  ),
  R7(
    '2026-04-04',
    'night',
    '0712',
    `
18:00 p
18:30 d WK109 6
21:00 k
21:30 d 4
23:30 v
23:35 shot 120
23:40 finish
23:50 m WK110
00:40 l
01:10 d 7
04:00 k
04:30 : standby by Ines Falk: fuel late
05:30 d 1
06:00 end`,
    `
1800-1830 p
-2100 d WK109 60-96
-2130 k
-2330 d -120
-2350 v 1sh
-0040 m WK110
-0110 l
-0400 d 0-42
-0430 k
-0530 s: fuel late
-0600 d -48`,
  ),
  R7(
    '2026-04-05',
    'day',
    '0713',
    `
06:00 p
06:30 d WK110 9
10:00 v
10:05 shot 102
10:20 d 3
11:40 k
12:10 finish
12:20 m WK111
13:10 l
13:40 d 3
14:50 finish
15:00 : standby by Ines Falk: no pad ready
17:00 c
18:00 end`,
    `
0600-0630 p
-1000 d WK110 48-102
-1020 v 1sh
-1140 d -120
-1220 k
-1310 m WK111
-1340 l
-1500 d 0-18
-1700 s: no pad ready
-1800 c`,
  ),
  R7(
    '2026-04-05',
    'night',
    '0714',
    `
18:00 p
18:30 m WK112
19:40 l
20:00 d 9
23:10 k
23:40 d 8
02:30 v
02:35 shot 102
02:50 d 5
05:00 c
06:00 end`,
    `
1800-1830 p
-1940 m WK112
-2000 l
-2310 d 0-54
-2340 k
-0230 d -102
-0250 v 1sh
-0500 d -132
-0600 c`,
  ),
];
