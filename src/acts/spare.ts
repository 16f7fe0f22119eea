import { ok, type Result, refused } from '../finding/finding.ts';
import type { Bag } from '../hole/bags.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, holeThings } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Change, Document, Thing } from '../record/document.ts';
import { choicesByNumber, reservedFor } from '../sampling/scheme/scheme.ts';
import { bagOf } from '../sampling/stream/issue.ts';
import { freeNumbers, stream } from '../sampling/stream/stream.ts';
import type { Command } from '../shorthand/command.ts';
import { inOwnNames } from '../shorthand/own-names.ts';
import { streamStateOf } from '../standing/stream.ts';
import { ownNames } from './own-names.ts';
import { numberToPlace } from './place-bag.ts';

type SpareCommand = Extract<Command, { readonly does: 'spare' }>;

/**
 * A calico is torn and a spare takes what was in it, or what is to come into it: one deed. The torn number is spoiled and keeps its metre, so that what
 * follows it (a duplicate of it too) stays in step; the spare is the last number of the hole's run that is meant for a metre, or the one said: of the
 * run, of another one, or from outside.
 */
export function replaceBySpare(
  project: Project,
  hole: Document,
  { number: text, spare, reason }: SpareCommand,
  maker: Maker,
  documents: Iterable<Document>,
): Result<Made> {
  const all = [...documents];
  const torn = numberToPlace(project, hole, text, all);
  if (!torn.ok) return torn;
  const held = heldIn(project, hole, torn.value);
  if (held === undefined) return refused(holdsNothing(hole, torn.value));
  const chosen = spare === undefined ? nextSpare(project, hole) : numberToPlace(project, hole, spare, all);
  if (!chosen.ok) return chosen;
  const taken = holeThings(hole, 'bags').some(([, bag]) => bag.number === chosen.value);
  if (taken || chosen.value === torn.value) return refused(spareUsed(hole, chosen.value));
  return ok({
    what: `bag ${torn.value} ${reason}: ${chosen.value} takes its place`,
    changes: [
      ...torned(hole, torn.value, held, reason, maker),
      ...placed(held, torn.value, chosen.value, reason, maker),
      ...followed(hole, torn.value, chosen.value),
    ],
  });
}

/** What a number holds, or is to hold: a bag that is issued, else one that comes. */
function heldIn(project: Project, hole: Document, number: string): Bag | undefined {
  const issued = holeThings(hole, 'bags').find(([, bag]) => bag.number === number)?.[1];
  if (issued !== undefined)
    return issued.kind === 'spoiled' && issued.fromMm === undefined ? undefined : issued;
  const coming = [...stream(project.sampling, streamStateOf(hole))].find((each) => each.number === number);
  return coming === undefined ? undefined : bagOf(project.sampling, coming);
}

/** The last number labelled for the hole that is free and meant for a metre: spares are at the end of the run. */
function nextSpare(project: Project, hole: Document): Result<string> {
  const state = streamStateOf(hole);
  const choices = choicesByNumber(state.choices);
  const free = [...freeNumbers(project.sampling, state)].findLast(
    (number) => reservedFor(project.sampling, number, choices).kind === 'primary',
  );
  return free === undefined ? refused(noSpare(project, hole)) : ok(free);
}

function torned(hole: Document, number: string, held: Bag, reason: string, maker: Maker): readonly Change[] {
  const { fromMm, toMm, rank } = held;
  const metre =
    fromMm === undefined || toMm === undefined
      ? {}
      : { fromMm, toMm, ...(rank === undefined ? {} : { rank }) };
  const there = holeThings(hole, 'bags').find(([, bag]) => bag.number === number);
  if (there === undefined)
    return [
      { put: ['bags', maker.newId()], thing: { number, kind: 'spoiled', ...metre, byHand: true, reason } },
    ];
  const unset = ['of', 'method', 'material', 'filled'].filter((field) => field in there[1]);
  return [
    { patch: ['bags', there[0]], set: { kind: 'spoiled', reason }, ...(unset.length === 0 ? {} : { unset }) },
  ];
}

function placed(held: Bag, torn: string, number: string, reason: string, maker: Maker): readonly Change[] {
  const kind = held.kind === 'spoiled' ? 'primary' : held.kind;
  const thing: Bag = { ...held, number, kind, byHand: true, reason: `in place of ${torn}: ${reason}` };
  return [{ put: ['bags', maker.newId()], thing: thing as Thing }];
}

/** Duplicates of the torn bag repeat the spare. */
function followed(hole: Document, torn: string, spare: string): readonly Change[] {
  return holeThings(hole, 'bags')
    .filter(([, bag]) => bag.of === torn)
    .map(([id]): Change => ({ patch: ['bags', id], set: { of: spare } }));
}

const placeOf = (hole: Document, number: string) => ({ hole: headerOf(hole).name, thing: `bag ${number}` });

const holdsNothing = (hole: Document, number: string) =>
  REFUSALS.notThere.at(placeOf(hole, number), {
    problem: 'nothing is in it, and nothing is to come into it',
    remedy: `Nothing needs a spare. If it is torn, type ;spoiled ${number.slice(-3)} torn.`,
  });

const spareUsed = (hole: Document, number: string) =>
  REFUSALS.bagUsed.at(placeOf(hole, number), {
    problem: 'the number is on a bag of this hole already',
    remedy: 'Read the spare again and give its last digits after the torn one’s.',
  });

const noSpare = (project: Project, hole: Document) =>
  REFUSALS.notThere.at(
    { hole: headerOf(hole).name },
    {
      problem: 'no number of this hole is left for a spare',
      remedy: inOwnNames(
        'Give the whole number on the spare after the torn one’s: ;spare 163 ZQ000999 torn.',
        ownNames(project, [hole]),
      ),
    },
  );
