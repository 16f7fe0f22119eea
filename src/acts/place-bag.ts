import { ok, type Result, refused } from '../finding/finding.ts';
import type { Bag } from '../hole/bags.ts';
import { amendThing, issueBags } from '../hole/commands/drilled.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, holeNouns, holeThings } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Depth } from '../quantity/depth.ts';
import { formatInterval, type Interval } from '../quantity/interval.ts';
import type { Document, Id, Thing } from '../record/document.ts';
import { numberAmong, numbersOfHole } from '../sampling/numbers/number-named.ts';
import { materialFor } from '../sampling/scheme/rotation.ts';
import { serialOf } from '../sampling/scheme/scheme.ts';
import { isCovered } from '../sampling/stream/no-sample.ts';
import type { Command } from '../shorthand/command.ts';
import { noReturnOf, otherHoles, streamStateOf } from '../standing/stream.ts';

type PlaceCommand = Extract<Command, { readonly does: 'bag' | 'control' | 'spoiled bag' }>;

/**
 * A bag placed by hand: what was said of it, and nothing more. It never moves the stream: numbers between it and the next stay due. A number that
 * is on a bag of this hole already gets what is said written over it.
 */
export function placeBag(
  project: Project,
  hole: Document,
  command: PlaceCommand,
  maker: Maker,
  documents: Iterable<Document>,
  insisted = false,
): Result<Made> {
  // A number that another hole has used is taken out of use here: nothing is put into it.
  const others = command.does === 'spoiled bag' ? [] : documents;
  const named = numberToPlace(project, hole, command.number, others);
  if (!named.ok) return named;
  const number = named.value;
  const issued = holeThings(hole, 'bags').find(([, each]) => each.number === number);
  if (command.does === 'spoiled bag') {
    if (issued === undefined)
      return issueBags(
        hole,
        `bag ${number} spoiled: ${command.reason}`,
        [spoiledBag(number, command.reason)],
        maker,
      );
    // What was in it stays on record: its metre counts as sampled, and lost.
    const lost = { kind: 'spoiled', reason: command.reason };
    return amendThing(hole, 'bags', issued[0], lost, `bag ${number} spoiled: ${command.reason}`);
  }
  const empty = insisted ? undefined : nothingCameUp(hole, command);
  if (empty !== undefined) return refused(empty);
  const bag = bagSaid(project, hole, number, command);
  if (issued !== undefined) return corrected(issued, bag);
  const rod = rodOf(hole, bag);
  const placed = { ...bag, byHand: true as const, ...(rod === undefined ? {} : { rod }) };
  return issueBags(hole, `bag ${number} placed by hand: ${inWords(bag)}`, [placed], maker);
}

/** The number meant, whole or by its last digits; refused where none is meant, or where it is on a bag of another hole. */
export function numberToPlace(
  project: Project,
  hole: Document,
  text: string,
  documents: Iterable<Document>,
): Result<string> {
  const place = { hole: headerOf(hole).name, thing: `bag ${text}` };
  const { sampling } = project;
  const named = numberAmong(sampling.numbers, numbersOfHole(sampling, streamStateOf(hole)), text, {
    kind: REFUSALS.notThere,
    place,
    problem: 'no number labelled for this hole ends so',
    remedy:
      'Type its last digits as printed on the calico, or the whole number with its prefix where it is from outside.',
  });
  if (!named.ok) return named;
  const number = named.value;
  const other = otherHoles(documents, hole).find((each) =>
    each.bags.some((bag) => bag.number === number && bag.kind !== 'spoiled'),
  );
  if (other === undefined) return ok(number);
  return refused(
    REFUSALS.bagUsed.at(place, {
      problem: `${number} is on a bag of ${other.hole} already`,
      remedy:
        'Read the calico again; a number is used once, ever. If it is right, write another number on it.',
    }),
  );
}

