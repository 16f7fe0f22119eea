import type { Change, Document, Thing } from '../record/document.ts';
import type { Meanings } from '../schema/legend.ts';

/** The puts that bring a hole's legend up to what is used. The legend only grows: what stands in it stays as it was written. */
export function legendChanges(hole: Document, used: Meanings): readonly Change[] {
  const missing = (table: string, things: { readonly [name: string]: Thing }): readonly Change[] =>
    Object.entries(things)
      .filter(([name]) => hole.tables[table]?.[name] === undefined)
      .map(([name, thing]): Change => ({ put: [table, name], thing }));
  return [
    ...missing('legendFields', used.fields as { readonly [name: string]: Thing }),
    ...missing('legendScales', used.scales as { readonly [name: string]: Thing }),
    ...missing('legendCodes', used.codes as { readonly [name: string]: Thing }),
  ];
}
