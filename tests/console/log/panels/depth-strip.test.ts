import { describe, expect, it } from 'vitest';
import { depthStrip, stripLegend } from '../../../../src/console/log/panels/depth-strip.ts';
import { themeFor } from '../../../../src/console/theme.ts';
import { depthFromMm } from '../../../../src/quantity/depth.ts';

const theme = themeFor({ colour: false, ascii: false });
const interval = (fromM: number, toM: number) => ({
  fromMm: depthFromMm(fromM * 1000),
  toMm: depthFromMm(toM * 1000),
});
const scale = { loggedMm: 4000, drilledMm: 6000, endMm: 10_000 };
const text = (deciding: readonly ReturnType<typeof interval>[], width = 10) =>
  depthStrip(deciding, scale, width, theme)
    .map((span) => span.text)
    .join('');

describe('the strip of a rule', () => {
  it('marks the metres that decided, the log, and what is drilled and not logged', () => {
    expect(text([interval(2, 4)])).toBe('░░██––    ');
  });

  it('marks a cell that holds any part of a deciding metre', () => {
    expect(text([interval(3, 4)], 5)).toBe('░█–  ');
  });

  it('of nothing deciding shows the hole alone', () => {
    expect(text([])).toBe('░░░░––    ');
  });

  it('has a legend with its ends in metres', () => {
    expect(stripLegend(scale, theme).map((span) => span.text)).toEqual([
      '0 to 10 m: █ decided it  ░ logged  – drilled, not logged',
    ]);
  });
});
