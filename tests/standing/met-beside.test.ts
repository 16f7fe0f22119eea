import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { replayHoles } from '../../src/commands/termination/replay-holes.ts';
import { resolveProject } from '../../src/project/project.ts';
import { projectSettings } from '../../src/project/settings.ts';
import { adviceFor } from '../../src/standing/advice.ts';
import { hazardsOf } from '../../src/standing/survey.ts';
import { hear } from '../commands/support/outside.ts';
import { resolveStyle } from '../support/styles.ts';
import { holeWith, rod, row } from './support/hole.ts';

const SETTINGS = join(import.meta.dirname, '../../sample-projects/mulgara-bend/project.json');

function project() {
  const schema = resolveStyle('orogenic-gold');
  if (schema === undefined) throw new Error('the style is built in');
  const resolved = resolveProject(projectSettings.parse(JSON.parse(readFileSync(SETTINGS, 'utf8'))), schema);
  if (!resolved.ok) throw new Error(JSON.stringify(resolved.findings));
  return resolved.value;
}

const first = holeWith(
  {
    rods: [rod(1, 12)],
    feltByDriller: [
      { fromMm: 9000, toMm: 10_000, felt: 'cavity', at: '2026-03-14T08:00:00+08:00', by: 'NOK' },
    ],
  },
  { state: 'abandoned' },
  'MBRC901',
);
const rows = [0, 1, 2, 3, 4, 5].map((metre) => row(metre, metre + 1));
const again = (more = {}) => holeWith({ rods: [rod(1, 6)], rows }, more, 'MBRC901A');
const sentence = (hole: ReturnType<typeof again>) => {
  const { shown } = adviceFor(project(), hole, [first, hole].values());
  return shown.shown ? shown.advice.sentence : 'hidden';
};

const parent = { hole: 'MBRC901', reason: 'redrill', because: 'bogged' };

test('a re-drill expects the void that its first hole met, by the stand-off about it; a hole that stands for none does not', () => {
  expect(sentence(again({ parent }))).toContain(
    'ASK: void: void met in MBRC901 at 9–10 (± 10 m) could come at any metre to 20 m, the bit is at 6 m or deeper',
  );
  expect(sentence(again())).not.toContain('MBRC901 at');
});

test('a re-drill is warned of the void and the fibre of its first hole beside the log, until it is past them by the stand-off', () => {
  const met = holeWith(
    { rods: [rod(1, 60)], rows: [row(40, 42, { cells: { rock: { code: 'SER' } } })] },
    { state: 'abandoned' },
    'MBRC901',
  );
  const at = (depthM: number) =>
    hazardsOf(project(), holeWith({ rods: [rod(1, depthM)] }, { parent }, 'MBRC901A'), [met].values());
  expect(at(23)).toEqual([]);
  // The rod in hand goes to 30 m.
  expect(at(29)).toMatchObject([{ hazard: 'fibre', where: 'ahead', offMm: 1000 }]);
  expect(at(30)).toMatchObject([
    { hazard: 'fibre', where: 'here', name: 'fibre met in MBRC901 at 40–42 (± 10 m)' },
  ]);
  expect(at(52)).toHaveLength(1);
  expect(at(53)).toEqual([]);
});

test('a re-drill that is over is replayed with what its first hole met', () => {
  const hole = again({ parent, state: 'complete' });
  const firstMet = (documents: readonly (typeof hole)[]) => {
    const heard = hear();
    replayHoles(heard.outside, project(), [hole], documents, true);
    const [replayed] = JSON.parse(heard.out()) as [
      { rules: { rule: { name: string }; firstMetMm?: number }[] },
    ];
    return replayed.rules.find(({ rule }) => rule.name === 'void')?.firstMetMm;
  };
  expect(firstMet([first, hole])).toBe(0);
  expect(firstMet([hole])).toBeUndefined();
});
