import type { Bag } from '../../hole/bags.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { formatInterval } from '../../quantity/interval.ts';
import { bagNumberDistance, parseBagNumber } from '../numbers/bag-number.ts';
import { numberLine } from '../numbers/number-line.ts';
import type { Sampling } from '../sampling.ts';
import { bagOf } from '../stream/issue.ts';
import { isNoSample } from '../stream/no-sample.ts';
import { type StreamState, stream, streamFoot } from '../stream/stream.ts';
import { type MismatchKind, NEAR_SPLITTER, type OtherHole } from './mismatch.ts';
import { anotherBundle } from './mismatches/another-bundle.ts';
import { controlForgotten } from './mismatches/control-forgotten.ts';
import { foreign } from './mismatches/foreign.ts';
import { keptNumberUsed } from './mismatches/kept-number-used.ts';
import { lastHolesBags } from './mismatches/last-holes-bags.ts';
import { oneAhead } from './mismatches/one-ahead.ts';
import { oneBehind } from './mismatches/one-behind.ts';
import { several } from './mismatches/several.ts';
import { skipped } from './mismatches/skipped.ts';
import { spoiledUsed } from './mismatches/spoiled-used.ts';
import { swapped } from './mismatches/swapped.ts';
import { usedTwice } from './mismatches/used-twice.ts';

/** Where a scanned bag is: beside the pile of a metre, or under a chute of the splitter. Left out, only its number is checked. */
export interface ScannedAt {
  /** Any depth within the metre, millimetres. */
  readonly depthMm: number;
  readonly chute?: 'first' | 'second';
}

/** What a scan says. */
export interface Scan {
  readonly number: string;
  /** What the record, or the stream ahead, has under this number, in words. */
  readonly known: string;
  readonly agrees: boolean;
  readonly named?: {
    readonly code: string;
    readonly name: string;
    readonly happened: string;
    readonly ground: string;
  };
}

/** Checks one scanned bag as a rod check would: its number, and where it is if that is said. */
export function scanCheck(
  sampling: Sampling,
  state: StreamState,
  number: string,
  at?: ScannedAt,
  others: readonly OtherHole[] = [],
): Scan {
  const unknown = notThisHoles(sampling, state, number, others);
  if (unknown !== undefined) return scan(number, unknown.known, unknown.kind);
  const issued = state.bags.find((bag) => bag.number === number);
  const ahead = issued ?? aheadOf(sampling, state, number, at);
  if (ahead === undefined) {
    const wait = state.putOffs.find((each) => each.number === number);
    if (wait !== undefined) return scan(number, `kept for a ${wait.kind} put off`, at && controlForgotten);
    return scan(number, 'passed over, or not reached yet', at && skipped);
  }
  const empty = isNoSample(ahead, state.noReturn ?? []);
  const known = inWords(ahead, issued !== undefined, empty);
  if (empty && at !== undefined && isIn(ahead, at))
    return { number, known, agrees: false, named: onEmptyMetre(ahead) };
  return scan(
    number,
    known,
    at === undefined ? undefined : misplaced(sampling, state, ahead, issued !== undefined, at),
  );
}

/** What a kind means where one calico is compared with one pile: no row was read, and nothing is known of the rods above. */
const SEEN_AT_PILE: { readonly [code: string]: Pick<MismatchKind, 'happened' | 'ground'> } = {
  [oneAhead.code]: {
    happened: 'The record has it a metre further down.',
    ground:
      'Scan the calicos above it, each at its pile (;scan, its depth and its digits), up to one that is where it belongs. Between the two a number was passed over.',
  },
  [oneBehind.code]: {
    happened: 'The record has it a metre further up.',
    ground:
      'Scan the calicos above it, each at its pile (;scan, its depth and its digits), up to one that is where it belongs. Between the two a metre has no calico.',
  },
};

function scan(number: string, known: string, kind: MismatchKind | undefined): Scan {
  if (kind === undefined) return { number, known, agrees: true };
  const { code, name } = kind;
  const { happened, ground: what } = SEEN_AT_PILE[code] ?? kind;
  const ground = kind.nearSplitter ? `${NEAR_SPLITTER} ${what}` : what;
  return { number, known, agrees: false, named: { code, name, happened, ground } };
}

