import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/finding/finding.ts';
import { WHAT_IT_IS_NOT } from '../../src/finding/what-it-is-not.ts';
import { makeBundle } from '../../src/handover/bundle/make-bundle.ts';
import { letterFor } from '../../src/handover/letter/letter.ts';
import { type Project, resolveProject } from '../../src/project/project.ts';
import { projectSettings } from '../../src/project/settings.ts';
import type { Stamp } from '../../src/quantity/stamp.ts';
import type { Document } from '../../src/record/document.ts';
import { holeWith, rod, row } from '../standing/support/hole.ts';
import { resolveStyle } from '../support/styles.ts';

const SETTINGS = join(import.meta.dirname, '../../sample-projects/mulgara-bend/project.json');
const STYLE = resolveStyle('orogenic-gold')!;
const ROCKS = STYLE.lists.rocks!;
const TALC = { code: 'TLC', label: 'talc schist', look: 'soapy', pair: 'tk', provisional: true } as const;

function project(): Project {
  const schema = {
    ...STYLE,
    lists: { ...STYLE.lists, rocks: { ...ROCKS, codes: [...ROCKS.codes, TALC] } },
  };
  const resolved = resolveProject(projectSettings.parse(JSON.parse(readFileSync(SETTINGS, 'utf8'))), schema);
  if (!resolved.ok) throw new Error(JSON.stringify(resolved.findings));
  return resolved.value;
}

const found = (code: string, severity: Finding['severity']): Finding => ({
  code,
  severity,
  place: { hole: 'MBRC900' },
  problem: 'p',
  remedy: 'r',
});

/** The lines of a letter under one of its headings. */
function under(
  heading: string,
  packed: readonly Document[],
  findings: readonly Finding[] = [],
): readonly string[] {
  const sender = {
    project: 'Mulgara Bend',
    replica: 'k3f9',
    by: 'NOK',
    at: '2026-03-14T16:05:10+08:00' as Stamp,
  };
  const bundle = makeBundle(sender, [{ file: 'project.json', bytes: new Uint8Array() }]);
  const { text } = letterFor({ project: project(), documents: packed, packed, findings, bundle });
  const section = text.split('\n\n').find((each) => each.startsWith(`${heading}\n`));
  return (section ?? '')
    .trimEnd()
    .split('\n')
    .slice(1)
    .map((line) => line.trim());
}

describe('the letter that goes with a bundle', () => {
  it('says what offsider is not', () => {
    expect(under('What offsider is not', [])).toEqual([WHAT_IT_IS_NOT]);
  });

  it('lists the dangers that each hole met, of one that is over too', () => {
    const rows = [row(14, 15, { cells: { rock: { code: 'VOI' } } }), row(15, 16, { noReturn: true })];
    expect(under('Dangers met', [holeWith({ rows }, { state: 'complete' })])).toEqual([
      'MBRC900: void or old workings (void) 14–15; no return 15–16',
    ]);
    expect(under('Dangers met', [holeWith({})])).toEqual([]);
  });

  it('lists the codes that wait for camp, what types them, how they look, and the rows that hold them', () => {
    const talc = { cells: { rock: { code: 'TLC' } } };
    const hole = holeWith({ rods: [rod(1, 6)], rows: [row(0, 4), row(4, 5, talc), row(5, 6, talc)] });
    expect(under('Codes that wait for camp', [hole])).toEqual([
      'rocks: TLC talc schist, typed tk, looks: soapy; MBRC900 2 rows from 4–5.',
    ]);
    expect(under('Codes that wait for camp', [holeWith({})])[0]).toContain('; no row uses it.');
  });

  it('counts what the check finds by kind, the gravest first, in the words of the kind', () => {
    const findings = [
      found('wet-run', 'note'),
      found('unheard-of', 'warning'),
      found('bag-not-of-this-hole', 'fault'),
      found('wet-run', 'note'),
    ];
    expect(under('What the check finds in these holes', [holeWith({})], findings)).toEqual([
      '1 × fault: A bag was issued in a hole that its number was not labelled for.',
      '1 × warning: unheard-of',
      '2 × note: Wet metres follow one another.',
    ]);
    expect(under('What the check finds in these holes', [holeWith({})])).toEqual(['Nothing.']);
  });

  it('says of a hole that goes on what is not finished so far, and of one that is over what it ended without', () => {
    const tables = { rods: [rod(1, 6)], rows: [row(0, 4, { asked: ['pyrite 30 %'] })] };
    expect(under('Not finished', [holeWith(tables)])).toEqual([
      'MBRC900: 4–6 is not logged.',
      'MBRC900: 1 row marked ? waits to be settled.',
      expect.stringMatching(/^MBRC900: 0–6 has no bag: no numbered one is left\. Number more/),
    ]);
    expect(under('Not finished', [holeWith(tables, { state: 'abandoned' })])).toContain(
      'MBRC900: The collar is not capped or plugged: an open collar is a hazard.',
    );
    expect(under('Not finished', [holeWith({}, { state: 'planned' })])).toEqual([
      'Nothing in what is packed.',
    ]);
  });

  it('says which cells two copies changed differently', () => {
    const question = { table: 'rows', thing: 'a-1', field: 'remark', ours: 'a', theirs: 'b', state: 'open' };
    expect(
      under('Not finished', [holeWith({ questions: [question, { ...question, state: 'settled' }] })]),
    ).toEqual([
      'MBRC900: Conflict between two copies: rows a-1, remark: ours a, theirs b. Now gone is kept until it is settled: ;questions.',
    ]);
  });

  it('cuts a line that is longer than any reader shows', () => {
    const [line = ''] = under('Holes', [holeWith({}, { state: 'suspended', stateReason: 'x'.repeat(900) })]);
    expect(line.length).toBeLessThan(510);
    expect(line.endsWith(' …')).toBe(true);
  });
});
