import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Project, resolveProject } from '../../src/project/project.ts';
import { projectSettings } from '../../src/project/settings.ts';
import { adviceFor, situationOf } from '../../src/standing/advice.ts';
import { openItems } from '../../src/standing/open-items.ts';
import { resolveStyle } from '../support/styles.ts';
import { holeWith, rod, row } from './support/hole.ts';

const SETTINGS = join(import.meta.dirname, '../../sample-projects/mulgara-bend/project.json');

function project(): Project {
  const schema = resolveStyle('orogenic-gold');
  if (schema === undefined) throw new Error('the style is built in');
  const resolved = resolveProject(projectSettings.parse(JSON.parse(readFileSync(SETTINGS, 'utf8'))), schema);
  if (!resolved.ok) throw new Error(JSON.stringify(resolved.findings));
  return resolved.value;
}

const bag = (number: string, fromM: number) => ({
  number,
  kind: 'primary',
  fromMm: fromM * 1000,
  toMm: fromM * 1000 + 1000,
});
const shot = (depthM: number) => ({
  run: 'runs-0',
  depthMm: depthM * 1000,
  dipDeg: -60,
  at: '2026-03-14T08:00:00+08:00',
  by: 'NOK',
});
const closed = { state: 'plugged', at: '2026-03-14T09:00:00+08:00', by: 'NOK' };
const bags = [0, 1, 2, 3, 4, 5].map((metre) => bag(`MB00044${metre + 1}`, metre));

describe('what is open at the end of a hole', () => {
  it('is nothing where all is logged and bagged, a shot is near the end and the collar is plugged', () => {
    const hole = holeWith({
      rods: [rod(1, 6)],
      rows: [row(0, 6)],
      bags,
      shots: [shot(6)],
      collarStates: [closed],
    });
    expect(openItems(project(), hole, 6000)).toEqual([]);
  });

  it('is a mismatch that was noted at a rod and not mended', () => {
    const noted = { ...rod(1, 6), mismatch: 'skipped', unmended: true as const };
    const hole = holeWith({
      rods: [noted],
      rows: [row(0, 6)],
      bags,
      shots: [shot(6)],
      collarStates: [closed],
    });
    expect(openItems(project(), hole, 6000)).toEqual([
      'At rod 1 the bags don’t match, a number skipped? It is noted and still open: ;fix.',
    ]);
  });

  it('is each thing that is not so, in a plain sentence', () => {
    const put = {
      number: 'MB000453',
      kind: 'field duplicate',
      reason: 'chute blocked',
      at: '2026-03-14T08:00:00+08:00',
    };
    const hole = holeWith({
      rods: [rod(1, 6)],
      rows: [row(0, 2), row(3, 6, { asked: ['pyrite 30 %'] })],
      bags: bags.slice(0, 4),
      putOff: [put],
    });
    expect(openItems(project(), hole, 7000)).toEqual([
      'The last rod done is at 6 m, the final depth given is 7 m. Ask the driller to count the rods again.',
      '2–3 is not logged.',
      '6–7 is not logged.',
      '1 row marked ? waits to be settled.',
      '4–7 has no bag: no numbered one is left. Number more (;numbered): a further rod then gives it bags; without one ;bag by hand.',
      'The field duplicate MB000453 was put off and is not placed: chute blocked.',
      'No survey shot is recorded.',
      'The collar is not capped or plugged: an open collar is a hazard.',
    ]);
  });

  it('is a deepest shot further from the end than the longest gap', () => {
    const hole = holeWith({
      rods: [rod(10, 60)],
      rows: [row(0, 60)],
      shots: [shot(12)],
      collarStates: [closed],
    });
    expect(openItems(project(), hole, 60_000)).toContain('No shot near the end: the deepest is at 12 m.');
  });
});

describe('what the termination rules read', () => {
  it('is the hole, with the metres of the other holes where they are given', () => {
    const hole = holeWith({ rods: [rod(1, 6)] });
    const others = [hole, holeWith({ rods: [rod(5, 30)] }, { logFromMm: 12_000 }, 'MBRC901')];
    expect(situationOf(project(), hole, others).usedElsewhereMm).toBe(18_000);
    expect(situationOf(project(), hole).usedElsewhereMm).toBeUndefined();
  });

  it('is hidden while a stop of the driller is open, and shown again when it is over', () => {
    const stop = { because: 'hose burst', at: '2026-03-14T08:00:00+08:00', by: 'NOK' };
    expect(adviceFor(project(), holeWith({ stops: [stop] })).shown).toEqual({
      shown: false,
      because: 'the driller has stopped: hose burst (recorded by NOK)',
    });
    expect(
      adviceFor(project(), holeWith({ stops: [{ ...stop, endedAt: '2026-03-14T08:20:00+08:00' }] })).shown
        .shown,
    ).toBe(true);
  });
});
