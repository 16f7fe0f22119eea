import { describe, expect, test } from 'vitest';
import type { NewPlodLine } from '../../src/shift/plod-line.ts';
import { timelineKeys, timelineOf } from '../../src/shift/timeline.ts';
import { at, claimed, doing, ended, RULES, STARTED } from './build.ts';

const line = (activity: string, from: string, to: string, hole?: string): NewPlodLine => ({
  activity,
  minutes: 60,
  startsAt: at(from),
  endsAt: at(to),
  ...(hole === undefined ? {} : { hole }),
});
const shift = ended(
  doing(
    STARTED,
    ['06:00', { activity: 'drilling', hole: 'ZQRC004' }],
    ['07:00', { activity: 'standby', hole: 'ZQRC004' }],
    ['08:00', { activity: 'drilling', hole: 'ZQRC004' }],
  ),
  '09:00',
);

describe('the timeline of a shift', () => {
  test('marks another activity and another hole under the quarter hours in which the two sides differ', () => {
    const both = claimed(
      shift,
      line('drilling', '06:00', '07:30', 'ZQRC004'),
      line('standby', '07:30', '08:00'),
      line('drilling', '08:00', '09:00', 'ZQRC005'),
    );
    const rods = [
      { hole: 'ZQRC004', fromMm: 0 as never, toMm: 6000 as never, charge: 'metres', at: at('06:50') },
    ];
    expect(timelineOf(both, rods as never, RULES, at('09:00'))).toEqual([
      '        06  07  08',
      'record  ddddssssdddd',
      'plod    ddddddssdddd',
      'metres  ...6........',
      'differs     ^^  hhhh',
    ]);
    expect(timelineKeys(both, RULES)).toBe(
      'd drilling, s standby, under differs: ^ another activity, h another hole',
    );
  });

  test('marks another activity though both are charged alike', () => {
    const ours = ended(doing(STARTED, ['06:00', { activity: 'travel' }]), '07:00');
    const both = claimed(ours, line('travel', '06:00', '06:30'), line('reaming', '06:30', '07:00'));
    expect(timelineOf(both, [], RULES, at('07:00')).slice(1)).toEqual([
      'record  tttt',
      'plod    ttrr',
      'metres  ....',
      'differs   ^^',
    ]);
  });

  test('has the record and the metres alone where no sheet has times', () => {
    expect(timelineOf(shift, [], RULES, at('09:00')).map((each) => each.split(' ')[0])).toEqual([
      '',
      'record',
      'metres',
    ]);
    expect(timelineKeys(shift, RULES)).toBe('d drilling, s standby');
  });
});
