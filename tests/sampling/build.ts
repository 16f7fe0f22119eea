import type { Bag } from '../../src/hole/bags.ts';
import { depthFromMm } from '../../src/quantity/depth.ts';
import { stamp } from '../../src/quantity/stamp.ts';
import { resolveSampling, type Sampling } from '../../src/sampling/sampling.ts';
import type { SamplingSettings } from '../../src/sampling/settings.ts';
import type { StreamState } from '../../src/sampling/stream/stream.ts';

export const NOON = stamp(Date.UTC(2026, 2, 14, 4), 480);

/** An invented project: a standard at each number ending in 00, 40 and so on, a duplicate 13 behind it, a blank 27 behind. */
export const SETTINGS: SamplingSettings = {
  numbers: { prefixes: ['ZQ'], digits: 6, blocks: [{ rig: 'Rig 1', first: 'ZQ000001', last: 'ZQ009999' }] },
  sampled: { rank: 'metre', lengthM: 1 },
  controls: {
    slots: [
      { every: 40, at: 0, kind: 'standard' },
      { every: 40, at: 13, kind: 'field duplicate' },
      { every: 40, at: 27, oneOf: ['blank', 'standard'], usually: 'blank' },
    ],
    standards: [
      { lot: 'low', sachets: 40 },
      { lot: 'middle', sachets: 40 },
      { lot: 'high', sachets: 40 },
    ],
    blanks: [{ name: 'crushed glass', type: 'coarse', bags: 40 }],
    duplicates: 'second chute',
    rotationSeed: 'a kettle of tea',
    onDemand: [],
    wanted: {},
  },
  split: { targetKg: 3, tolerancePercent: 33 },
  recovery: { lowPercent: 70, highPercent: 105 },
  trays: { compartments: 20, metresPerCompartment: 1 },
  sackBags: 5,
};

/** Settings resolved; a test that gives bad ones fails here. */
export function sampling(changed: Partial<SamplingSettings> = {}): Sampling {
  const resolved = resolveSampling({ ...SETTINGS, ...changed });
  if (!resolved.ok) throw new Error(JSON.stringify(resolved.findings));
  return resolved.value;
}

/** The project with other slots. */
export function withSlots(slots: SamplingSettings['controls']['slots']): Sampling {
  return sampling({ controls: { ...SETTINGS.controls, slots } });
}

/** A hole at its collar with numbers labelled for it. */
export function atCollar(first = 'ZQ000121', last = 'ZQ000320'): StreamState {
  return {
    bags: [],
    bagRuns: [{ first, last, rig: 'Rig 1', at: NOON }],
    putOffs: [],
    choices: [],
    unsampled: [],
    startMm: 0,
    drilledMm: 0,
  };
}

/** A primary bag of a metre. */
export function primary(number: string, fromM: number, toM: number): Bag {
  return {
    number,
    kind: 'primary',
    fromMm: depthFromMm(fromM * 1000),
    toMm: depthFromMm(toM * 1000),
    rank: 'metre',
  };
}

/** Bags in short: `163 primary 54–55`. */
export function inShort(bags: readonly Bag[]): readonly string[] {
  return bags.map((bag) =>
    bag.fromMm === undefined || bag.toMm === undefined
      ? `${bag.number.slice(-3)} ${bag.kind}`
      : `${bag.number.slice(-3)} ${bag.kind} ${bag.fromMm / 1000}–${bag.toMm / 1000}`,
  );
}

/** A number out of use. */
export function spoiledBag(number: string): Bag {
  return { number, kind: 'spoiled', reason: 'torn' };
}
