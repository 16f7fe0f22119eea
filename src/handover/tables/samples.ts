import { BAG_KINDS } from '../../hole/bags.ts';
import { holeNouns } from '../../hole/hole.ts';
import { metres } from '../../quantity/depth.ts';
import type { Document } from '../../record/document.ts';
import type { Dispatch } from '../../sampling/dispatch/dispatch-noun.ts';
import { dispatchesOf } from '../../standing/dispatches.ts';
import { streamMetres } from '../../standing/recovery.ts';
import { bagsOnGround, streamFactAt } from '../../standing/stream.ts';
import { depth, instant, integer, kilogramsOf, metresOf, number, optional, text, yesNo } from './column.ts';
import { HOLE } from './holes.ts';
import { defineTable, holesOf, type Source } from './table.ts';

const NO_METRES = 'a standard or a blank: it is of no metres';

/** Every bag that was filled, controls among them. */
export const SAMPLES = defineTable({
  name: 'samples',
  about:
    'Every bag number that was issued, in the order in which the bags came: samples of the hole and the controls among them. It says what the controls are: never for the laboratory.',
  key: ['sample'],
  columns: {
    sample: text('Number on the calico'),
    hole: HOLE,
    kind: text(BAG_KINDS.join(', ')),
    from_m: optional(depth('Top of what is in it'), NO_METRES),
    to_m: optional(depth('Bottom of what is in it'), NO_METRES),
    rank: optional(
      text('metre or composite: a single metre counts before a composite over it'),
      'the project’s usual one',
    ),
    duplicate_of: optional(text('Number of the primary that it repeats'), 'no duplicate'),
    duplicate_method: optional(text('second chute or spear'), 'no duplicate'),
    material: optional(text('Lot of the standard, or kind of the blank'), 'neither a standard nor a blank'),
    reason: optional(text('Why it is spoiled, or was placed by hand'), 'no reason is recorded'),
    by_hand: yesNo('Placed by hand, outside the stream of numbers'),
    ticked_at: optional(instant('When someone held it in hand and its label was right'), 'not ticked off'),
    dispatch: optional(text('Dispatch that it went in'), 'not sent yet'),
    sack: optional(integer('Number of its sack in the dispatch'), 'not sent yet'),
  },
  rows: (source) => {
    const sacks = sacksOf(dispatchesOf(source.documents));
    return holesOf(source).flatMap((hole) => sampleRows(hole, sacks));
  },
});

type Sacks = ReadonlyMap<string, { readonly dispatch: string; readonly sack: number }>;

/** The sack that each number went in; the first where it is in two. */
function sacksOf(dispatches: readonly Dispatch[]): Sacks {
  const sacks = new Map<string, { readonly dispatch: string; readonly sack: number }>();
  for (const { name, sacks: all } of dispatches)
    for (const { sack, bags } of all)
      for (const number of bags) if (!sacks.has(number)) sacks.set(number, { dispatch: name, sack });
  return sacks;
}

function sampleRows(hole: Document, sacks: Sacks) {
  const ticks = new Map(holeNouns(hole, 'ticks').map((tick) => [tick.number, tick.at]));
  return bagsOnGround(hole).map((bag) => ({
    sample: bag.number,
    hole: hole.id,
    kind: bag.kind,
    from_m: metresOf(bag.fromMm),
    to_m: metresOf(bag.toMm),
    rank: bag.rank,
    duplicate_of: bag.of,
    duplicate_method: bag.method,
    material: bag.material,
    reason: bag.reason,
    by_hand: bag.byHand === true,
    ticked_at: ticks.get(bag.number),
    dispatch: sacks.get(bag.number)?.dispatch,
    sack: sacks.get(bag.number)?.sack,
  }));
}

/** The sample stream by metre. */
export const RECOVERY = defineTable({
  name: 'recovery',
  about:
    'The sample stream down to the depth drilled: recovery, moisture, masses and what makes a sample less than clean.',
  key: ['hole', 'from_m', 'to_m'],
  columns: {
    hole: HOLE,
    from_m: depth('Top of the metre, or of what was weighed as a whole'),
    to_m: depth('Bottom of it'),
    moisture: optional(text('dry, moist or wet'), 'not recorded'),
    recovery_seen: optional(text('Recovery by eye: full, good, fair, poor or none'), 'not recorded'),
    recovery_percent: optional(
      number('Dry mass of bulk bag and splits in percent of what the metre holds', '%'),
      'the bulk bag was not weighed',
    ),
    recovered_kg: optional(number('Dry mass of bulk bag and splits', 'kg'), 'the bulk bag was not weighed'),
    expected_kg: optional(
      number('What the metre holds by the gauge of the bit and the density of its rock', 'kg'),
      'it is logged as a void',
    ),
    bulk_kg: optional(number('Bulk bag as weighed', 'kg'), 'not weighed'),
    split_kg: optional(number('Calico as weighed', 'kg'), 'not weighed'),
    duplicate_split_kg: optional(number('Second calico as weighed', 'kg'), 'not weighed'),
    water_percent: optional(number('Water in what was weighed', '%'), 'not measured: counted as dry'),
    water: optional(text('injected or groundwater'), 'not recorded'),
    flags: optional(
      text('What makes the sample less than clean, separated by semicolons'),
      'nothing that was recorded',
    ),
    unsampled: optional(text('Why no sample was taken'), 'it was sampled, or no one said why not'),
    remark: optional(text('Remark'), 'no remark'),
  },
  rows: (source) => holesOf(source).flatMap((hole) => recoveryRows(source, hole)),
});

function recoveryRows({ project }: Source, hole: Document) {
  return streamMetres(project, hole).map((metre) => {
    const at = { fromMm: metre.fromMm, toMm: metre.toMm } as Parameters<typeof streamFactAt>[1];
    const fact = streamFactAt(hole, at);
    const weighed = holeNouns(hole, 'stream').findLast(
      (each) =>
        each.fromMm === at.fromMm &&
        each.toMm === at.toMm &&
        (each.bulkG ?? each.splitG ?? each.duplicateG) !== undefined,
    );
    return {
      hole: hole.id,
      from_m: metres(metre.fromMm),
      to_m: metres(metre.toMm),
      moisture: metre.moisture,
      recovery_seen: metre.seen,
      recovery_percent: metre.percent === undefined ? undefined : Number(metre.percent.toFixed(1)),
      recovered_kg: kilogramsOf(metre.recoveredG),
      expected_kg: kilogramsOf(metre.expectedG),
      bulk_kg: kilogramsOf(weighed?.bulkG),
      split_kg: kilogramsOf(weighed?.splitG),
      duplicate_split_kg: kilogramsOf(weighed?.duplicateG),
      water_percent: fact.waterPermille === undefined ? undefined : fact.waterPermille / 10,
      water: fact.water,
      flags: metre.flags.length === 0 ? undefined : metre.flags.join('; '),
      unsampled: fact.unsampled,
      remark: fact.remark,
    };
  });
}
