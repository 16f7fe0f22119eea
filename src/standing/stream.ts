import type { Bag } from '../hole/bags.ts';
import type { StreamFact } from '../hole/drilled.ts';
import { isOver } from '../hole/header.ts';
import { headerOf, holeNouns, holeThing, holeThings, ownFromMm, rowsDown } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Interval } from '../quantity/interval.ts';
import { within } from '../quantity/interval.ts';
import type { Document } from '../record/document.ts';
import { parseBagNumber } from '../sampling/numbers/bag-number.ts';
import { besideStream, withPlaced } from '../sampling/rod/lying.ts';
import type { OtherHole } from '../sampling/rod/mismatch.ts';
import { isNoSample, withNoSamples } from '../sampling/stream/no-sample.ts';
import { type StreamAhead, type StreamState, streamAhead, type Upcoming } from '../sampling/stream/stream.ts';
import { sharesIn } from '../value/cell.ts';
import type { Row } from '../value/row.ts';
import { headsOf } from './heads.ts';

/** What the sample stream of a hole is worked out from, at its drilled head or at a depth given (the next rod). */
export function streamStateOf(hole: Document, atMm?: number): StreamState {
  const drilledMm = atMm ?? headsOf(hole).drilledMm;
  return {
    bags: holeNouns(hole, 'bags'),
    bagRuns: holeNouns(hole, 'bagRuns'),
    putOffs: holeNouns(hole, 'putOff'),
    choices: holeNouns(hole, 'controlChoices'),
    unsampled: holeNouns(hole, 'stream').filter((fact) => fact.unsampled !== undefined),
    startMm: ownFromMm(hole),
    drilledMm,
    readMm: readDownTo(hole, drilledMm),
    throughMm: atMm === undefined ? drilledMm : rodEndAbove(hole, atMm),
    noReturn: noReturnOf(hole),
  };
}

/** Down to here someone read the bags and they agreed, millimetres: the deepest such rod above a depth; where sampling starts, if there is none. */
function readDownTo(hole: Document, aboveMm: number): number {
  return holeNouns(hole, 'rods')
    .filter((rod) => rod.read === true && rod.unmended !== true && rod.depthMm < aboveMm)
    .reduce<number>((mm, rod) => Math.max(mm, rod.depthMm), ownFromMm(hole));
}

/** Where the rod above a depth ends, millimetres: what lies above it went through the splitter already. */
function rodEndAbove(hole: Document, depthMm: number): number {
  return holeNouns(hole, 'rods')
    .filter((rod) => rod.depthMm < depthMm)
    .reduce<number>((mm, rod) => Math.max(mm, rod.depthMm), ownFromMm(hole));
}

/** Metres of which nothing came up: logged as no return, as nothing but a void or a loss of return, or seen so at the splitter. */
export function noReturnOf(hole: Document): readonly Interval[] {
  const codes = holeThings(hole, 'legendCodes').flatMap(([id, each]) => (each.noChips === true ? [id] : []));
  const logged = rowsDown(hole).filter(
    ([, row]) => row.noReturn === true || (codes.length > 0 && isNoChips(hole, row, codes)),
  );
  return [
    ...logged.map(([, row]) => row),
    ...holeNouns(hole, 'stream').filter((fact) => fact.recovery === 'none'),
  ];
}

/** True of a row that is wholly of a code that gives no chips; with a second rock beside it something came up. */
function isNoChips(hole: Document, { cells }: Row, codes: readonly string[]): boolean {
  return Object.entries(cells).some(([field, cell]) => {
    const { list } = holeThing(hole, 'legendFields', field) ?? {};
    return 'code' in cell && sharesIn(cell).length === 0 && codes.includes(`${list} ${cell.code}`);
  });
}

/** The bags of a hole as they are on the ground: those of metres without return are no sample, unless someone said that there is a bag. */
export function bagsOnGround(hole: Document): readonly Bag[] {
  return withNoSamples(holeNouns(hole, 'bags'), noReturnOf(hole));
}

/** What comes up in the sample stream of a hole, `count` bags of it. In a hole that is over no bag comes; what is put off still waits. */
export function streamAheadOf(project: Project, hole: Document, count: number): AheadOf {
  const { rodMm, state } = headerOf(hole);
  const at = streamStateOf(hole);
  const ahead = streamAhead(project.sampling, at, { count, rodMm });
  if (isOver(state)) return { ...ahead, upcoming: [], announced: [], coming: [], runsOut: false };
  return { ...ahead, coming: comingIn(at, ahead.upcoming) };
}

/** What comes up, with the row that it makes beside the rig. */
export type AheadOf = StreamAhead & {
  /** The bags that come and those placed by hand for metres to come, each by its metre. */
  readonly coming: readonly Coming[];
};

/** A bag of the row to come: `empty` where nothing came up of its metre and its number is kept, `byHand` where someone placed it there. */
export type Coming = Upcoming & { readonly empty?: true; readonly byHand?: true };

function comingIn(state: StreamState, upcoming: readonly Upcoming[]): readonly Coming[] {
  const { placed, controls } = besideStream({ ...state, drilledMm: Number.POSITIVE_INFINITY });
  const noReturn = state.noReturn ?? [];
  const row = withPlaced<Coming>(
    upcoming.map((each) => (isNoSample(each, noReturn) ? { ...each, empty: true } : each)),
    placed.map((bag) => byHandOf(bag, state.drilledMm)),
  );
  return [...controls.map((bag) => byHandOf(bag, state.drilledMm)), ...row];
}

function byHandOf({ number, kind, fromMm, toMm }: Bag, drilledMm: number): Coming {
  const metre = fromMm === undefined || toMm === undefined ? {} : { fromMm, toMm };
  return {
    ...{ number, kind: kind === 'spoiled' || kind === 'no sample' ? 'primary' : kind, ...metre },
    ...{ oneOf: [], chosen: false, dueMm: toMm ?? drilledMm, byHand: true },
    inMm: Math.max(0, (fromMm ?? drilledMm) - drilledMm),
  };
}

/** The other holes of the project, whose numbers are not this hole's. */
export function otherHoles(documents: Iterable<Document>, hole: Document): readonly OtherHole[] {
  return [...documents]
    .filter((document) => document.kind === 'hole' && document.id !== hole.id)
    .map((document) => ({
      hole: headerOf(document).name,
      bagRuns: holeNouns(document, 'bagRuns'),
      bags: holeNouns(document, 'bags'),
    }));
}

/** What was seen at the drilled head over an interval, the later word over the earlier; undefined members were not looked at. */
export function streamFactAt(hole: Document, interval: Interval): Partial<StreamFact> {
  const facts = holeNouns(hole, 'stream').filter((fact) => within(interval, fact));
  return Object.assign({}, ...facts);
}

/** How many numbers are labelled for a hole, issued ones included. A number that can't be read counts for nothing. */
export function numbersLabelled({ sampling }: Project, hole: Document): number {
  return holeNouns(hole, 'bagRuns').reduce((count, run) => {
    const [first, last] = [run.first, run.last].map((each) => parseBagNumber(sampling.numbers, each));
    return first === undefined || last === undefined ? count : count + last.serial - first.serial + 1;
  }, 0);
}
