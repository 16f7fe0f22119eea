import { describe, expect, test } from 'vitest';
import type { Source } from '../../../src/survey/blunders/evidence.ts';
import {
  addsDeg,
  NORTH_BLUNDERS,
  type NorthBlunder,
  northRemedy,
  recordedAgain,
} from '../../../src/survey/blunders/north-blunders.ts';
import { stepBetween } from '../../../src/survey/norths/norths.ts';
import { checkedRuns, codesOf, problemsOf, straightRun } from '../build.ts';

const ANGLES = { declinationDeg: 9.84, convergenceDeg: -4.4, mineGridRotationDeg: 21 };
const NAMED =
  /survey-(declination|north)-slip|survey-gyro-misaligned|survey-line-up-off|survey-runs-disagree/;

/** Every source that an entry applies to: a class of tool, its name, and the north that it was recorded from. */
const sources = (blunder: NorthBlunder): readonly Source[] =>
  (['magnetic', 'north-seeking gyro', 'gyro aligned at the collar', 'line-up'] as const).flatMap(
    (toolClass) =>
      (['magnetic', 'true', 'grid', 'mine-grid'] as const).flatMap((north) =>
        ['tool 7', 'Gyro 2'].flatMap((tool): readonly Source[] => {
          const source = {
            id: toolClass === 'line-up' ? ('line-up' as const) : 'zq1-1',
            tool,
            toolClass,
            north,
            pass: 'in' as const,
            angles: ANGLES,
          };
          return blunder.applies(source) && (toolClass !== 'line-up' || tool === 'tool 7') ? [source] : [];
        }),
      ),
  );

const CASES = NORTH_BLUNDERS.flatMap((blunder) =>
  sources(blunder).map(
    (source) =>
      [
        `${source.tool}, ${source.toolClass}, from ${source.north}: ${blunder.reads}`,
        blunder,
        source,
      ] as const,
  ),
);

/** What the checks say of a hole along 090 grid, its azimuths recorded `plusDeg` too high from a north. */
function checked(source: Source, north: Source['north'], plusDeg: number) {
  const { toolClass, tool } = source;
  if (toolClass === 'line-up')
    return checkedRuns(
      ['zq1-1', 'zq1-2'].map((id) => straightRun(0, { north: 'grid', tool: id }, id)),
      ANGLES,
      { turnedDeg: plusDeg, recorded: north },
    ).findings;
  const turned = (stepBetween('grid', north, ANGLES) ?? 0) + plusDeg;
  return checkedRuns([straightRun(turned, { toolClass, north, tool })], ANGLES).findings;
}

describe('each blunder of norths', () => {
  test.each(CASES)('is doubted, and is settled by doing what its remedy says: %s', (_, blunder, source) => {
    const plusDeg = addsDeg(blunder, source) ?? Number.NaN;
    expect(codesOf(checked(source, source.north, plusDeg)).join()).toMatch(NAMED);

    const again = recordedAgain(blunder, source);
    const recordedDeg = (stepBetween('grid', source.north, ANGLES) ?? 0) + plusDeg + again.plusDeg;
    const rightDeg = stepBetween('grid', again.north, ANGLES) ?? Number.NaN;
    // A line-up is turned to the path's north by what it is recorded from, which is then right.
    expect(recordedDeg).toBeCloseTo(rightDeg, 9);
    expect(problemsOf(checked(source, again.north, recordedDeg - rightDeg))).toEqual([]);
    const words = northRemedy(blunder, source);
    expect(words).toContain(`as of ${again.north.replace('-', ' ')} north`);
    if (again.plusDeg !== 0) expect(words).toContain(`${Math.abs(again.plusDeg).toFixed(1)}° `);
  });
});

describe('a tool called a gyro and recorded as magnetic', () => {
  const asMagnetic = (inside: 'rods' | 'open hole', azimuths = 0, tool = 'gyro 2') =>
    checkedRuns(
      [
        straightRun((stepBetween('grid', 'true', ANGLES) ?? 0) + azimuths, {
          toolClass: 'magnetic',
          north: 'magnetic',
          tool,
          inside,
        }),
      ],
      ANGLES,
    ).findings;

  test.each(['rods', 'open hole'] as const)(
    'is named as such where its true azimuths fit, in %s',
    (inside) => {
      const [first, ...more] = asMagnetic(inside);
      expect(first?.problem).toBe('the run reads as if true azimuths of a gyro were recorded as magnetic');
      expect(first?.remedy).toContain('record the run again as of true north, the tool as a gyro.');
      expect(more).toEqual([]);
    },
  );

  test('is a magnetic tool in steel where its azimuths fit nothing, or its name says so', () => {
    for (const findings of [asMagnetic('rods', 31), asMagnetic('rods', 0, 'tool 7')])
      expect(new Set(codesOf(findings))).toEqual(new Set(['survey-magnetic-in-steel']));
    expect(asMagnetic('rods', 31)[0]?.remedy).toContain('The tool is called a gyro');
  });
});
