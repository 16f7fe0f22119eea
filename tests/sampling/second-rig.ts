/**
 * A second rig, written without the first simulator and without the stream of src/: a helper who takes calicos off a stack one by one, a
 * row of calicos on the ground, and someone who walks to its end and reads. A slip is something that happens to the helper's hands or
 * to the reader's eyes at one moment; the record never knows of it.
 */

/** Calicos of the stack by what the evening before marked them as: rock, standard, blank, or hung on the second chute. */
type Mark = 'rock' | 'standard' | 'blank' | 'second chute';

/** A calico in the row: what is written on it, and what is really inside. */
export interface InTheRow {
  written: number;
  inside: 'rock' | 'sachet' | 'rock again';
  metres: number[];
}

/** What happens once in a hole. */
export const MISHAPS = [
  'walked past a metre',
  'changed the bag in the middle of a metre',
  'left a bag on for two metres',
  'dropped a calico',
  'forgot the sachet',
  'second chute blocked',
  'read the wrong calico',
  'laid the last two the wrong way round',
  'took up another bundle',
] as const;
export type Mishap = (typeof MISHAPS)[number];

/** The marks of twenty, twenty-five or thirty calicos, as a rubber stamp would give them: S standard, B blank, D duplicate. */
export const STAMPS = [
  'S......B.....D......',
  '.....S..........B.......D',
  'D.........S.........B.........',
] as const;

const MARKS: Readonly<Record<string, Mark>> = { S: 'standard', B: 'blank', D: 'second chute', '.': 'rock' };

/** Repeatable chance: xorshift32 (Marsaglia 2003, Journal of Statistical Software 8(14)). */
export function dice(seed: number): () => number {
  let word = (Math.imul(seed + 1, 0x9e3779b1) ^ 0x5bf03635) >>> 0 || 1;
  for (let warm = 0; warm < 8; warm++) word = turned(word);
  return () => {
    word = turned(word);
    return word / 4294967296;
  };
}

function turned(word: number): number {
  const a = (word ^ (word << 13)) >>> 0;
  const b = (a ^ (a >>> 17)) >>> 0;
  return (b ^ (b << 5)) >>> 0;
}

/** What the helper's hands will do wrong in the rod that begins; undefined is nothing. */
export interface Moment {
  readonly mishap: Mishap;
  /** The metre of the rod at which it happens, from 0. */
  readonly at: number;
  /** Calicos dropped, or what is taken up instead of the stack. */
  readonly dropped?: number;
  readonly bundle?: readonly number[];
  /** The calico kept for a sachet gets rock, or is laid aside with its sachet. */
  readonly sachetAside?: boolean;
}

/** A helper beside the splitter: what is on the stack, and what the sachet calicos wait for. */
export interface Helper {
  readonly stamp: string;
  stack: number[];
  lastMetre: number[];
  /** Calicos whose mark is not heeded any more: their sachet was forgotten. */
  readonly unheeded: Set<number>;
}

/** What a calico of the stack is marked as. */
export function markOf({ stamp, unheeded }: Pick<Helper, 'stamp' | 'unheeded'>, serial: number): Mark {
  return unheeded.has(serial) ? 'rock' : (MARKS[stamp[serial % stamp.length] ?? '.'] ?? 'rock');
}

/** True where the rod gives the mishap its occasion. */
export function hasOccasion(helper: Helper, mishap: Mishap): boolean {
  const marks = helper.stack.slice(0, 6).map((serial) => markOf(helper, serial));
  if (mishap === 'forgot the sachet')
    return marks.slice(1, 5).some((each) => each === 'standard' || each === 'blank');
  return mishap === 'second chute blocked' ? marks.slice(1, 5).includes('second chute') : true;
}

/** One rod: the row that it leaves. `tidy`: sachets that close the rod go in at once, else when the next rod begins. */
export function drillRod(
  helper: Helper,
  metres: readonly number[],
  tidy: boolean,
  moment?: Moment,
): InTheRow[] {
  const row: InTheRow[] = [];
  for (const [index, metre] of metres.entries())
    takeMetre(helper, row, metre, moment?.at === index ? moment : undefined, moment);
  if (tidy) putSachets(helper, row, moment);
  else secondChutes(helper, row, moment);
  if (moment?.mishap === 'laid the last two the wrong way round') row.push(...row.splice(-2).reverse());
  return row;
}

function takeMetre(
  helper: Helper,
  row: InTheRow[],
  metre: number,
  now: Moment | undefined,
  moment: Moment | undefined,
): void {
  switch (now?.mishap) {
    case 'walked past a metre':
      return;
    case 'left a bag on for two metres': {
      const held = row.findLast((each) => each.inside === 'rock');
      if (held !== undefined) {
        held.metres.push(metre);
        helper.lastMetre = held.metres;
        return;
      }
      break;
    }
    case 'dropped a calico': {
      for (let left = now.dropped ?? 1; left > 0; left--) {
        const place = helper.stack.findIndex((serial) => markOf(helper, serial) === 'rock');
        helper.stack.splice(place, 1);
      }
      break;
    }
    case 'took up another bundle':
      helper.stack = [...(now.bundle ?? helper.stack)];
      break;
    default:
  }
  hang(helper, row, metre, moment);
  if (now?.mishap === 'changed the bag in the middle of a metre') hang(helper, row, metre, moment);
}

function hang(helper: Helper, row: InTheRow[], metre: number, moment: Moment | undefined): void {
  putSachets(helper, row, moment);
  const written = helper.stack.shift();
  if (written === undefined) throw new Error('the stack is used up');
  helper.lastMetre = [metre];
  row.push({ written, inside: 'rock', metres: [metre] });
  secondChutes(helper, row, moment);
}

/** Everything on top of the stack that is not a calico for rock. */
function putSachets(helper: Helper, row: InTheRow[], moment: Moment | undefined): void {
  for (;;) {
    secondChutes(helper, row, moment);
    const top = helper.stack[0];
    const mark = top === undefined ? 'rock' : markOf(helper, top);
    if (top === undefined || mark === 'rock' || mark === 'second chute') return;
    if (moment?.mishap === 'forgot the sachet' && moment.bundle?.includes(top)) {
      if (moment.sachetAside !== true) {
        helper.unheeded.add(top);
        return;
      }
      helper.stack.shift();
      continue;
    }
    helper.stack.shift();
    row.push({ written: top, inside: 'sachet', metres: [] });
  }
}

/** Calicos for the second chute hang there while their metre is drilled: it is the one just drilled. */
function secondChutes(helper: Helper, row: InTheRow[], moment: Moment | undefined): void {
  while (helper.stack[0] !== undefined && markOf(helper, helper.stack[0]) === 'second chute') {
    const written = helper.stack.shift() ?? 0;
    if (moment?.mishap === 'second chute blocked' && moment.bundle?.includes(written)) continue;
    row.push({ written, inside: 'rock again', metres: [...helper.lastMetre] });
  }
}
