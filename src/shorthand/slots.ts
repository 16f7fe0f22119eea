import type { Field } from '../schema/logging-schema.ts';
import type { Said } from './said.ts';

/** The code that an item names, whatever it says of it. */
export function codeNamed({ says }: Said): string | undefined {
  if ('quality' in says) return says.of;
  if ('event' in says) return says.event;
  if ('code' in says) return says.code;
  return 'code' in says.cell ? says.cell.code : undefined;
}

/** The first item that says again what an earlier one said. A code field may name a first and a second. */
export function saidTwice(field: Field, items: readonly Said[]): Said | undefined {
  const seen = new Set<string>();
  return items.find((item) => {
    const slot = slotOf(field, item);
    const clashes = seen.has(slot) || (seen.size > 0 && (slot === 'whole' || seen.has('whole')));
    seen.add(slot);
    return clashes;
  });
}

function slotOf(field: Field, { says }: Said): string {
  if ('quality' in says) return `${says.list} of ${says.of ?? 'the first'}`;
  if ('event' in says) return `code ${says.event}`;
  // Where a third can stand, two shares may be said; else the one that is said is the second.
  if ('code' in says) return field.kind === 'code' && field.third !== true ? 'second' : `code ${says.code}`;
  return 'code' in says.cell ? 'first' : 'whole';
}
