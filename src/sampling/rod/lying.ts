import type { Bag } from '../../hole/bags.ts';
import type { Sampling } from '../sampling.ts';
import { isNoSample, withNoSamples } from '../stream/no-sample.ts';
import type { StreamState } from '../stream/stream.ts';
import { type Beside, type Supposition, type Trace, withAndWithoutTail } from './mismatch.ts';

/** Bags in the order in which they lie on the ground, and how many more may lie among them. */
export interface Row {
  readonly bags: readonly Bag[];
  /** Calicos more than these that may be counted, or not: no one knows whether they were laid into this row. */
  readonly loose: number;
}

/** What lies beside the stream's bags in the row of the rod that is done now. */
export function besideStream(state: StreamState): Beside {
  const unclaimed = state.bags.filter((bag) => bag.byHand === true && bag.rod === undefined);
  const placed = unclaimed.filter(
    (bag) => bag.kind !== 'spoiled' && (bag.toMm ?? Number.POSITIVE_INFINITY) <= state.drilledMm,
  );
  const controls = unclaimed.filter((bag) => bag.kind !== 'spoiled' && bag.toMm === undefined);
  return { placed, controls, tail: unreadTail(state) };
}

/** Sachets that closed the rod before, where no one read it: whether they went in at once or with this rod is not known. */
function unreadTail({ bags, readMm }: StreamState): number {
  if (readMm === undefined) return 0;
  const stream = bags.filter((bag) => bag.byHand !== true && bag.kind !== 'spoiled');
  const rod = stream.at(-1)?.rod;
  const last = stream.filter((bag) => bag.rod === rod);
  const foot = Math.max(...last.map((bag) => bag.toMm ?? 0));
  if (foot <= readMm) return 0;
  const [whole = [], short] = withAndWithoutTail(last);
  return short === undefined ? 0 : whole.length - short.length;
}

/**
 * The rows that bags of a supposition may make on the ground: closing sachets in or still to come, calicos placed by hand at their metre,
 * empty calicos of a metre without return laid down or not. With each goes the mending as it then is.
 */
export function rowsOf(
  state: StreamState,
  way: Supposition,
  beside: Beside,
): readonly { readonly row: Row; readonly fix: Supposition['fix'] }[] {
  const lying = way.lying === undefined || way.lying === 'anyhow' ? way.fix.issue : way.lying;
  return endingsOf(lying, way).flatMap(({ bags, fix }) => {
    const row = withPlaced(bags, beside.placed);
    const full = row.filter((bag) => !isNoSample(bag, state.noReturn ?? []));
    const { controls, tail } = beside;
    const rows = (full.length === row.length ? [row] : [row, full]).map((each) => ({
      bags: each,
      loose: controls.length + tail,
    }));
    const closed =
      controls.length === 0 ? [] : rows.map((each) => ({ bags: [...each.bags, ...controls], loose: tail }));
    return [...rows, ...closed].map((each) => ({ row: each, fix }));
  });
}

function endingsOf(lying: readonly Bag[], { fix }: Supposition) {
  const [, short] = withAndWithoutTail(fix.issue);
  const cut = fix.issue.length - (short?.length ?? 0);
  const whole = { bags: lying, fix };
  if (short === undefined || lying.at(-1)?.number !== fix.issue.at(-1)?.number) return [whole];
  return [whole, { bags: lying.slice(0, lying.length - cut), fix: { ...fix, issue: short } }];
}

/**
 * The row of a rod as it lies when all is as expected: the bags that the stream gives and those placed by hand, each by its metre; a control placed by
 * hand first, for no metre says where it lies. A number kept of a metre that gave nothing is no sample.
 */
export function rowAsExpected(
  expected: readonly Bag[],
  { placed, controls }: Beside,
  state: StreamState,
): readonly Bag[] {
  return withNoSamples([...controls, ...withPlaced(expected, placed)], state.noReturn ?? []);
}

/** Bags placed by hand lie at their metre: behind the last bag of a metre above. */
export function withPlaced<Held extends Pick<Bag, 'kind' | 'fromMm'>>(
  bags: readonly Held[],
  placed: readonly Held[],
): readonly Held[] {
  return placed
    .filter((bag) => bag.fromMm !== undefined)
    .reduce(
      (row, bag) => {
        const isBehind = (each: Held) =>
          (each.fromMm ?? -1) > (bag.fromMm ?? 0) || (each.fromMm === bag.fromMm && bag.kind === 'primary');
        const next = row.findIndex(isBehind);
        row.splice(next < 0 ? row.length : next, 0, bag);
        return row;
      },
      [...bags],
    );
}

/** What would be read off a row. */
export function traceOf(sampling: Sampling, { bags }: Row, read?: Supposition['read']): Trace {
  const onLast = bags.at(-1)?.number;
  const last = read?.last ?? onLast;
  const first = bags[0]?.number;
  return {
    ...(last === undefined ? {} : { last }),
    ...(first === undefined ? {} : { first }),
    lastTwo: [bags.at(-2)?.number, read?.slip === true ? onLast : last],
    count: bags.length,
    double: bags.some((bag) => (bag.toMm ?? 0) - (bag.fromMm ?? 0) > sampling.lengthMm),
    controls: bags.filter((bag) => bag.kind !== 'primary' && bag.kind !== 'spoiled').length,
  };
}
