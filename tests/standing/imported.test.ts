import { describe, expect, it } from 'vitest';
import { isImported } from '../../src/hole/hole.ts';
import { headsOf } from '../../src/standing/heads.ts';
import { streamMetres } from '../../src/standing/recovery.ts';
import { streamStateOf } from '../../src/standing/stream.ts';
import { traysOf } from '../../src/standing/trays.ts';
import { projectWith } from '../handover/tables/support.ts';
import { holeWith, rod, row } from './support/hole.ts';

const IMPORTED = {
  imported: { depthMm: 45_500, at: '2026-03-14T08:00:00+08:00', by: 'NOK', files: [] },
  state: 'complete',
};

describe('a hole that was imported', () => {
  it('is drilled to its final depth, with no metre, bag or tray of ours', () => {
    const hole = holeWith({ rows: [row(0, 40)] }, IMPORTED);
    expect(headsOf(hole)).toMatchObject({ drilledMm: 45_500, loggedMm: 40_000 });
    expect(streamMetres(projectWith(), hole)).toEqual([]);
    expect(traysOf(projectWith(), hole)).toEqual([]);
  });

  it('goes on below that when it is deepened: bags, recovery and trays begin there, and what is logged there is ours', () => {
    const hole = holeWith({ rows: [row(0, 40)], rods: [rod(9, 54)] }, { ...IMPORTED, state: 'drilling' });
    expect(headsOf(hole).drilledMm).toBe(54_000);
    expect(streamStateOf(hole)).toMatchObject({ startMm: 45_500, readMm: 45_500 });
    expect(streamMetres(projectWith(), hole)[0]).toMatchObject({ fromMm: 45_500, toMm: 46_500 });
    expect(traysOf(projectWith(), hole)[0]).toMatchObject({ tray: 1, fromMm: 45_500 });
    expect([isImported(hole, 45_500), isImported(hole, 46_000)]).toEqual([true, false]);
  });
});
