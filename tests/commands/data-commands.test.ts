import { describe, expect, it } from 'vitest';
import { bags } from '../../src/commands/bags.ts';
import { check } from '../../src/commands/check.ts';
import { holes } from '../../src/commands/holes.ts';
import { lineUp } from '../../src/commands/line-up.ts';
import { shift } from '../../src/commands/shift.ts';
import { survey } from '../../src/commands/survey.ts';
import { type TerminationAsked, termination } from '../../src/commands/termination.ts';
import type { Outside } from '../../src/desk/outside.ts';
import { hear, SAMPLE } from './support/outside.ts';

async function run(command: (outside: Outside) => Promise<number>) {
  const heard = hear();
  const code = await command(heard.outside);
  return { code, out: heard.out(), err: heard.err() };
}

const folder = SAMPLE;

describe('holes', () => {
  it('lists the program with states and depths', async () => {
    const { code, out } = await run((outside) => holes(outside, { folder, json: false }));
    expect(code).toBe(0);
    expect(out).toMatch(/^MBRC003 {3}drilling +54 +46 +120 +270\.0° grid +-60 +yes +160 /m);
  });

  it('says which holes are lined up and how many bags are numbered, as the list in the console does', async () => {
    const { out } = await run((outside) => holes(outside, { folder, json: false }));
    expect(out).toMatch(/^hole +state +.*lined up +bags +for$/m);
    expect(out).toMatch(/^MBRC004 +planned .* -60 {2,}Cuckoo lode/m);
    const facts = JSON.parse((await run((outside) => holes(outside, { folder, json: true }))).out);
    expect(facts.map(({ id, linedUp, bagsNumbered }: never) => [id, linedUp, bagsNumbered])).toEqual(
      expect.arrayContaining([
        ['MBRC003', true, 160],
        ['MBRC004', false, 0],
      ]),
    );
  });
  it('gives the history of one: who did what, when', async () => {
    const { out } = await run((outside) => holes(outside, { folder, json: true, history: 'mbrc001' }));
    const deeds = JSON.parse(out);
    expect(deeds[0]).toMatchObject({
      by: 'NOK',
      what: 'hole MBRC001 planned',
      at: '2026-03-11T16:30:00+08:00',
    });
    expect(deeds.map((deed: { readonly what: string }) => deed.what)).toContain('ended at 150 m');
    expect(deeds.at(-1).follows).toEqual([deeds.at(-2).hash]);
  });

  it('says of every amendment what stood before and after, and that the chain holds', async () => {
    const { code, out } = await run((outside) => holes(outside, { folder, json: false, history: 'MBRC001' }));
    expect(code).toBe(0);
    expect(out).toMatch(/^ {3}1 {2}2026-03-11 16:30:00 {2}NOK {2}hole MBRC001 planned$/m);
    expect(out).toMatch(/^ +\d+ {2}2026-03-\d\d \d\d:\d\d:\d\d {2}NOK {2}amended .*\n {8}\S.* → /m);
    expect(out).toMatch(/chain verified\n$/);
  });

  it('shows the hole as it stood after any of its edits', async () => {
    const first = await run((outside) =>
      holes(outside, { folder, json: false, history: 'MBRC001', after: 1 }),
    );
    expect(first.out).toContain('state planned');
    expect(first.out).not.toContain('0–1: ');
    const edits = Number(/(\d+) edits in all/.exec(first.out)?.[1]);
    const last = await run((outside) =>
      holes(outside, { folder, json: true, history: 'MBRC001', after: edits }),
    );
    expect(JSON.parse(last.out).hole.hole.state).toBe('complete');
    expect(Object.keys(JSON.parse(last.out).rows)).toHaveLength(150);
    const past = await run((outside) =>
      holes(outside, { folder, json: false, history: 'MBRC001', after: edits + 1 }),
    );
    expect(past).toMatchObject({ code: 2, out: '' });
    expect(past.err).toContain(`Give the number of an edit, 1 to ${edits}.`);
  });
});

