import { varint } from './record.ts';

/** Bytes of a page, all of them usable. */
export const PAGE = 4096;

const LEAF = 0x0d;
const INTERIOR = 0x05;
const INDEX_LEAF = 0x0a;

/** Pages of a file that grows, counted from 1; the first is there from the start, for the schema. */
export type Pages = Uint8Array[];

/** Adds a page; gives its number. */
function added(pages: Pages): number {
  pages.push(new Uint8Array(PAGE));
  return pages.length;
}

/** What is on a page: cells in order, and of an interior one the page to the right of them. */
interface Content {
  readonly kind: number;
  readonly cells: readonly Uint8Array[];
  readonly right?: number;
}

const headBytes = (kind: number): number => (kind === INTERIOR ? 12 : 8);

/** Bytes that are left for cells and the pointers to them; the first page begins with the head of the file. */
const roomOf = (kind: number, page?: number): number => PAGE - headBytes(kind) - (page === 1 ? 100 : 0);

const bytesOf = (cells: readonly Uint8Array[]): number =>
  cells.reduce((sum, cell) => sum + cell.length + 2, 0);

/** Fills a page. Source: SQLite file format, section 1.6. */
function fill(pages: Pages, number: number, { kind, cells, right }: Content): void {
  const page = pages[number - 1]!;
  const view = new DataView(page.buffer);
  const start = number === 1 ? 100 : 0;
  let end = PAGE;
  cells.forEach((cell, index) => {
    end -= cell.length;
    page.set(cell, end);
    view.setUint16(start + headBytes(kind) + index * 2, end);
  });
  view.setUint8(start, kind);
  view.setUint16(start + 3, cells.length);
  view.setUint16(start + 5, end);
  if (right !== undefined) view.setUint32(start + 8, right);
}

/** A row with its number in the table. */
export interface NumberedRow {
  readonly rowid: number;
  readonly record: Uint8Array;
}

/** Writes a table, rows in the order of their numbers; gives its root page, which is `root` where that is given. */
export function writeTable(pages: Pages, rows: readonly NumberedRow[], root?: number): number {
  const cells = rows.map((row) => ({ cell: leafCell(pages, row), last: row.rowid }));
  return writeLevel(pages, cells, LEAF, root);
}

interface KeyedCell {
  readonly cell: Uint8Array;
  /** The highest row number at or below it. */
  readonly last: number;
}

/** Writes one level of a tree, and those above it up to a root that holds all. */
function writeLevel(
  pages: Pages,
  cells: readonly KeyedCell[],
  kind: number,
  root: number | undefined,
): number {
  if (bytesOf(cells.map(({ cell }) => cell)) <= roomOf(kind, root))
    return writePage(pages, cells, kind, root).page;
  const groups = grouped(cells, kind);
  const above = groups.map((group) => {
    const { page, last } = writePage(pages, group, kind, undefined);
    return { cell: interiorCell(page, last), last };
  });
  return writeLevel(pages, above, INTERIOR, root);
}

/** Writes a page of cells. Of an interior one the last cell becomes the pointer to the right. */
function writePage(
  pages: Pages,
  cells: readonly KeyedCell[],
  kind: number,
  root: number | undefined,
): { readonly page: number; readonly last: number } {
  const page = root ?? added(pages);
  const last = cells.at(-1)?.last ?? 0;
  if (kind !== INTERIOR) fill(pages, page, { kind, cells: cells.map(({ cell }) => cell) });
  else {
    const right = new DataView(cells.at(-1)!.cell.buffer).getUint32(0);
    fill(pages, page, { kind, cells: cells.slice(0, -1).map(({ cell }) => cell), right });
  }
  return { page, last };
}

/** Cells by the page that they go to. An interior page of one child alone is allowed in no tree: the last takes one from the page before it. */
function grouped(cells: readonly KeyedCell[], kind: number): readonly (readonly KeyedCell[])[] {
  const groups: KeyedCell[][] = [];
  let left = -1;
  for (const each of cells) {
    const bytes = each.cell.length + 2;
    if (left < bytes) {
      groups.push([]);
      left = roomOf(kind);
    }
    groups.at(-1)!.push(each);
    left -= bytes;
  }
  const [before, last] = groups.slice(-2);
  if (kind === INTERIOR && last?.length === 1 && before !== undefined) last.unshift(before.pop()!);
  return groups;
}

function interiorCell(page: number, last: number): Uint8Array {
  const key = varint(last);
  const cell = new Uint8Array(4 + key.length);
  new DataView(cell.buffer).setUint32(0, page);
  cell.set(key, 4);
  return cell;
}

/** A row as a cell of a leaf; what does not fit goes to overflow pages. Source: SQLite file format, sections 1.6 and 1.7. */
function leafCell(pages: Pages, { rowid, record }: NumberedRow): Uint8Array {
  const head = [...varint(record.length), ...varint(rowid)];
  const local = localBytes(record.length);
  const cell = new Uint8Array(head.length + local + (local < record.length ? 4 : 0));
  cell.set(head);
  cell.set(record.subarray(0, local), head.length);
  if (local < record.length)
    new DataView(cell.buffer).setUint32(head.length + local, writeOverflow(pages, record.subarray(local)));
  return cell;
}

/** How much of a record stays on its leaf. */
function localBytes(size: number): number {
  const most = PAGE - 35;
  if (size <= most) return size;
  const least = Math.floor(((PAGE - 12) * 32) / 255) - 23;
  const wanted = least + ((size - least) % (PAGE - 4));
  return wanted <= most ? wanted : least;
}

/** Writes a chain of overflow pages; gives the first. */
function writeOverflow(pages: Pages, rest: Uint8Array): number {
  const count = Math.ceil(rest.length / (PAGE - 4));
  const first = pages.length + 1;
  for (let index = 0; index < count; index += 1) {
    const page = pages[added(pages) - 1]!;
    page.set(rest.subarray(index * (PAGE - 4), (index + 1) * (PAGE - 4)), 4);
    if (index < count - 1) new DataView(page.buffer).setUint32(0, first + index + 1);
  }
  return first;
}

/** Writes an index of few entries, already in order, on one page; gives that page. Throws where they need more: none of ours does. */
export function writeIndex(pages: Pages, records: readonly Uint8Array[]): number {
  const cells = records.map((each) => Uint8Array.from([...varint(each.length), ...each]));
  if (bytesOf(cells) > roomOf(INDEX_LEAF))
    throw new Error(`an index of ${records.length} entries needs more than a page`);
  const page = added(pages);
  fill(pages, page, { kind: INDEX_LEAF, cells });
  return page;
}
