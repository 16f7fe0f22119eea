import { expect, test } from 'vitest';
import { STYLES } from '../../src/schema/styles/index.ts';
import { stoppedBy } from '../bench/believable.ts';
import { HANDS, typedBy } from '../bench/believable-lines.ts';
import { believableLog } from '../bench/believable-log.ts';
import { placed } from '../bench/shorthand-costs.ts';
import { seeded } from '../bench/shorthand-log.ts';
import { runs } from '../support/long-run.ts';
import { resolveStyle } from '../support/styles.ts';

const HOLES = runs(30, 10);
const METRES = 120;

/** The share of right lines that are asked about or refused, of believable holes, each typed by another person. */
function needless(style: string, gloves: boolean): number {
  const schema = resolveStyle(style);
  if (schema === undefined) throw new Error(`no style ${style}`);
  const random = seeded(3);
  const stopped = Array.from({ length: HOLES }, (_, hole) => {
    const hand = HANDS[hole % HANDS.length];
    if (hand === undefined) throw new Error('nobody types');
    const rows = placed(schema, believableLog(schema, 500 + hole, METRES), gloves);
    return rows.filter((each) => stoppedBy(typedBy(hand, each, random), each).size > 0).length;
  });
  return stopped.reduce((sum, count) => sum + count, 0) / (HOLES * METRES);
}

test.each(Object.keys(STYLES))('%s: at most 3 % of right lines are stopped, in gloves mode 6 %', (style) => {
  expect(needless(style, false)).toBeLessThanOrEqual(0.03);
  expect(needless(style, true)).toBeLessThanOrEqual(0.06);
});
