import { apply } from '../../../src/record/apply.ts';
import { type Change, type Document, emptyDocument, type Thing } from '../../../src/record/document.ts';

/** A hole of 6 m rods and 1 m rows with the things given, by table. */
export function holeWith(
  tables: { readonly [table: string]: readonly Thing[] },
  header: Thing = {},
  id = 'MBRC900',
): Document {
  const whole = {
    name: id,
    state: 'drilling',
    logFromMm: 0,
    intervalMm: 1000,
    rodMm: 6000,
    firstRodOffsetMm: 0,
    ...header,
  };
  const things = Object.entries(tables).flatMap(([table, list]) =>
    list.map(
      (thing, index): Change => ({ put: [table, table === 'plan' ? 'plan' : `${table}-${index}`], thing }),
    ),
  );
  const deed = { edit: 'a-1', at: '2026-03-14T08:00:00+08:00', by: 'NOK', what: 'made' };
  const made = apply(emptyDocument({ kind: 'hole', id }), deed, [
    { put: ['hole', 'hole'], thing: whole },
    ...things,
  ]);
  if (!made.ok) throw new Error(made.problem);
  return made.document;
}

/** A rod done at a depth in metres, at a time of 14 March. */
export const rod = (count: number, depthM: number, time = '08:00:00'): Thing => ({
  at: `2026-03-14T${time}+08:00`,
  rod: count,
  depthMm: depthM * 1000,
});

/** A row of basalt between two depths in metres. */
export const row = (fromM: number, toM: number, more: Thing = {}): Thing => ({
  fromMm: fromM * 1000,
  toMm: toM * 1000,
  cells: { rock: { code: 'BAS' } },
  ...more,
});
