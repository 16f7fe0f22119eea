import { describe, expect, it } from 'vitest';
import { rodAsExpected } from '../../src/acts/rod.ts';
import type { Maker } from '../../src/hole/commands/made.ts';
import { depthFromMetres } from '../../src/quantity/depth.ts';
import { parseStamp, type Stamp } from '../../src/quantity/stamp.ts';
import { emptyDocument } from '../../src/record/document.ts';
import { clockFindings } from '../../src/standing/clock.ts';
import { holeMade } from '../desk/support/values.ts';
import { edited } from '../record/build.ts';

const HOLE = edited(emptyDocument({ kind: 'hole', id: 'ZQRC001' }), 1, ...holeMade(), {
  put: ['rows', 'k-1'],
  thing: { fromMm: 0, toMm: 1000, cells: {} },
});
const at = (text: string) => parseStamp(text) as Stamp;

describe('a clock that lies behind what was recorded', () => {
  it('by more than a day is a finding with both times; by a day or less it is none', () => {
    expect(clockFindings([HOLE], at('2020-01-01T00:00:00+08:00'))).toMatchObject([
      {
        code: 'clock-behind',
        severity: 'warning',
        problem:
          'the clock of this computer says 2020-01-01 00:00, and work of 2026-03-14 07:58 is recorded already',
      },
    ]);
    expect(clockFindings([HOLE], at('2026-03-13T07:58:00+08:00'))).toEqual([]);
    expect(clockFindings([HOLE], at('2027-01-01T00:00:00+08:00'))).toEqual([]);
    expect(clockFindings([], at('2020-01-01T00:00:00+08:00'))).toEqual([]);
  });

  it('is said at the rod that it stamps', () => {
    const rod = (now: string) => {
      const maker: Maker = { at: at(now), by: 'NOK', newId: () => 'k-2' };
      const done = rodAsExpected(
        HOLE,
        { rod: 1, depthMm: depthFromMetres(6) },
        { expected: [], row: [] },
        maker,
      );
      return done.ok ? done.value.what : '';
    };
    expect(rod('2020-01-01T00:00:00+08:00')).toBe(
      'rod 1 done at 6 m, at a WRONG time: the clock of this computer says 2020-01-01 00:00, and work of 2026-03-14 07:58 is recorded already',
    );
    expect(rod('2026-03-14T08:00:00+08:00')).toBe('rod 1 done at 6 m');
  });
});
