import { expect, test } from 'vitest';
import { issue } from '../../../src/sampling/stream/issue.ts';
import { type StreamState, streamAhead } from '../../../src/sampling/stream/stream.ts';
import { atCollar, inShort, NOON, primary, sampling, withSlots } from '../build.ts';

const sixMetreRod = { count: 10, rodMm: 6000 };

/** The record after a rod done at a depth. */
function drilledTo(state: StreamState, metres: number): StreamState {
  const drilled = { ...state, drilledMm: metres * 1000 };
  return { ...drilled, bags: [...state.bags, ...issue(sampling(), drilled)] };
}

test('numbers run on by metre, and a number that the scheme reserves is its control', () => {
  const state = drilledTo(atCollar('ZQ000117'), 3);
  expect(inShort(state.bags)).toEqual([
    '117 primary 0–1',
    '118 primary 1–2',
    '119 primary 2–3',
    '120 standard',
  ]);
});

test('a duplicate repeats the primary in the number before it', () => {
  const bags = issue(sampling(), { ...atCollar('ZQ000131'), drilledMm: 4000 });
  expect(inShort(bags)).toEqual([
    '131 primary 0–1',
    '132 primary 1–2',
    '133 field duplicate 1–2',
    '134 primary 2–3',
    '135 primary 3–4',
  ]);
  expect(bags[2]).toMatchObject({ of: 'ZQ000132', method: 'second chute' });
});

test('a duplicate in front of the first primary of a hole repeats the primary behind it', () => {
  const bags = issue(sampling(), { ...atCollar('ZQ000133'), drilledMm: 1000 });
  expect(inShort(bags)).toEqual(['133 field duplicate 0–1', '134 primary 0–1']);
  expect(bags[0]?.of).toBe('ZQ000134');
});

test('the panel follows the drilled head: a standard stands with the metres to drill until it is due', () => {
  const state = drilledTo(atCollar('ZQ000150'), 8);
  const ahead = streamAhead(sampling(), state, sixMetreRod);
  expect(ahead.upcoming.slice(0, 3).map((each) => [each.number.slice(-3), each.kind, each.inMm])).toEqual([
    ['158', 'primary', 0],
    ['159', 'primary', 1000],
    ['160', 'standard', 2000],
  ]);
  expect(ahead.announced.map((each) => each.number)).toEqual(['ZQ000160']);
});

test('a control further off than a rod is not announced yet', () => {
  const state = drilledTo(atCollar('ZQ000141'), 6);
  expect(streamAhead(sampling(), state, sixMetreRod).announced).toEqual([]);
});

test('a number whose control is put off stays reserved and stays on the panel', () => {
  const state = drilledTo(atCollar('ZQ000157'), 2);
  const wait = { number: 'ZQ000160', kind: 'standard', reason: 'no sachets here', at: NOON } as const;
  const ahead = streamAhead(sampling(), { ...state, putOffs: [wait] }, sixMetreRod);
  expect(ahead.upcoming.map((each) => each.number)).not.toContain('ZQ000160');
  expect(ahead.putOff).toEqual([wait]);
  const later = drilledTo({ ...state, putOffs: [wait] }, 6);
  const placed = { ...later, putOffs: [{ ...wait, placedAt: NOON }] };
  expect(streamAhead(sampling(), placed, sixMetreRod).putOff).toEqual([]);
  expect(streamAhead(sampling(), placed, sixMetreRod).upcoming[0]?.number).toBe('ZQ000164');
});

test('running out of numbered bags is told a rod ahead', () => {
  const run = atCollar('ZQ000101', 'ZQ000106');
  const enough = streamAhead(sampling(), run, sixMetreRod);
  expect([enough.numberedLeft, enough.lastsToMm, enough.runsOut]).toEqual([6, 6000, false]);
  const short = streamAhead(sampling(), drilledTo(run, 1), sixMetreRod);
  expect([short.numberedLeft, short.lastsToMm, short.runsOut]).toEqual([5, 6000, true]);
});

test('a second run of numbers carries on where the first one ends', () => {
  const runs = [...atCollar('ZQ000141', 'ZQ000142').bagRuns, ...atCollar('ZQ000201', 'ZQ000209').bagRuns];
  const bags = issue(sampling(), { ...atCollar(), bagRuns: runs, drilledMm: 4000 });
  expect(bags.map((bag) => bag.number.slice(-3))).toEqual(['141', '142', '201', '202']);
});