/** Asked before a sample is placed on a metre of which nothing came up: such a bag would go to the laboratory empty. */
function nothingCameUp(hole: Document, command: PlaceCommand) {
  if (command.does !== 'bag') return undefined;
  const { fromMm, toMm, number } = command;
  const metre = { fromMm, toMm };
  if (!isCovered(metre, noReturnOf(hole))) return undefined;
  return REFUSALS.asked.at(
    { hole: headerOf(hole).name, fromMm, toMm },
    {
      excerpt: number,
      problem: `nothing came up at ${formatInterval(metre)}: it is no return, loss of return or a void by the log or the note at the splitter`,
      remedy: 'Look into the calico. If there is rock of this metre in it, add = at the end.',
    },
  );
}

function spoiledBag(number: string, reason: string): Bag {
  return { number, kind: 'spoiled', byHand: true, reason };
}

/** What is said of a bag that is there: its contents are put right, or it is known to hold something where its metre gave no return. */
function corrected([id, there]: readonly [Id, Bag], bag: Bag): Result<Made> {
  const isSame = (['kind', 'fromMm', 'toMm', 'of'] as const).every((field) => there[field] === bag[field]);
  if (isSame)
    return ok({
      what: `bag ${bag.number} is there: ${inWords(bag)}`,
      changes: there.filled === true ? [] : [{ patch: ['bags', id], set: { filled: true } }],
    });
  const { number: _number, ...set } = { ...bag, reason: 'corrected by hand', filled: true as const };
  const unset = ['fromMm', 'toMm', 'rank', 'of', 'method', 'material'].filter(
    (field) => field in there && !(field in set),
  );
  return ok({
    what: `bag ${bag.number} corrected by hand: ${inWords(bag)}`,
    changes: [{ patch: ['bags', id], set: set as Thing, ...(unset.length === 0 ? {} : { unset }) }],
  });
}

function inWords({ kind, fromMm, toMm }: Bag): string {
  return fromMm === undefined || toMm === undefined ? kind : `${kind} ${formatInterval({ fromMm, toMm })}`;
}

/** The rod whose metres a bag holds, where it is done: the bag lies with that one, not with the next. */
export function rodOf(hole: Document, { toMm }: Bag): Id | undefined {
  if (toMm === undefined) return undefined;
  const [above] = holeThings(hole, 'rods')
    .filter(([, rod]) => rod.depthMm >= toMm)
    .sort(([, a], [, b]) => a.depthMm - b.depthMm);
  return above?.[0];
}

function bagSaid(
  project: Project,
  hole: Document,
  number: string,
  command: Exclude<PlaceCommand, { readonly does: 'spoiled bag' }>,
): Bag {
  const reason = 'placed by hand';
  if (command.does === 'control') {
    const material = materialFor(project.sampling, command.kind, serialOf(project.sampling.numbers, number));
    return { number, kind: command.kind, reason, ...(material === undefined ? {} : { material }) };
  }
  const { fromMm, toMm } = command;
  const metre = { fromMm: fromMm as Depth, toMm: toMm as Depth, rank: rankOf(project, command), reason };
  if (command.kind === 'primary') return { number, kind: 'primary', ...metre };
  const primary = holeNouns(hole, 'bags').find(
    (each) => each.kind === 'primary' && each.fromMm === fromMm && each.toMm === toMm,
  );
  const of = primary === undefined ? {} : { of: primary.number };
  return { number, kind: 'field duplicate', ...metre, method: project.sampling.duplicates, ...of };
}

/** A bag of a metre at most, placed by hand where composites are taken, is a single metre beside them. */
function rankOf(
  { sampling }: Project,
  { fromMm, toMm }: Pick<Interval, 'fromMm' | 'toMm'>,
): 'metre' | 'composite' {
  return sampling.rank === 'composite' && sampling.lengthMm > 1000 && toMm - fromMm <= 1000
    ? 'metre'
    : sampling.rank;
}
