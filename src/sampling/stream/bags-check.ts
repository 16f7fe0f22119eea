import type { Finding } from '../../finding/finding.ts';
import type { Bag, BagRun, ControlChoice } from '../../hole/bags.ts';
import { overlaps } from '../../quantity/interval.ts';
import {
  bagElsewhere,
  controlAsMetre,
  duplicateTwin,
  duplicateWithoutPrimary,
  metreTwice,
  numberNotOurs,
  runBackwards,
  runOutside,
  runOverlap,
  usedTwice,
} from '../findings.ts';
import { parseBagNumber } from '../numbers/bag-number.ts';
import { numberLine } from '../numbers/number-line.ts';
import type { Sampling } from '../sampling.ts';
import { type Chosen, choicesByNumber, reservedFor } from '../scheme/scheme.ts';

/** The bags of one hole, with its name for the place of a finding. */
export interface BaggedHole {
  readonly hole: string;
  readonly bags: readonly Bag[];
  readonly bagRuns: readonly BagRun[];
  readonly choices: readonly Pick<ControlChoice, 'number' | 'kind'>[];
}

/** Everything that is wrong with the bags of a project: within each hole, and between holes. */
export function checkBags(sampling: Sampling, holes: readonly BaggedHole[]): readonly Finding[] {
  return [
    ...holes.flatMap((hole) => checkHole(sampling, hole, holes)),
    ...checkUsedTwice(holes),
    ...checkRunOverlaps(sampling, holes),
  ];
}

function checkHole(sampling: Sampling, hole: BaggedHole, holes: readonly BaggedHole[]): readonly Finding[] {
  const choices = choicesByNumber(hole.choices);
  return [
    ...hole.bagRuns.flatMap((run) => checkRun(sampling, hole.hole, run)),
    ...hole.bags.flatMap((bag) => checkNumber(sampling, hole, bag, choices, holes)),
    ...hole.bags.flatMap((bag) => checkDuplicate(hole, bag)),
    ...checkMetres(sampling, hole),
  ];
}

function checkRun(sampling: Sampling, hole: string, run: BagRun): readonly Finding[] {
  const place = { hole, thing: `bags ${run.first} to ${run.last}` };
  const first = parseBagNumber(sampling.numbers, run.first);
  const last = parseBagNumber(sampling.numbers, run.last);
  if (first === undefined || last === undefined || first.prefix !== last.prefix || last.serial < first.serial)
    return [
      runBackwards.at(place, {
        problem: 'This run holds no numbers.',
        remedy:
          'Give its first and its last number, of one prefix and the form that the project gives its numbers.',
      }),
    ];
  const block = sampling.blocks.find(
    (each) =>
      each.rig === run.rig &&
      each.first.prefix === first.prefix &&
      each.first.serial <= first.serial &&
      last.serial <= each.last.serial,
  );
  if (block !== undefined || sampling.blocks.length === 0) return [];
  return [
    runOutside.at(place, {
      problem: `These numbers are not all in the block of ${run.rig}.`,
      remedy: 'Take numbers of its block, or give the block to this rig in project.json.',
    }),
  ];
}

function checkNumber(
  sampling: Sampling,
  hole: BaggedHole,
  bag: Bag,
  choices: ReadonlyMap<string, Chosen>,
  holes: readonly BaggedHole[],
): readonly Finding[] {
  const place = placeOf(hole, bag);
  if (parseBagNumber(sampling.numbers, bag.number) === undefined)
    return [
      numberNotOurs.at(place, {
        excerpt: bag.number,
        problem: `${bag.number} has not the form of this project's numbers.`,
        remedy:
          'Look at the calico and correct the number, or mark it spoiled (;spoiled) and bag the metre again.',
      }),
    ];
  if (bag.kind === 'spoiled') return [];
  if (numberLine(sampling.numbers, hole.bagRuns).placeOf(bag.number) === undefined)
    return notLabelledHere(sampling, hole, bag, holes);
  const { kind } = reservedFor(sampling, bag.number, choices);
  if (kind === bag.kind || bag.reason !== undefined) return [];
  return [
    controlAsMetre.at(place, {
      excerpt: bag.kind,
      problem: `${bag.number} is kept for a ${kind} and holds a ${bag.kind}.`,
      remedy: 'Open the bag. If it is right, say why; if not, correct its kind.',
    }),
  ];
}

