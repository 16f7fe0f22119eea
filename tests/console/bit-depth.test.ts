import { describe, expect, it } from 'vitest';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const AT = '2026-03-14T09:08:00+08:00';
const text = (sitting: Sitting, columns = 100, rows = 60): string =>
  sitting
    .screen(columns, rows)
    .join('\n')
    .replaceAll(/[\s│]+/g, ' ');

/** The sample hole drilled to 54 m by its last rod and logged to a depth past it. */
async function loggedTo(depthM: number, ...expects: readonly string[]): Promise<Sitting> {
  const sitting = await sitDown(sampleFiles(), AT);
  for (const each of expects) sitting.enter(`;expect ${each}`);
  for (let metre = 46; metre < depthM; metre++) sitting.enter('.');
  return sitting;
}

/** The panels on the right at 80 by 24, as one text. */
const panels = (sitting: Sitting): string =>
  sitting
    .screen(80, 24)
    .map((each) => each.slice(49, 79).trim())
    .join(' ');

describe('how deep the bit is, where the log is past the last rod', () => {
  it('is at least the deepest row, for the distance to a void in the pane, the advice and the survey', async () => {
    const sitting = await loggedTo(59, 'old stope 62-66 void');
    expect(panels(sitting)).toContain('VOID from 62 m: within 3 m');
    expect(panels(sitting)).toContain('old stope could come at 62 m, 3 m below the bit or less');
    sitting.press('f6');
    sitting.type('e');
    expect(text(sitting)).toContain('3 m below the bit or less');
  });

  it('warns once the log is within the stand-off, before any rod says so', async () => {
    const sitting = await loggedTo(59, 'old stope 76-80 void');
    expect(panels(sitting)).not.toContain('VOID');
    sitting.enter('.');
    expect(panels(sitting)).toContain('VOID from 76 m: within 16 m');
  });

  it('says of a zone that the log has passed how far it lies above, and never that the hole is there now', async () => {
    const sitting = await loggedTo(60, 'old stope 48-50 void');
    expect(panels(sitting)).toContain('VOID from 48 m: 9 m past it');
    expect(panels(sitting)).not.toContain('at it now');
    sitting.press('f6');
    sitting.type('e');
    expect(text(sitting)).toMatch(/the bit is [\d.]+ m below that/);
    expect(text(sitting)).not.toContain('the hole is there now');
  });

  it('fits its line at 80 columns with three digits', async () => {
    const sitting = await loggedTo(47, 'a seam 104 fibre');
    sitting.enter(';rod 54');
    for (let rod = 10; rod < 17; rod++) sitting.press('f2', 'enter');
    expect(panels(sitting)).toContain('FIBRE from 104 m: within 8 m');
  });
});

describe('the stand-off from a void', () => {
  it('counts from where the rod in hand ends, so that the warning is there before that rod is drilled', async () => {
    const sitting = await loggedTo(47, 'old stope 70-74 void');
    // 54 m drilled, 10 m of stand-off: the rod in hand ends at 60 m, and so the bit will be 10 m above it without another question.
    expect(panels(sitting)).toContain('VOID from 70 m: within 16 m');
    sitting.press('f6');
    sitting.type('e');
    expect(text(sitting)).toContain(
      '16 m below the bit or less. The rod in hand ends at 60 m, 10 m above that.',
    );
  });

  it('is not reached by a rod that ends further above it', async () => {
    const sitting = await loggedTo(47, 'old stope 71-74 void');
    expect(panels(sitting)).not.toContain('VOID');
  });
});
