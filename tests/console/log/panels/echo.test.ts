import { describe, expect, it } from 'vitest';
import { entryContext } from '../../../../src/console/log/entry.ts';
import { echoLines, refusalWords } from '../../../../src/console/log/panels/echo.ts';
import { themeFor } from '../../../../src/console/theme.ts';
import type { Line } from '../../../../src/console/widgets/line.ts';
import { sampleFiles, sitDown } from '../../support/sitting.ts';

const theme = themeFor({ colour: false, ascii: false });
const words = (line: Line): string => line.map((span) => span.text).join('');

async function echo(text: string, context: { above?: undefined } = {}) {
  const sitting = await sitDown(sampleFiles(), '2026-03-14T09:08:00+08:00');
  const at = { ...entryContext(sitting.state(), sitting.hole('MBRC003'), 'head'), ...context };
  return echoLines(text, at, theme, 76).map(words);
}

describe('the echo', () => {
  it('of a first row says what was said on its own line, and what was left unsaid behind it', async () => {
    const [said, unsaid] = await echo('bawx2ox1cl2', { above: undefined });
    expect(said).toBe('basalt · weathering slightly weathered · oxidation unoxidised · chlorite 2');
    expect(unsaid).toMatch(/^unsaid: no .*; not observed: /);
    expect(unsaid).not.toContain('basalt');
  });

  it('of a later row says what changes above what stays', async () => {
    const [changed, same] = await echo('p3');
    expect(changed).toBe('pyrite 2→3 % ▲');
    expect(same).toMatch(/^as above: /);
  });

  it('of a refused line says each thing that it could be once, on two lines', async () => {
    const lines = (await echo('p3v2')).join(' ');
    expect(lines.match(/vein selvages/g)).toHaveLength(1);
    expect(lines).not.toContain('…');
  });

  it('of a repeat says so, and then what stands, each once', async () => {
    const [repeat, same] = await echo('.');
    expect(repeat).toBe('the same again');
    expect(same).toMatch(/^as above: basalt, /);
  });

  it('ends a problem with its own mark or a full stop, and names strokes once', async () => {
    expect((await echo('p')).join(' ')).toBe('p pyrite: how much? Type the amount after it: p2');
    expect((await echo('r2')).join(' ')).toBe('arsenopyrite is not in the row above. Type ar2 if you see it');
  });

  it('names suggestions that the remedy does not name already', () => {
    const refusal = {
      kind: 'refused',
      position: 0,
      length: 1,
      suggestions: [{ text: ';wet', label: 'wet' }],
    } as const;
    expect(refusalWords({ ...refusal, problem: 'No command is called wat', remedy: 'Words' })).toBe(
      'No command is called wat. Words: ;wet wet',
    );
  });
});
