import { expect, test } from 'vitest';
import { stamp } from '../../src/quantity/stamp.ts';
import { endedLines, holeInDrilling, holesOfRig } from '../../src/standing/rig-holes.ts';
import { holeWith, rod } from './support/hole.ts';

const at = (time: string) => `2026-03-14T${time}:00+08:00`;
const drilled = (rig: string, from: string, to?: string) => [
  { method: 'RC', rig, fromMm: 0, startedAt: at(from), ...(to === undefined ? {} : { endedAt: at(to) }) },
];
const since = stamp(Date.parse(at('06:00')), 480);

test('the hole in drilling is the one that this rig was on last, though an earlier one was never ended', () => {
  const early = holeWith({ drilling: drilled('RC7', '06:10'), rods: [rod(1, 6)] }, {}, 'MBRC901');
  const late = holeWith({ drilling: drilled('RC7', '11:30') }, {}, 'MBRC902');
  const others = holeWith({ drilling: drilled('RC9', '12:00') }, {}, 'MBRC903');
  expect(holeInDrilling([late, early, others], 'RC7')?.id).toBe('MBRC902');
  expect(holeInDrilling([early, others], 'RC9')?.id).toBe('MBRC903');
  expect(holeInDrilling([others], 'RC7')?.id).toBe('MBRC903');
  expect(holeInDrilling([], 'RC7')).toBeUndefined();
});

test('a note for one rig names its own holes', () => {
  const ours = holeWith({ drilling: drilled('RC7', '06:10') }, {}, 'MBRC901');
  const theirs = holeWith({ drilling: drilled('RC9', '06:10') }, {}, 'MBRC902');
  expect(holesOfRig([ours, theirs], 'RC9').map(({ id }) => id)).toEqual(['MBRC902']);
});

test('a hole that was left says how, where, why and what it was drilled again for; one left before is no news', () => {
  const lost = holeWith(
    { drilling: drilled('RC7', '06:10', '09:40'), rods: [rod(1, 36)] },
    { state: 'abandoned', stateReason: '36 m of rods left in the hole' },
    'MBRC901',
  );
  const again = holeWith(
    { drilling: drilled('RC7', '10:00', '15:00'), rods: [rod(1, 60)] },
    { state: 'complete', parent: { hole: 'MBRC901', reason: 'redrill', because: 'bogged' } },
    'MBRC901A',
  );
  const before = holeWith({ drilling: drilled('RC7', '01:00', '05:00') }, { state: 'complete' }, 'MBRC900');
  expect(endedLines([before, lost, again], since)).toEqual([
    'MBRC901 abandoned at 36 m, 2026-03-14 09:40: 36 m of rods left in the hole',
    'MBRC901A complete at 60 m, 2026-03-14 15:00; redrill of MBRC901: bogged',
  ]);
});
