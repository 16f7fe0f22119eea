import { overlaps } from '../quantity/interval.ts';
import type { Thing } from '../record/document.ts';
import { own, sameJson } from '../record/json.ts';
import type { Records } from '../record/rivals.ts';

/** What places a record: metres that it shares, or a depth, rod or number that it has in common; what is said of the whole hole is of one place. */
type Place = 'metres' | 'the same metres' | 'the hole' | { readonly same: string };

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
    unsampled: 'metres',
  },
  feltByDriller: { felt: 'metres' },
  bits: { bitMm: { same: 'depthMm' } },
  hygiene: {
    cycloneClean: { same: 'rod' },
    splitterClean: { same: 'rod' },
    splitterLevel: { same: 'rod' },
    holeBlownClean: { same: 'rod' },
  },
  trays: {
    photo: { same: 'tray' },
    fromMm: { same: 'tray' },
    toMm: { same: 'tray' },
  },
  decisions: { kind: 'the hole', toMm: 'the hole', depthMm: 'the hole' },
  collarStates: { state: 'the hole' },
  signOffs: { state: 'the hole' },
};

/** A calico that was weighed is against metres that no sample was taken of, though it says nothing of that field. */
const AGAINST: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  stream: { unsampled: ['splitG', 'duplicateG'] },
};

/** Records of one place that two copies of a hole may each have made, and in which fields they contradict each other. */
export const HOLE_RECORDS: Records = {
  tables: new Set(Object.keys(CONTRADICTED)),
  // A decision, a state of the collar or a sign-off that its own laptop has gone past is no word against the other's.
  latestAlone: new Set(['decisions', 'collarStates', 'signOffs']),
  contradict: (table, one, other) => {
    const fields = Object.entries(own(CONTRADICTED, table) ?? {}).flatMap(([field, place]) =>
      isSaidDifferently(table, field, one, other) && isOnePlace(place, one, other) ? [field] : [],
    );
    // Two decisions of different kinds are one question, not three.
    return table === 'decisions' ? fields.slice(0, 1) : fields;
  },
};

function isSaidDifferently(table: string, field: string, one: Thing, other: Thing): boolean {
  const [a, b] = [own(one, field), own(other, field)];
  if (a !== undefined && b !== undefined) return !sameJson(a, b);
  const speaker = a === undefined ? one : other;
  const against = own(own(AGAINST, table) ?? {}, field) ?? [];
  return (a ?? b) !== undefined && against.some((each) => own(speaker, each) !== undefined);
}

function isOnePlace(place: Place, one: Thing, other: Thing): boolean {
  const same = (field: string): boolean => sameJson(own(one, field), own(other, field));
  if (place === 'the hole') return true;
  if (typeof place === 'object') return same(place.same);
  if (place === 'the same metres') return same('fromMm') && same('toMm');
  return overlaps(one as never, other as never);
}
