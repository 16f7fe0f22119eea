import { describe, expect, test } from 'vitest';
import { wayWords } from '../../../src/sampling/rod/effect.ts';
import type { RodSeen } from '../../../src/sampling/rod/mismatch.ts';
import { rodCheck } from '../../../src/sampling/rod/rod-check.ts';
import { scanCheck } from '../../../src/sampling/rod/scan.ts';
import { issue } from '../../../src/sampling/stream/issue.ts';
import type { StreamState } from '../../../src/sampling/stream/stream.ts';
import { atCollar, primary, withSlots } from '../build.ts';

const plain = withSlots([]);

/** A first rod, 101 to 106 at 0–6 m, of which some metres gave nothing: their numbers are kept. */
function rodWith(...empty: readonly number[]): StreamState {
  const noReturn = empty.map((metre) => primary('', metre, metre + 1)) as StreamState['noReturn'] & object;
  return { ...atCollar('ZQ000101'), drilledMm: 6000, noReturn };
}
const named = (seen: RodSeen, ...empty: readonly number[]) => rodCheck(plain, rodWith(...empty), seen).named;

describe('the calico kept for an empty metre, hung on the next one', () => {
  test.each<[string, RodSeen, readonly number[]]>([
    ['one number early', { digits: '105' }, [4]],
    ['the same, counted', { digits: '105', count: 5 }, [3]],
    ['two metres that gave nothing', { digits: '104' }, [2, 3]],
  ])('is supposed first: %s', (_, seen, empty) => {
    const [first] = named(seen, ...empty);
    expect(first?.code).toBe('kept-number-used');
    expect(first?.share).toBeGreaterThan(0.4);
  });

  test('says which metre has no sample and what the numbers hold', () => {
    const [first] = named({ digits: '105' }, 3);
    expect(first?.ways.map(wayWords)).toEqual([
      '3–4 has no sample; ZQ000104–105 hold 4–6; ZQ000106 stays for the next rod',
    ]);
  });

  test('no way puts two metres into one bag across a metre that gave nothing, nor reads a calico that is empty', () => {
    const all = named({ digits: '105' }, 4).flatMap(({ code, ways }) =>
      ways.map(({ at }) => `${code} ${at}`),
    );
    expect(all.filter((each) => /two-metres.*(3–5|4–6)/.test(each))).toEqual([]);
    expect(all).not.toContain('last-but-one-read ZQ000105');
  });
});

describe('the number kept for an empty metre, read as the last one', () => {
  test('fits, and is named so that it can be asked about', () => {
    const check = rodCheck(plain, rodWith(5), { digits: '106' });
    expect([check.agrees, check.keptRead?.number]).toEqual([true, 'ZQ000106']);
    expect(rodCheck(plain, rodWith(5), { digits: '105' }).keptRead).toBeUndefined();
    expect(rodCheck(plain, rodWith(4), { digits: '106' }).keptRead).toBeUndefined();
  });
});

describe('a calico compared with a metre that gave nothing', () => {
  const state = rodWith(3);
  const drilled: StreamState = { ...state, bags: issue(plain, state) };

  test('is never said to be where it belongs, whether its rod is done or not', () => {
    for (const each of [state, drilled]) {
      const scan = scanCheck(plain, each, 'ZQ000104', { depthMm: 3500 });
      expect([scan.agrees, scan.named?.code]).toEqual([false, 'bag-on-empty-metre']);
      expect(scan.known).toBe('kept as no sample: nothing came up at 3–4');
      expect(scan.named?.ground).toContain(';bag 3-4 104 =');
    }
  });

  test('on the metre below it is the kept number used', () => {
    expect(scanCheck(plain, state, 'ZQ000104', { depthMm: 4500 }).named?.code).toBe('kept-number-used');
  });
});