describe('check', () => {
  it('gives 0 with notes alone', async () => {
    const { code, out } = await run((outside) => check(outside, { folder, json: false }));
    expect(code).toBe(0);
    expect(out).toMatch(/^0 faults, 0 warnings, [1-9]\d* notes\.$/m);
    expect(out).toContain('12 wet metres in a row');
  });
  it('looks at one hole as data', async () => {
    const { code, out } = await run((outside) => check(outside, { folder, hole: 'MBRC003', json: true }));
    const found = JSON.parse(out);
    expect([code, found.map((each: { code: string }) => each.code)]).toEqual([0, ['hygiene-not-looked']]);
  });
});

describe('bags', () => {
  const asked = { folder, holes: ['MBRC003'], to: undefined, as: 'text' } as const;

  it('lists tomorrow’s bags down to the planned depth, each with its metre, kind and tray place and a box to tick', async () => {
    const { code, out } = await run((outside) => bags(outside, asked));
    const lines = out.split('\n');
    expect(code).toBe(0);
    expect(lines[0]).toMatch(/^MBRC003: \d+ bags to label to 120 m, 66 primary/);
    expect(lines[1]).toBe('[ ] MB000502  54–55        tray 3 no. 15');
    expect(out).toContain('[ ] MB000507               blank crushed quartz (or standard)');
    expect(out).toContain('standard K17: ');
  });
  it('lists those of every hole that has numbered bags left where none is named', async () => {
    const { out } = await run((outside) => bags(outside, { ...asked, holes: [] }));
    expect(out).toContain('MBRC003: ');
    expect(out).not.toMatch(/^MBRC001: .* to label/m);
    expect(out).toMatch(/left over/i);
  });
  it('says how many metres have no numbered bag', async () => {
    const { out } = await run((outside) => bags(outside, { ...asked, to: '250' }));
    expect(out).toMatch(/NOT ENOUGH: \d+ m of MBRC003 to 250 m have no numbered bag/);
  });
  it('gives labels as CSV in which no control tells what it is', async () => {
    const { out } = await run((outside) => bags(outside, { ...asked, as: 'csv' }));
    expect(out.split('\r\n').slice(0, 2)).toEqual([
      'number,hole,from_m,to_m,tray,compartment',
      'MB000502,MBRC003,54,55,3,15',
    ]);
    expect(out).toContain('MB000507,MBRC003,,,,\r\n');
  });
  it('gives a sheet to print for the splitter', async () => {
    const { out } = await run((outside) => bags(outside, { ...asked, as: 'html' }));
    expect(out).toContain('<h1>Bags · MBRC003</h1>');
    expect(out).toContain('<td>☐</td><td>MB000502</td>');
  });
  it('lists the bags issued', async () => {
    const { out } = await run((outside) => bags(outside, { ...asked, as: 'issued' }));
    expect(out).toMatch(/^MB000441 +primary +0–1$/m);
  });
  it('gives all of it as data', async () => {
    const { out } = await run((outside) => bags(outside, { ...asked, as: 'json' }));
    const { holes: facts, stock } = JSON.parse(out);
    expect(facts[0].issued[0]).toMatchObject({ number: 'MB000441', kind: 'primary', fromMm: 0, toMm: 1000 });
    expect(facts[0].run.lines[0]).toMatchObject({ number: 'MB000502', fromMm: 54_000 });
    expect(stock.map((each: { material: string }) => each.material)).toEqual([
      'K17',
      'M04',
      'R22',
      'crushed quartz',
    ]);
  });
  it('refuses a depth that is none', async () => {
    const { code, err } = await run((outside) => bags(outside, { ...asked, to: 'deep' }));
    expect(code).toBe(2);
    expect(err).toContain('deep is not a depth in metres');
  });
});

describe('survey', () => {
  it('gives positions by metre as CSV, one line a metre', async () => {
    const { code, out } = await run((outside) =>
      survey(outside, { folder, hole: 'MBRC001', json: false, csv: true }),
    );
    const lines = out.trim().split(/\r?\n/);
    expect(code).toBe(0);
    expect(lines).toHaveLength(152);
    expect(lines[1]).toBe('0,412481.6,6002198.9,431.9,270.2,grid,-59.9,set');
  });
  it('says how the hole comes out at its target', async () => {
    const { out } = await run((outside) =>
      survey(outside, { folder, hole: 'MBRC001', json: false, csv: false }),
    );
    expect(out).toContain('Target at 92 m:');
    expect(out).toMatch(/as measured: misses by \d+\.\d m \(.* short, .* left, .* above\)/);
  });
});

