import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { StreamFact } from '../../../src/hole/drilled.ts';
import type { Decision } from '../../../src/hole/ending.ts';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import type { Stamp } from '../../../src/quantity/stamp.ts';
import type { DirectionKnown, PaceKnown, Situation } from '../../../src/termination/evaluate/situation.ts';
import type { Cells, Row } from '../../../src/value/row.ts';
import { situation } from '../build.ts';

/** One case as a geologist wrote it: the hole, the advice, and why. */
export type Case = {
  readonly file: string;
  readonly title: string;
  readonly rules: readonly string[];
  readonly hole: string;
  /** `NOT YET`, `MAY END`, `END`, `ASK`, or `NO ADVICE` while the driller has stopped. */
  readonly verdict: string;
  /** What the sentence has to say beside the verdict. */
  readonly says: string;
  readonly because: string;
};

const FOLDER = import.meta.dirname;

/** Every case of the folder. A file is blocks parted by blank lines: `rules: …` for those that follow, or a case of four lines. */
export function readCases(): readonly Case[] {
  return readdirSync(FOLDER)
    .filter((name) => name.endsWith('.cases'))
    .flatMap((file) => casesIn(file, readFileSync(join(FOLDER, file), 'utf8')));
}

function casesIn(file: string, text: string): readonly Case[] {
  const cases: Case[] = [];
  let rules: readonly string[] = [];
  for (const block of text.trim().split(/\n{2,}/)) {
    const lines = block.split('\n').filter((line) => !line.startsWith('#'));
    const [title = '', hole = '', answer = '', because = '', ...more] = lines.map((line) => line.trim());
    if (lines.length === 0) continue;
    if (title.startsWith('rules: ')) {
      rules = title.slice('rules: '.length).split(', ');
      continue;
    }
    const parts = /^(NOT YET|MAY END|END|ASK|NO ADVICE): (.+)$/.exec(answer);
    if (parts === null || !because.startsWith('because ') || more.length > 0 || rules.length === 0)
      throw new Error(`${file}: not a case: ${block}`);
    cases.push({ file, title, rules, hole, verdict: parts[1]!, says: parts[2]!, because });
  }
  return cases;
}

/** A hole of a case: what the rules read, its names, and the depth at which someone is about to end it. */
export type CaseHole = {
  readonly at: Situation;
  readonly names: readonly string[];
  readonly ending: boolean;
};

/** Puts what a fact says into a situation. */
const add = (draft: Draft, more: Partial<Situation>): void => {
  draft.more = { ...draft.more, ...more };
};

type Draft = {
  rows: Row[];
  loggedM?: number;
  drilledM?: number;
  names: string[];
  ending: boolean;
  stream: StreamFact[];
  expects: Situation['expects'][number][];
  direction: DirectionKnown[];
  pace: PaceKnown[];
  decisions: Decision[];
  more: Partial<Situation>;
};

/** Reads the line of a hole: its log, and behind ` | ` what else is known of it. */
export function holeOf(text: string): CaseHole {
  const [log = '', ...facts] = text.split(' | ');
  const draft: Draft = {
    rows: log.split('; ').flatMap(rowsOf),
    names: ['MBRC001'],
    ending: false,
    stream: [],
    expects: [],
    direction: [],
    pace: [],
    decisions: [],
    more: {},
  };
  for (const fact of facts) take(draft, fact);
  const { names, ending, stream, expects, direction, pace, decisions, more } = draft;
  const topM = more.header === undefined ? 0 : more.header.logFromMm / 1000;
  const loggedM = coverFrom(draft.rows, topM);
  const drilledM = draft.drilledM ?? Math.max(loggedM, (draft.rows.at(-1)?.toMm ?? 0) / 1000);
  const at = situation(draft.rows, {
    loggedM,
    drilledM,
    stream,
    expects,
    direction,
    pace,
    decisions,
    ...more,
  });
  return { at, names, ending };
}

function coverFrom(rows: readonly Row[], topM: number): number {
  let foot = topM;
  for (const { fromMm, toMm } of rows) {
    if (fromMm / 1000 > foot) break;
    foot = Math.max(foot, toMm / 1000);
  }
  return foot;
}

const RANGE = /^(\d+(?:\.\d+)?)-(\d+(?:\.\d+)?)$/;
const mm = (metres: string | undefined) => depthFromMetres(Number(metres));

