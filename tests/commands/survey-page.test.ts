import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { survey } from '../../src/commands/survey.ts';
import { copyOfSample, hear, SAMPLE } from './support/outside.ts';

async function told(more: object, folder = SAMPLE, hole = 'MBRC003') {
  const heard = hear();
  const code = await survey(heard.outside, { folder, hole, json: false, csv: false, ...more });
  return { code, out: heard.out(), err: heard.err() };
}

/** A copy of the sample whose hole has a hostile name and a hostile zone. */
function hostile(): string {
  const folder = copyOfSample();
  const file = join(folder, 'holes/MBRC003.json');
  const text = readFileSync(file, 'utf8')
    .replace('"name": "MBRC003"', '"name": "<script>alert(1)</script>\\u001b]0;x"')
    .replace(
      '"targetMm": 74000',
      '"targetMm": 74000, "expects": [{"name": "</text><script>zone", "fromMm": 60000, "toMm": 64000, "hazard": "void"}]',
    );
  writeFileSync(file, text);
  return folder;
}

describe('the survey as pictures', () => {
  it.each(['plan', 'section'] as const)('is an SVG document of the %s, alone on stdout', async (svg) => {
    const { code, out, err } = await told({ svg });
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg".*<\/svg>\n$/s);
    expect(out).toContain('m, one scale both ways');
    expect(out).toContain('T target');
  });

  it('is one page with both pictures and the words, which needs and runs nothing else', async () => {
    const { out } = await told({ html: true });
    expect(out.match(/<svg /g)).toHaveLength(2);
    expect(out).toContain('projected on the trend: misses by');
    expect(out).toContain("default-src 'none'");
    expect(out).not.toMatch(/<(script|link|img|iframe)|href=|url\(/);
  });

  it('shows hostile names as text, on the page and in the picture', async () => {
    const folder = hostile();
    for (const more of [{ html: true }, { svg: 'section' }]) {
      const { out } = await told(more, folder);
      expect(out.toLowerCase()).not.toContain('<script');
      expect(out).not.toContain('\u001b');
    }
  });

  it('says of a hole without a direction that there is nothing to draw', async () => {
    const { code, out, err } = await told({ svg: 'plan' }, SAMPLE, 'MBRC004');
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('nothing to draw');
  });
});