/** A number from outside is a spare where someone placed it by hand; one of another hole's run is missed there until it is spoiled there. */
function notLabelledHere(
  sampling: Sampling,
  hole: BaggedHole,
  bag: Bag,
  holes: readonly BaggedHole[],
): readonly Finding[] {
  const owner = holes.find(
    (each) => each !== hole && numberLine(sampling.numbers, each.bagRuns).placeOf(bag.number) !== undefined,
  );
  if (owner?.bags.some((each) => each.number === bag.number && each.kind === 'spoiled')) return [];
  if (owner === undefined && bag.byHand === true) return [];
  return [
    bagElsewhere.at(placeOf(hole, bag), {
      problem:
        owner === undefined
          ? `${bag.number} was not labelled for this hole.`
          : `${bag.number} was labelled for ${owner.hole}, not for this hole.`,
      remedy:
        owner === undefined
          ? 'Read the calico again. If it is right, record the run it is from: ;numbered and its first and last number.'
          : `Read the calico again. If it is right, take its number out of ${owner.hole}: there ;spoiled ${bag.number} used in ${hole.hole}.`,
    }),
  ];
}

function checkDuplicate(hole: BaggedHole, bag: Bag): readonly Finding[] {
  if (bag.kind !== 'field duplicate') return [];
  const primary = hole.bags.find((each) => each.number === bag.of && each.kind === 'primary');
  if (primary === undefined)
    return [
      duplicateWithoutPrimary.at(placeOf(hole, bag), {
        problem: `${bag.number} repeats no primary sample of this hole.`,
        remedy: 'Say the number of the primary that it repeats, or mark it spoiled (;spoiled).',
      }),
    ];
  if (primary.fromMm === bag.fromMm && primary.toMm === bag.toMm) return [];
  return [
    duplicateTwin.at(placeOf(hole, bag), {
      problem: `${bag.number} does not hold the metre of its primary ${primary.number}.`,
      remedy: 'Look at both bags and correct the one that is wrong.',
    }),
  ];
}

function checkMetres(sampling: Sampling, hole: BaggedHole): readonly Finding[] {
  const primaries = hole.bags
    .flatMap((bag) => {
      const { fromMm, toMm } = bag;
      return bag.kind === 'primary' && fromMm !== undefined && toMm !== undefined
        ? [{ bag, fromMm, toMm }]
        : [];
    })
    .sort((a, b) => a.fromMm - b.fromMm);
  return primaries.flatMap((lower, index) =>
    primaries
      .slice(0, index)
      .filter((upper) => overlaps(upper, lower))
      .filter((upper) => (upper.bag.rank ?? sampling.rank) === (lower.bag.rank ?? sampling.rank))
      .map((upper) =>
        metreTwice.at(placeOf(hole, lower.bag), {
          problem: `${upper.bag.number} and ${lower.bag.number} both hold this metre.`,
          remedy: 'Look at both bags beside their piles and correct the one that is wrong.',
        }),
      ),
  );
}

function checkUsedTwice(holes: readonly BaggedHole[]): readonly Finding[] {
  const seen = new Map<string, string>();
  return holes.flatMap((hole) =>
    hole.bags.flatMap((bag) => {
      // A number that was only taken out of use here holds nothing.
      if (bag.kind === 'spoiled' && bag.fromMm === undefined) return [];
      const before = seen.get(bag.number);
      seen.set(bag.number, before ?? hole.hole);
      if (before === undefined) return [];
      return [
        usedTwice.at(placeOf(hole, bag), {
          excerpt: bag.number,
          problem: `${bag.number} is on another bag too, in ${before}.`,
          remedy: 'Find both calicos. Write an unused number on the later one and correct its record.',
        }),
      ];
    }),
  );
}

function checkRunOverlaps(sampling: Sampling, holes: readonly BaggedHole[]): readonly Finding[] {
  const runs = holes.flatMap((hole) =>
    hole.bagRuns.flatMap((run) => {
      const first = parseBagNumber(sampling.numbers, run.first);
      const last = parseBagNumber(sampling.numbers, run.last);
      return first === undefined || last === undefined ? [] : [{ hole: hole.hole, run, first, last }];
    }),
  );
  return runs.flatMap((one, index) =>
    runs
      .slice(0, index)
      .filter((other) => other.first.prefix === one.first.prefix)
      .filter((other) => other.first.serial <= one.last.serial && one.first.serial <= other.last.serial)
      .map((other) =>
        runOverlap.at(
          { hole: one.hole, thing: `bags ${one.run.first} to ${one.run.last}` },
          {
            excerpt: `${other.run.first} to ${other.run.last}`,
            problem: `Some of these numbers are labelled for ${other.hole} already.`,
            remedy: 'Label other numbers for this hole, after the last run.',
          },
        ),
      ),
  );
}

function placeOf(hole: BaggedHole, bag: Bag) {
  const depth =
    bag.fromMm === undefined || bag.toMm === undefined ? {} : { fromMm: bag.fromMm, toMm: bag.toMm };
  return { hole: hole.hole, ...depth, thing: `bag ${bag.number}` };
}