test('a spoiled number ahead is passed over, and a spoiled bag behind keeps its metre', () => {
  const torn = { number: 'ZQ000144', kind: 'spoiled', reason: 'torn' } as const;
  const state = { ...atCollar('ZQ000141'), bags: [torn], drilledMm: 4000 };
  expect(issue(sampling(), state).map((bag) => bag.number.slice(-3))).toEqual(['141', '142', '143', '145']);
  const lost = { ...primary('ZQ000142', 1, 2), kind: 'spoiled', reason: 'lost' } as const;
  const behind = { ...state, bags: [primary('ZQ000141', 0, 1), lost] };
  expect(inShort(issue(sampling(), behind))[0]).toBe('143 primary 2–3');
});

test('a metre said to be unsampled takes no bag', () => {
  const state = { ...atCollar('ZQ000141'), unsampled: [{ ...metre(1) }], drilledMm: 3000 };
  expect(inShort(issue(sampling(), state))).toEqual(['141 primary 0–1', '142 primary 2–3']);
});

test('a kind chosen late stands over the usual one, and a control can be wanted at any number', () => {
  const chosen = { number: 'ZQ000147', kind: 'standard', reason: 'sulphides above', at: NOON } as const;
  const forced = { number: 'ZQ000148', kind: 'blank', reason: 'visible gold', at: NOON } as const;
  const state = { ...atCollar('ZQ000146'), choices: [chosen, forced], drilledMm: 2000 };
  expect(inShort(issue(sampling(), state))).toEqual([
    '146 primary 0–1',
    '147 standard',
    '148 blank',
    '149 primary 1–2',
  ]);
});

test('composites are cut on whole lengths from the start, across rods', () => {
  const composites = sampling({ sampled: { rank: 'composite', lengthM: 4 } });
  const state = { ...atCollar('ZQ000141'), startMm: 30_000, drilledMm: 36_000 };
  const first = issue(composites, state);
  expect(inShort(first)).toEqual(['141 primary 30–34']);
  const second = issue(composites, { ...state, bags: first, drilledMm: 42_000 });
  expect(inShort(second)).toEqual(['142 primary 34–38', '143 primary 38–42']);
  expect(second[0]?.rank).toBe('composite');
});

test('the foot of the hole takes a bag for what is left, and a deepened hole goes back to whole lengths', () => {
  const ended = issue(sampling(), { ...atCollar('ZQ000141'), drilledMm: 2600 }, { final: true });
  expect(inShort(ended)).toEqual(['141 primary 0–1', '142 primary 1–2', '143 primary 2–2.6']);
  const deepened = issue(sampling(), { ...atCollar('ZQ000141'), bags: ended, drilledMm: 4000 });
  expect(inShort(deepened)).toEqual(['144 primary 2.6–3', '145 primary 3–4']);
});

test('a bag from both chutes every metre is a slot on every second number', () => {
  const both = withSlots([{ every: 2, at: 0, kind: 'field duplicate' }]);
  expect(inShort(issue(both, { ...atCollar('ZQ000141'), drilledMm: 2000 }))).toEqual([
    '141 primary 0–1',
    '142 field duplicate 0–1',
    '143 primary 1–2',
    '144 field duplicate 1–2',
  ]);
});

function metre(from: number) {
  const { fromMm, toMm } = primary('', from, from + 1);
  if (fromMm === undefined || toMm === undefined) throw new Error('a metre has both ends');
  return { fromMm, toMm };
}

test('what comes up follows its state: the same again while nothing changes, another as soon as one bag or depth does', () => {
  const scheme = sampling();
  const state = drilledTo(atCollar('ZQ000117'), 3);
  const [first, again] = [state, { ...state, bags: [...state.bags] }].map((each) =>
    streamAhead(scheme, each, sixMetreRod),
  );
  expect(again).toEqual(first);
  expect(first?.upcoming[0]).toMatchObject({ number: 'ZQ000121', inMm: 0 });
  expect(streamAhead(scheme, { ...state, drilledMm: 2000 }, sixMetreRod).upcoming[0]?.inMm).toBe(1000);
  const fewer = { ...state, bags: state.bags.slice(0, 2) };
  expect(streamAhead(scheme, fewer, sixMetreRod).upcoming[0]?.number).toBe('ZQ000119');
});
