import { ok, type Result, refused } from '../finding/finding.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import type { Project } from '../project/project.ts';
import { localTime, type Stamp } from '../quantity/stamp.ts';
import type { Document, Thing } from '../record/document.ts';
import { currentActivity, spansOf } from '../shift/current.ts';
import { entryAt, timeWrong } from '../shift/entry-changes.ts';
import { isPriced, itemAmong, pricedItems } from '../shift/item-name.ts';
import type { RecordLine } from '../shift/record-line.ts';
import { shiftHeaderOf } from '../shift/shift.ts';
import { rulesOn } from '../shift/shift-rules.ts';
import { bitAtLeastMm } from '../standing/heads.ts';
import { rodEndBelow } from '../standing/rods.ts';

/** Consumables are counted with the activity that they were used in: the one at that time, else the one going on or the last. */
export function use(
  project: Project,
  shift: Document,
  { count, item: written, at }: Extract<RecordLine, { readonly does: 'used' }>,
  now: Stamp,
): Result<Made> {
  const { rig, date } = shiftHeaderOf(shift);
  const { contract } = rulesOn(project.shift, rig, date);
  const spans = spansOf(shift, now);
  const entry = at === undefined ? (currentActivity(shift, now) ?? spans.at(-1)) : entryAt(shift, at);
  if (entry === undefined)
    return refused(
      timeWrong(shift, 'no activity is recorded that it could be used in', 'Record the activity first.'),
    );
  const before = entry.used ?? [];
  const names = [...(contract.consumables ?? []), ...before].map((each) => each.item);
  const item = itemAmong(names, written);
  const isSame = (each: { readonly item: string }): boolean => itemAmong(names, each.item) === item;
  const counted = before.filter(isSame).reduce((sum, each) => sum + each.count, count);
  const used = [...before.filter((each) => !isSame(each)), { item, count: counted }];
  return ok({
    what: `${count} ${item} used in ${entry.activity}${isPriced(contract, item) ? '' : `; not in the contract, which pays for ${pricedItems(contract)}`}`,
    changes: [{ patch: ['activities', entry.id], set: { used } as Thing }],
  });
}

/** True for a depth that the rod in hand does not reach either. */
function isBelowBit(documents: readonly Document[], id: string, depthMm: number): boolean {
  const hole = documents.find((each) => each.kind === 'hole' && each.id === id);
  return hole !== undefined && depthMm > rodEndBelow(hole, bitAtLeastMm(hole));
}

/** A bit put on, or water met, at a time of the shift. */
export function happened(
  documents: readonly Document[],
  shift: Document,
  line: Extract<RecordLine, { readonly does: 'bit' | 'water' }>,
  { at, hole }: { readonly at: Stamp; readonly hole: string | undefined },
  maker: Maker,
): Result<Made> {
  const remark = line.remark === undefined ? {} : { remark: line.remark };
  if (line.does === 'bit')
    return ok({
      what: `bit changed at ${localTime(at)}, gauge ${(line.gaugeTenthsMm / 10).toFixed(1)} mm`,
      changes: [
        {
          put: ['bits', maker.newId()],
          thing: {
            at,
            gaugeTenthsMm: line.gaugeTenthsMm,
            ...(hole === undefined ? {} : { hole }),
            ...remark,
          },
        },
      ],
    });
  const within = hole ?? spansOf(shift, at).findLast((span) => span.hole !== undefined)?.hole;
  if (within === undefined)
    return refused(timeWrong(shift, 'no hole is known that the water is in', 'Open the hole first.'));
  if (isBelowBit(documents, within, line.depthMm))
    return refused(
      timeWrong(
        shift,
        `${line.depthMm / 1000} m is deeper than ${within}`,
        'Give the depth that the water was met at, in metres.',
      ),
    );
  return ok({
    what: `water met at ${line.depthMm / 1000} m in ${within}`,
    changes: [
      { put: ['waterStrikes', maker.newId()], thing: { at, hole: within, depthMm: line.depthMm, ...remark } },
    ],
  });
}
