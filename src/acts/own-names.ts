import { headerOf, planOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { metres } from '../quantity/depth.ts';
import type { Document } from '../record/document.ts';
import { parseBagNumber } from '../sampling/numbers/bag-number.ts';
import { exampleStrokes } from '../shorthand/example-strokes.ts';
import type { HoleAt, OwnNames } from '../shorthand/own-names.ts';
import { headsOf } from '../standing/heads.ts';
import { nextRod } from '../standing/rods.ts';
import { streamAheadOf } from '../standing/stream.ts';

/** Who is at the keyboard, and the hole in hand. */
interface AtHand {
  readonly person?: string | undefined;
  readonly hole?: Document | undefined;
}

/** Names of a project for examples: its bag numbers, the hole after its last one, somebody else who is called, strokes of its schema. */
export function ownNames(
  project: Project,
  holes: Iterable<Document>,
  { person, hole }: AtHand = {},
): OwnNames {
  const { settings, sampling, schema } = project;
  const others = settings.people.filter(({ initials }) => initials !== person);
  const called =
    others.find(({ role }) => role === 'camp') ??
    others.find(({ role }) => role === 'geologist') ??
    others.find(({ role }) => role !== 'driller');
  const { numbers, blocks } = sampling;
  return {
    bagPrefix: blocks[0]?.first.prefix ?? numbers.prefixes[0] ?? '',
    bagDigits: numbers.digits,
    hole: nextName([...holes].filter(({ kind }) => kind === 'hole').map((each) => headerOf(each).name)),
    person: called?.name ?? 'the office',
    driller: settings.people.find(({ role }) => role === 'driller')?.name ?? 'the driller',
    strokes: exampleStrokes(schema),
    at: hole === undefined ? undefined : () => holeAt(project, hole),
  };
}

/** Where examples about a hole are near to. */
function holeAt(project: Project, hole: Document): HoleAt {
  const { drilledMm, loggedMm } = headsOf(hole);
  const [next] = streamAheadOf(project, hole, 1).upcoming;
  const plan = planOf(hole);
  return {
    nextBag: next === undefined ? undefined : parseBagNumber(project.sampling.numbers, next.number)?.serial,
    drilledM: metres(drilledMm),
    loggedM: metres(loggedMm),
    plannedM: plan === undefined ? undefined : metres(plan.depthMm),
    rodM: metres(nextRod(hole).depthMm),
  };
}

/** The name with the next number behind the last of these that ends in one: ABRC008 behind ABRC007. */
function nextName(names: readonly string[]): string {
  const last = [...names]
    .sort((a, b) => a.localeCompare(b, 'en', { numeric: true }))
    .findLast((name) => /\d$/.test(name));
  const [, stem = 'RC', number = '000'] = /^(.*?)(\d+)$/.exec(last ?? '') ?? [];
  return `${stem}${String(Number(number) + 1).padStart(number.length, '0')}`;
}
