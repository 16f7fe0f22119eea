import {
  type Field,
  type LoggingSchema,
  listOf,
  qualifierFor,
  qualifiersOf,
} from '../schema/logging-schema.ts';
import { amountsIn, type Cell, type Qualities, qualifiedIn, withQualified } from '../value/cell.ts';
import type { Wrong } from './meaning.ts';
import { type Refusal, refusal, type Said } from './said.ts';
import { labelOf, type Quality, typingIndex } from './typing-index.ts';

/** An item of the line that the next pair can say more of, with where it is. `isShare`: a rock beside the first. */
export type Subject = {
  readonly field: Field;
  readonly code: string | undefined;
  readonly isShare: boolean;
  readonly position: number;
};

/**
 * The quality that a pair says here, or undefined where it says something else. A pair of a field's own list says more of it only right
 * behind one of that list: `gygn` is grey, and green besides.
 */
export function qualityTyped(
  schema: LoggingSchema,
  letters: string,
  subject: Subject | undefined,
): Quality | undefined {
  const index = typingIndex(schema);
  const quality = index.qualities.get(letters);
  if (quality !== undefined) return quality;
  const typed = index.pairs.get(letters);
  if (subject === undefined || subject.code === undefined || typed?.code === undefined) return undefined;
  if (typed.field !== subject.field || !('list' in typed.field)) return undefined;
  if (typed.code.code === subject.code) return undefined;
  const { list } = typed.field;
  return qualifierFor(typed.field, list, subject.code) === undefined ? undefined : { list, code: typed.code };
}

/** What a quality of a list is said of here: the item before it, or the one field of a single code that takes it anywhere. */
export function qualifiedBy(
  schema: LoggingSchema,
  list: string,
  subject: Subject | undefined,
): { readonly field: Field; readonly of: string | undefined } | Wrong {
  const single = schema.fields.find(
    (field) => field.kind === 'code' && qualifierFor(field, list, undefined) !== undefined,
  );
  if (single !== undefined) return { field: single, of: undefined };
  const takers = schema.fields.filter((field) => qualifierFor(field, list, undefined) !== undefined);
  if (subject?.code !== undefined && takers.includes(subject.field)) {
    const { field, code } = subject;
    if (qualifierFor(field, list, code) !== undefined) return { field, of: code };
    return {
      problem: `is not said of ${labelOf(schema, field, code)}`,
      remedy: 'Leave it out, or say it in the remark: /',
    };
  }
  return {
    problem: `says more of ${takers.map(({ label }) => label).join(' or ')}, and none comes before it`,
    remedy: 'Type it right after what it is about, amount first: cl2pv',
  };
}

/**
 * A cell with what more is said of its codes: what was said above stays with each code that is still there, and goes where a rock or a
 * colour is said again.
 */
export function qualify(
  schema: LoggingSchema,
  field: Field,
  cell: Cell,
  before: Cell | undefined,
  items: readonly Said[],
): Cell | Refusal {
  const isNew = field.kind === 'code' && items.some(({ says }) => 'cell' in says);
  const qualified: { [code: string]: Qualities } = isNew ? {} : { ...qualifiedIn(before) };
  for (const item of items) {
    const { says } = item;
    if (!('quality' in says)) continue;
    const of = says.of ?? ('code' in cell ? cell.code : undefined);
    if (of === undefined || !isThere(cell, of)) return nothingToQualify(schema, field, of, item);
    const misfit = says.quality !== undefined && qualifierFor(field, says.list, of) === undefined;
    if (misfit) return notOf(schema, field, of, item);
    const { [says.list]: _, ...others } = qualified[of] ?? {};
    qualified[of] = says.quality === undefined ? others : { ...others, [says.list]: says.quality };
  }
  return withQualified(cell, qualified);
}

function isThere(cell: Cell, code: string): boolean {
  return 'code' in cell ? cell.code === code : Object.hasOwn(amountsIn(cell), code);
}

function nothingToQualify(schema: LoggingSchema, field: Field, of: string | undefined, item: Said): Refusal {
  if (of === undefined)
    return refusal(item, `No ${field.label} is there to say more of`, `Say the ${field.label} first`);
  const label = labelOf(schema, field, of);
  return refusal(item, `${label} is not there: how much?`, `Type its amount before ${item.text}`);
}

function notOf(schema: LoggingSchema, field: Field, of: string, item: Said): Refusal {
  return refusal(
    item,
    `${item.text} is not said of ${labelOf(schema, field, of)}`,
    'Leave it out, or say it in the remark: /',
  );
}

/** Words of what more is said of one code of a cell, in the order of the field's qualifiers, then what the field no longer takes. */
export function qualityWords(
  schema: LoggingSchema,
  field: Field,
  cell: Cell | undefined,
  code: string,
): readonly string[] {
  const qualities = qualifiedIn(cell)[code] ?? {};
  const order = qualifiersOf(field).map(({ list }) => list);
  return Object.entries(qualities)
    .sort(([a], [b]) => place(order, a) - place(order, b))
    .map(
      ([list, quality]) => schema.lists[list]?.codes.find((each) => each.code === quality)?.label ?? quality,
    );
}

function place(order: readonly string[], list: string): number {
  const at = order.indexOf(list);
  return at === -1 ? order.length : at;
}

/**
 * The first code of a cell in words with what more is said of it: `grey`, `pale grey`, `pale green-grey`. A second code of the same list
 * comes before the first with a hyphen, as colours are named.
 */
export function firstWords(
  schema: LoggingSchema,
  field: Field,
  cell: Extract<Cell, { code: string }>,
): string {
  const own = listOf(schema, field)?.name;
  const { [own ?? '']: second, ...others } = qualifiedIn(cell)[cell.code] ?? {};
  const rest: Cell = { code: cell.code, qualified: { [cell.code]: others } };
  const label = labelOf(schema, field, cell.code);
  const hue = second === undefined ? label : `${labelOf(schema, field, second)}-${label}`;
  return [...qualityWords(schema, field, rest, cell.code), hue].join(' ');
}
