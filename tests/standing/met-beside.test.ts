import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { resolveProject } from '../../src/project/project.ts';
import { projectSettings } from '../../src/project/settings.ts';
import { adviceFor } from '../../src/standing/advice.ts';
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

test('a re-drill expects the void that its first hole met, where it was; a hole that stands for none does not', () => {
  const parent = { hole: 'MBRC901', reason: 'redrill', because: 'bogged' };
  expect(sentence(again({ parent }))).toContain(
    'ASK: void: void met in MBRC901 at 9–10 could come at 9 m, 3 m below the bit or less',
  );
  expect(sentence(again())).not.toContain('MBRC901 at');
});