/** `0-20 py3`: a row a metre, or one row where it says `composite`; `-` is not logged (or cleared). */
function rowsOf(segment: string): readonly Row[] {
  const [range = '', ...words] = segment.trim().split(' ');
  const ends = RANGE.exec(range);
  if (ends === null) throw new Error(`not a part of a log: ${segment}`);
  if (words[0] === '-') return [];
  const [fromM, toM] = [Number(ends[1]), Number(ends[2])];
  const stepM = words.includes('composite') ? toM - fromM : 1;
  const said = cellsOf(words.filter((word) => word !== 'composite'));
  const rows: Row[] = [];
  for (let topM = fromM; topM < toM; topM += stepM)
    rows.push({
      fromMm: depthFromMetres(topM),
      toMm: depthFromMetres(Math.min(toM, topM + stepM)),
      ...said,
    });
  return rows;
}

const ABSENT = { absent: 'not observed' } as const;

/** Basalt without pyrite unless something else is said. */
function cellsOf(words: readonly string[]): Omit<Row, 'fromMm' | 'toMm'> {
  let cells: Cells = { rock: { code: 'BST' }, sulphides: { absent: 'none' } };
  let marks: Partial<Row> = {};
  for (const word of words) {
    const [kind, amount] = [/^[a-z+]+/.exec(word)?.[0], /[\d.?]+$/.exec(word)?.[0]];
    if (word === 'nr') marks = { noReturn: true };
    else if (word === 'asked') marks = { asked: ['already so'] };
    else if (word === 'asked-pyrite') marks = { asked: ['a percent step'], askedOf: ['sulphides'] };
    else if (word === 'asked-rock') marks = { asked: ['already so'], askedOf: ['rock'] };
    else if (word === 'granite') cells = { ...cells, rock: { code: 'GRN' } };
    else if (word === 'void') cells = { rock: { code: 'VOI' }, sulphides: ABSENT };
    else if (word === 'loss') cells = { rock: { code: 'LOR' }, sulphides: ABSENT };
    else if (word === 'rock?') cells = { ...cells, rock: ABSENT };
    else if (kind === '+granite')
      cells = { ...cells, rock: { code: 'BST', second: { code: 'GRN', percent: Number(amount) } } };
    else if (word === 'massive' || word === 'disseminated')
      cells = { ...cells, habit: { code: word === 'massive' ? 'MAS' : 'DIS' } };
    else if (word === 'py?') cells = { ...cells, sulphides: ABSENT };
    else if (word === 'trace') cells = { ...cells, sulphides: { percents: { PYR: 'trace' } } };
    else if (kind === 'py') cells = { ...cells, sulphides: { percents: { PYR: Number(amount) } } };
    else if (kind === 'cpy') cells = { ...cells, sulphides: { percents: { CPY: Number(amount) } } };
    else if (word === 'ms?') cells = { ...cells, suscept: ABSENT };
    else if (kind === 'ms') cells = { ...cells, suscept: { number: Number(amount) } };
    else throw new Error(`not a word of a log: ${word}`);
  }
  return marks.noReturn ? { cells: { rock: ABSENT, sulphides: ABSENT }, ...marks } : { cells, ...marks };
}

const AT = '2026-03-14T07:42:10+08:00' as Stamp;

