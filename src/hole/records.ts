import { overlaps } from '../quantity/interval.ts';
import type { Thing } from '../record/document.ts';
import { own, sameJson } from '../record/json.ts';
import type { Records } from '../record/rivals.ts';

/** What places a record: metres that it shares, or a depth, rod or number that it has in common. */
type Place = 'metres' | 'the same metres' | { readonly same: string };

/** By table and field: of what two records speak when they contradict each other. A mass is of its own metres alone. */
const CONTRADICTED: Readonly<Record<string, Readonly<Record<string, Place>>>> = {
  stream: {
    moisture: 'metres',
    recovery: 'metres',
    water: 'metres',
    bulkG: 'the same metres',
    splitG: 'the same metres',
    duplicateG: 'the same metres',
    waterPermille: 'the same metres',
  },
  feltByDriller: { felt: 'metres' },
  bits: { bitMm: { same: 'depthMm' } },
  hygiene: {
    cycloneClean: { same: 'rod' },
    splitterClean: { same: 'rod' },
    splitterLevel: { same: 'rod' },
    holeBlownClean: { same: 'rod' },
  },
};

/** Records of one place that two copies of a hole may each have made, and in which fields they contradict each other. */
export const HOLE_RECORDS: Records = {
  tables: new Set(Object.keys(CONTRADICTED)),
  contradict: (table, one, other) =>
    Object.entries(own(CONTRADICTED, table) ?? {}).flatMap(([field, place]) => {
      const [a, b] = [own(one, field), own(other, field)];
      if (a === undefined || b === undefined || sameJson(a, b)) return [];
      return isOnePlace(place, one, other) ? [field] : [];
    }),
};

function isOnePlace(place: Place, one: Thing, other: Thing): boolean {
  const same = (field: string): boolean => sameJson(own(one, field), own(other, field));
  if (typeof place === 'object') return same(place.same);
  if (place === 'the same metres') return same('fromMm') && same('toMm');
  return overlaps(one as never, other as never);
}
