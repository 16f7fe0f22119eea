import type { WeekShift } from './rigs.ts';

const DATES = [
  '2026-03-30',
  '2026-03-31',
  '2026-04-01',
  '2026-04-02',
  '2026-04-03',
  '2026-04-04',
  '2026-04-05',
];

/** A day of rig 8: a hole from its move to 120 m. The sheet comes as a CSV, in the words of the driller's form. */
const day = (date: string, index: number): WeekShift => {
  const hole = `WK${201 + 2 * index}`;
  // On Wednesday the sheet has a shot too many.
  const shots = date === '2026-04-01' ? 2 : 1;
  return {
    rig: 'R8',
    date,
    name: 'day',
    sheet: `080${index + 1}`,
    record: `
06:00 p
06:30 m ${hole}
07:20 l
07:40 d 9
11:00 k
11:30 d 7
14:10 v
14:15 shot 96
14:30 d 4
16:30 c
18:00 end`,
    plod: `
Start,Finish,Task,Hole,From,To,Surveys,Notes
06:00,06:30,Toolbox,,,,,
06:30,07:20,Move,${hole},,,,
07:20,07:40,Lining up,${hole},,,,
07:40,11:00,Drilling,${hole},0,54,,
11:00,11:30,Crib,,,,,
11:30,14:10,Drilling,${hole},54,96,,
14:10,14:30,Surveying,${hole},,,${shots},
14:30,16:30,Drilling,${hole},96,120,,
16:30,18:00,Conditioning,${hole},,,,`,
  };
};

/** A night of rig 8: the next hole to 114 m, with standby. The sheet is typed into a pipe. */
const night = (date: string, index: number): WeekShift => {
  const hole = `WK${202 + 2 * index}`;
  // On Tuesday the sheet has the standby as conditioning.
  const standby = date === '2026-03-31' ? 'c' : 's';
  return {
    rig: 'R8',
    date,
    name: 'night',
    sheet: `090${index + 1}`,
    record: `
18:00 p
18:20 m ${hole}
19:40 l
20:10 d 8
23:20 k
23:50 d 9
03:20 v
03:25 shot 102
03:40 : standby by Ines Falk: no water
05:00 d 2
06:00 end`,
    plod: `
# sheet 090${index + 1}
crew Hal Quist, Bo Marr
1800-1820 p
-1940 m ${hole}
-2010 l
-2320 d 0-48
-2350 k
-0320 d -102
-0340 v 1sh
-0500 ${standby}: no water
-0600 d -114`,
  };
};

/** Rig 8, which is told by the command line alone. */
export const RIG_8: readonly WeekShift[] = DATES.flatMap((date, index) => [
  day(date, index),
  night(date, index),
]);