describe('line-up', () => {
  it('gives the planned direction in every north and holds the set one against it', async () => {
    const { code, out } = await run((outside) => lineUp(outside, { folder, hole: 'MBRC001', json: false }));
    expect(code).toBe(0);
    expect(out).toContain('270.0° grid');
    expect(out).toMatch(/Set: planned 270\.0° grid, measured 270\.2° grid: 0\.2° to the right, inside 1\.0°/);
    expect(out).toContain('Only the driller moves the rig');
  });
});

describe('shift', () => {
  it('gives the record and the query list of a shift whose plod has come, and 1 for its queries', async () => {
    const { code, out } = await run((outside) =>
      shift(outside, { folder, shift: '2026-03-12', json: false }),
    );
    expect(code).toBe(1);
    expect(out).toContain('MBRC001: 150 m drilled, 0–150');
    expect(out).toContain('QUERY');
  });
  it('names the shifts that there are where it knows none', async () => {
    const { code, err } = await run((outside) =>
      shift(outside, { folder, shift: '2025-01-01', json: false }),
    );
    expect(code).toBe(2);
    expect(err).toContain('RC7_2026-03-12_DAY');
  });
});

describe('termination', () => {
  const asked = (more: Partial<TerminationAsked>): TerminationAsked => ({
    folder,
    holes: ['MBRC003'],
    asThen: false,
    check: false,
    replay: false,
    json: false,
    ...more,
  });
  const ask = (more: Partial<TerminationAsked>) => run((outside) => termination(outside, asked(more)));

  it('says that it is advice, what it rests on, and each rule', async () => {
    const { code, out } = await ask({});
    expect(code).toBe(0);
    expect(out).toContain(
      'MBRC003, advice on ending the hole, on the log to 46 m; 8 m drilled and not logged',
    );
    expect(out).toContain('It is not a command to the rig.');
  });
  it('tells what it would say after rows that might come', async () => {
    const { out } = await ask({ whatIf: `p0${';.'.repeat(13)}`, json: true });
    const { shown } = JSON.parse(out);
    expect(shown.advice).toMatchObject({ verdict: 'ask', loggedMm: 60_000 });
    expect(shown.advice.by.map((each: { rule: { name: string } }) => each.rule.name)).toEqual([
      'stopping short',
    ]);
  });
  it('tells what it says at a depth: by today’s log, and by the log as it stood then', async () => {
    const today = JSON.parse((await ask({ at: '40', json: true })).out);
    const then = JSON.parse((await ask({ at: '40', asThen: true, json: true })).out);
    expect(today.shown.advice.loggedMm).toBe(40_000);
    expect(then.shown.advice.loggedMm).toBeLessThan(40_000);
  });
  it('refuses a depth that the hole has not come to, and says what tells of that', async () => {
    const { code, err } = await ask({ at: '60' });
    expect(code).toBe(2);
    expect(err).toContain('60 m is below all that is drilled or logged, 54 m');
    expect(err).toContain('--what-if');
  });
  it('says why a rule is now it does', async () => {
    const { out } = await ask({ why: 'barren tail' });
    expect(out).toContain('Advises "may end" where: {"all"');
  });
  it('replays the rules on finished holes', async () => {
    const { out } = await ask({ holes: ['MBRC001', 'MBRC002A'], replay: true, json: true });
    expect(
      JSON.parse(out).map((each: { hole: string; endedMm: number }) => [each.hole, each.endedMm]),
    ).toEqual([
      ['MBRC001', 150_000],
      ['MBRC002A', 90_000],
    ]);
  });
  it('checks the rules themselves', async () => {
    expect((await ask({ holes: [], check: true })).out).toBe('Nothing found.\n');
  });
  it.each([
    [{ holes: [] }, 'no hole is named'],
    [{ holes: ['MBRC001', 'MBRC003'] }, 'several holes are named'],
    [{ holes: ['MBRC099'] }, 'the project has no such hole'],
    [{ at: 'deep' }, 'deep is not a depth in metres'],
    [{ asThen: true }, 'it needs the depth that the rig had then'],
    [{ whatIf: 'p1;zz' }, 'zz is unknown'],
    [{ why: 'nosuch' }, 'no rule of this hole is called nosuch'],
  ])('refuses %j', async (more, problem) => {
    const { code, out, err } = await ask(more);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(problem);
  });
});
