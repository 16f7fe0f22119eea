import { expect, test } from 'vitest';
import type { Reading } from '../../../src/condition/evaluate.ts';
import { proposedControls } from '../../../src/sampling/scheme/on-demand.ts';
import { issue } from '../../../src/sampling/stream/issue.ts';
import { type StreamState, stream } from '../../../src/sampling/stream/stream.ts';
import { atCollar, SETTINGS, sampling } from '../build.ts';

const project = sampling({
  controls: {
    ...SETTINGS.controls,
    onDemand: [{ when: { field: 'gold', seen: true }, kind: 'blank', why: 'gold was panned above' }],
  },
});
const row = (m: number, reading: Reading) => ({
  fromMm: m * 1000,
  toMm: m * 1000 + 1000,
  read: () => reading,
});
const panned: Reading = { says: 'codes', codes: [] };

/** A hole bagged from a number down to a depth. */
function bagged(first: string, metres: number, choices: StreamState['choices'] = []): StreamState {
  const state = { ...atCollar(first), choices, drilledMm: metres * 1000 };
  return { ...state, bags: issue(project, state) };
}

test('visible mineralisation asks for a blank, at the next number whose kind can be chosen', () => {
  expect(
    proposedControls(project, bagged('ZQ000134', 6), [row(2, { says: 'none' }), row(3, panned)]),
  ).toEqual([{ kind: 'blank', why: 'gold was panned above', fromMm: 3000, toMm: 4000, number: 'ZQ000147' }]);
});

test('where no such number is near, the next number of a metre is proposed', () => {
  expect(proposedControls(project, bagged('ZQ000109', 6), [row(3, panned)])[0]?.number).toBe('ZQ000115');
});

test('a proposal that was taken up is not made again, before the bag is filled or after', () => {
  const choices = [{ number: 'ZQ000115', kind: 'blank' as const }];
  expect(proposedControls(project, bagged('ZQ000109', 6, choices), [row(3, panned)])).toEqual([]);
  const later = bagged('ZQ000109', 8, choices);
  expect([...stream(project, later)][0]?.number).toBe('ZQ000118');
  expect(proposedControls(project, later, [row(3, panned)])).toEqual([]);
});

test('none seen, and what can’t be told, ask for nothing', () => {
  expect(proposedControls(project, bagged('ZQ000109', 6), [row(3, { says: 'none' })])).toEqual([]);
  expect(proposedControls(project, bagged('ZQ000109', 6), [row(3, { says: 'unknown' })])).toEqual([]);
});