/** A number that this hole can't use: foreign, spoiled, or labelled for another hole. */
function notThisHoles(
  sampling: Sampling,
  state: StreamState,
  number: string,
  others: readonly OtherHole[],
): { readonly known: string; readonly kind: MismatchKind } | undefined {
  if (parseBagNumber(sampling.numbers, number) === undefined)
    return { known: 'no number of this project', kind: foreign };
  const gone = [state, ...others].flatMap((each) => each.bags).find((bag) => bag.number === number);
  if (gone?.kind === 'spoiled')
    return { known: `spoiled: ${gone.reason ?? 'no reason given'}`, kind: spoiledUsed };
  const isHere = state.bags.some((bag) => bag.number === number);
  if (isHere || numberLine(sampling.numbers, state.bagRuns).placeOf(number) !== undefined) return undefined;
  const other = others.find(
    (each) =>
      each.bags.some((bag) => bag.number === number) ||
      numberLine(sampling.numbers, each.bagRuns).placeOf(number) !== undefined,
  );
  if (other !== undefined) return { known: `labelled for ${other.hole}`, kind: lastHolesBags };
  return isOfBlock(sampling, number)
    ? { known: 'of this project’s numbers and labelled for no hole yet', kind: anotherBundle }
    : { known: 'of no hole and no block of this project', kind: foreign };
}

/** True of a number that lies in the block of a rig; where the project keeps no blocks, of any number of its form. */
function isOfBlock({ numbers, blocks }: Sampling, number: string): boolean {
  const at = parseBagNumber(numbers, number);
  return (
    blocks.length === 0 ||
    blocks.some(({ first, last }) => {
      const [above, below] =
        at === undefined ? [-1, -1] : [bagNumberDistance(first, at) ?? -1, bagNumberDistance(at, last) ?? -1];
      return above >= 0 && below >= 0;
    })
  );
}

/** The bag that the stream has coming under a number, looked for down to where the scanned bag is and a rod beyond. */
function aheadOf(
  sampling: Sampling,
  state: StreamState,
  number: string,
  at: ScannedAt | undefined,
): Bag | undefined {
  const deepest = Math.max(at?.depthMm ?? 0, state.drilledMm) + 20 * sampling.lengthMm;
  for (const each of stream(sampling, state)) {
    if (each.number === number) return bagOf(sampling, each);
    if (at !== undefined && each.dueMm > deepest) return undefined;
  }
  return undefined;
}

function misplaced(
  sampling: Sampling,
  state: StreamState,
  bag: Bag,
  isIssued: boolean,
  at: ScannedAt,
): MismatchKind | undefined {
  if (bag.fromMm === undefined || bag.toMm === undefined)
    return at.chute === undefined ? undefined : controlForgotten;
  if (isIssued && at.depthMm >= streamFoot(sampling, state).mm) return usedTwice;
  if (at.depthMm >= bag.fromMm && at.depthMm < bag.toMm) {
    const chute = bag.kind === 'field duplicate' ? 'second' : 'first';
    return at.chute === undefined || at.chute === chute ? undefined : swapped;
  }
  if (at.depthMm >= bag.toMm && at.depthMm < bag.toMm + sampling.lengthMm)
    return isNoSample(bag, state.noReturn ?? []) ? keptNumberUsed : oneBehind;
  if (at.depthMm < bag.fromMm && at.depthMm >= bag.fromMm - sampling.lengthMm) return oneAhead;
  return several;
}

function isIn({ fromMm, toMm }: Bag, { depthMm }: ScannedAt): boolean {
  return fromMm !== undefined && toMm !== undefined && depthMm >= fromMm && depthMm < toMm;
}

/** A calico on a metre of which nothing came up: nothing of that metre can be in it. */
function onEmptyMetre({ number, fromMm, toMm }: Bag): NonNullable<Scan['named']> {
  const metre =
    fromMm === undefined || toMm === undefined ? '' : `${formatDepth(fromMm)}-${formatDepth(toMm)}`;
  return {
    code: 'bag-on-empty-metre',
    name: 'a calico on a metre that gave nothing',
    happened: 'By the log or the note at the splitter nothing came up there.',
    ground: `Look into the calico. Empty: its number stays kept as no sample. Rock of this metre in it: ;bag ${metre} ${number.slice(-3)} =`,
  };
}

function inWords(bag: Bag, isIssued: boolean, empty: boolean): string {
  if (empty && bag.fromMm !== undefined && bag.toMm !== undefined)
    return `kept as no sample: nothing came up at ${formatInterval({ fromMm: bag.fromMm, toMm: bag.toMm })}`;
  const held =
    bag.fromMm === undefined || bag.toMm === undefined
      ? bag.kind
      : `${bag.kind} ${formatInterval({ fromMm: bag.fromMm, toMm: bag.toMm })}`;
  return isIssued ? held : `${held}, coming`;
}