/** What can be said of a hole beside its log: a pattern, and what it means. */
const FACTS: readonly (readonly [
  RegExp,
  (draft: Draft, ...said: readonly (string | undefined)[]) => void,
])[] = [
  [
    /^drilled (\S+)$/,
    (draft, depth) => {
      draft.drilledM = Number(depth);
    },
  ],
  [
    /^plan (\S+?)(?: target (\S+))?$/,
    (draft, depth, target) =>
      add(draft, {
        plan: { depthMm: mm(depth), ...(target === undefined ? {} : { targetMm: mm(target) }) },
      }),
  ],
  [
    /^from (\S+)$/,
    (draft, depth) =>
      add(draft, {
        header: { logFromMm: mm(depth), intervalMm: 1000, rodMm: 6000, firstRodOffsetMm: 0 },
      }),
  ],
  [
    /^rods (\S+) offset (\S+)$/,
    (draft, rod, offset) =>
      add(draft, {
        header: {
          logFromMm: depthFromMetres(0),
          intervalMm: 1000,
          rodMm: Number(rod) * 1000,
          firstRodOffsetMm: Number(offset) * 1000,
        },
      }),
  ],
  [
    /^(dry|moist|wet) (\S+)-(\S+)$/,
    (draft, moisture, from, to) =>
      draft.stream.push({ fromMm: mm(from), toMm: mm(to), moisture: moisture as 'wet' }),
  ],
  [
    /^recovery (\S+) (\S+)-(\S+)$/,
    (draft, recovery, from, to) =>
      draft.stream.push({ fromMm: mm(from), toMm: mm(to), recovery: recovery as 'poor' }),
  ],
  [
    /^expects (.+?)( void| fibre)? (\d+)(?:-(\d+))?$/,
    (draft, name, hazard, from, to) =>
      draft.expects.push({
        name: name!,
        fromMm: mm(from),
        ...(to === undefined ? {} : { toMm: mm(to) }),
        ...(hazard === undefined ? {} : { hazard: hazard.trim() as 'void' }),
      }),
  ],
  [
    /^(solid|cavity) (\S+)-(\S+)$/,
    (draft, felt, from, to) =>
      add(draft, {
        felt: [...(draft.more.felt ?? []), { fromMm: mm(from), toMm: mm(to), felt: felt as 'solid' }],
      }),
  ],
  [
    /^void cleared (\S+)-(\S+)$/,
    (draft, from, to) =>
      add(draft, {
        voidsCleared: [...(draft.more.voidsCleared ?? []), { fromMm: mm(from), toMm: mm(to) }],
      }),
  ],
  [/^elsewhere (\S+)$/, (draft, used) => add(draft, { usedElsewhereMm: Number(used) * 1000 })],
  [
    /^held by (\S+)(?:, (\S+ \S+) called)? at (\S+): (.+)$/,
    (draft, by, called, depth, because) =>
      add(draft, {
        hold: {
          ...{ by: by!, because: because!, sinceMm: mm(depth) },
          ...(called === undefined ? {} : { called }),
        },
      }),
  ],
  [
    /^stopped by (\S+): (.+)$/,
    (draft, by, because) => add(draft, { openStop: { by: by!, because: because! } }),
  ],
  [
    /^(\S+) m off plan at (\S+)$/,
    (draft, off, depth) => draft.direction.push({ atMm: mm(depth), offPlanMm: Number(off) * 1000 }),
  ],
  [
    /^target (reachable|unreachable|in doubt) at (\S+)$/,
    (draft, reach, depth) =>
      draft.direction.push({
        atMm: mm(depth),
        targetReachable: reach === 'reachable' ? 'yes' : reach === 'unreachable' ? 'no' : 'cannot tell',
      }),
  ],
  [
    /^(\S+) m an hour at (\S+)$/,
    (draft, pace, depth) => draft.pace.push({ atMm: mm(depth), metresPerHour: Number(pace) }),
  ],
  [
    /^(\S+) hours at (\S+)$/,
    (draft, hours, depth) => draft.pace.push({ atMm: mm(depth), hoursOnHole: Number(hours) }),
  ],
  [
    /^(extended|held|reopened|ended) at (\S+?)(?: logged to (\S+?))?(?: to (\S+?))?(?: answering (.+?))?(?: about (\S+))?(?: which was (.+?))?( uncalled)?(?: settling (.+))?$/,
    (draft, kind, depth, logged, to, rule, about, state, uncalled, settles) =>
      draft.decisions.push({
        kind: kind as 'extended',
        depthMm: mm(depth),
        loggedMm: mm(logged ?? depth),
        verdict: 'not yet',
        rules: rule === undefined ? [] : [{ rule, state: (state ?? 'met') as 'met', words: about ?? 'then' }],
        ...(to === undefined ? {} : { toMm: mm(to) }),
        reason: 'zone open',
        ...(uncalled === undefined ? { called: 'Ines Falk' } : {}),
        ...(settles === undefined ? {} : { settles: settles === 'none' ? [] : settles.split(' and ') }),
        rulesHash: 'a',
        schemaHash: 'b',
        at: AT,
        by: 'NOK',
      }),
  ],
  [
    /^being ended$/,
    (draft) => {
      draft.ending = true;
    },
  ],
  [
    /^hole (\S+)$/,
    (draft, name) => {
      draft.names = [name!];
    },
  ],
  [/^planned as (\S+)$/, (draft, name) => draft.names.push(name!)],
];

function take(draft: Draft, fact: string): void {
  for (const [pattern, meaning] of FACTS) {
    const parts = pattern.exec(fact);
    if (parts === null) continue;
    meaning(draft, ...parts.slice(1));
    return;
  }
  throw new Error(`nothing known of a hole: ${fact}`);
}
