/**
 * A splitter, its assistant and a pile of numbered calicos, as they are beside a rig: written without the stream of src/, so
 * that a fault in the one is not repeated in the other. A slip is done to the pile or to the hands, never to the record.
 */

/** What is written on a calico of the pile, and what it is kept for. */
export interface Label {
  readonly number: string;
  readonly kept?: 'standard' | 'blank' | 'duplicate';
}

/** A calico as it lies on the ground: what is really in it, metres as numbers of the hole's metre (0 is 0–1 m). */
export interface Calico {
  readonly number: string;
  readonly holds: 'metres' | 'sachet' | 'second split';
  readonly metres: readonly number[];
}

export interface Scheme {
  readonly every: number;
  readonly standardAt: number;
  readonly blankAt: number;
  readonly duplicateAt: number;
}

/** Repeatable chance: mulberry32, public domain. */
export function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** Calicos numbered the evening before, those of controls marked. */
export function pile(scheme: Scheme, first: number, count: number): Label[] {
  return Array.from({ length: count }, (_, index) => {
    const serial = first + index;
    const rest = serial % scheme.every;
    const number = `ZQ${String(serial).padStart(6, '0')}`;
    if (rest === scheme.standardAt) return { number, kept: 'standard' };
    if (rest === scheme.blankAt) return { number, kept: 'blank' };
    return rest === scheme.duplicateAt ? { number, kept: 'duplicate' } : { number };
  });
}

/** Hands at the splitter in one rod: what goes wrong, by the metre that it goes wrong at. */
export interface Hands {
  /** No calico for this metre. */
  readonly bareAt?: number;
  /** Two calicos for this metre. */
  readonly twiceAt?: number;
  /** The calico of the metre before stays on for this one too. */
  readonly leftOnAt?: number;
  /** Labels taken off the top of the pile and laid aside before this metre. */
  readonly passOver?: { readonly at: number; readonly count: number };
  /** The label for this metre repeats the one used last. */
  readonly repeatAt?: number;
  /** Labels come off another pile from this metre on, to the end of the rod. */
  readonly otherPile?: { readonly at: number; readonly labels: readonly Label[] };
  /** A control in this rod: its label is used for a metre, laid aside, or (a duplicate) nothing falls into it. */
  readonly control?: {
    readonly number: string;
    readonly slip: 'used for a metre' | 'left out' | 'nothing caught';
  };
  /** A sachet goes in before this metre, under the next plain label. */
  readonly earlyAt?: number;
  /** This duplicate's calico hangs on the first chute, and its primary's on the second. */
  readonly swappedWith?: string;
  /** Number written on the last calico instead of its own. */
  readonly lastReads?: (number: string) => string;
  /** Sachets behind the last metre wait for the next rod. */
  readonly lateSachets?: boolean;
}

/** The place where calicos are laid down in one rod. */
interface Stand {
  readonly labels: Label[];
  readonly hands: Hands;
  readonly laid: Calico[];
  lastMetres: readonly number[];
}

/** One rod at the splitter: takes labels off the pile (which shortens) and lays calicos down. */
export function bagRod(
  labels: Label[],
  metres: readonly number[],
  hands: Hands,
  before: readonly number[],
): readonly Calico[] {
  const stand: Stand = { labels, hands, laid: [], lastMetres: before };
  for (const metre of metres) bagMetre(stand, metre);
  if (hands.lateSachets !== true || labels[0]?.kept === 'duplicate') putInControls(stand);
  const last = stand.laid.at(-1);
  if (hands.lastReads === undefined || last === undefined) return stand.laid;
  return [...stand.laid.slice(0, -1), { ...last, number: hands.lastReads(last.number) }];
}

function bagMetre(stand: Stand, metre: number): void {
  const { labels, hands } = stand;
  if (hands.otherPile?.at === metre) labels.splice(0, labels.length, ...hands.otherPile.labels);
  if (hands.passOver?.at === metre) passOver(labels, hands.passOver.count);
  if (hands.earlyAt === metre) putInEarly(stand);
  if (hands.bareAt === metre) return;
  if (hands.leftOnAt === metre) leaveOn(stand, metre);
  else if (hands.repeatAt === metre) repeat(stand, metre);
  else fill(stand, metre);
  if (hands.twiceAt === metre) fill(stand, metre);
}

/** Sachets and second splits, as the labels on top of the pile ask for them. */
function putInControls({ labels, hands, laid, lastMetres }: Stand, most = labels.length): void {
  for (let left = most; left > 0; left--) {
    const top = labels[0];
    if (top?.kept === undefined) return;
    const slip = hands.control?.number === top.number ? hands.control.slip : 'none';
    if (slip === 'used for a metre') return;
    labels.shift();
    if (slip !== 'none') continue;
    const isSplit = top.kept === 'duplicate';
    laid.push({
      number: top.number,
      holds: isSplit ? 'second split' : 'sachet',
      metres: isSplit ? lastMetres : [],
    });
  }
}

/** A calico on the first chute; where the next label is a duplicate's, it hangs on the second chute meanwhile. */
function fill(stand: Stand, metre: number): void {
  putInControls(stand);
  const label = stand.labels.shift();
  if (label === undefined) throw new Error('the pile is used up');
  lay(stand, label.number, metre);
  if (stand.labels[0]?.kept === 'duplicate') putInControls(stand, 1);
  if (stand.laid.at(-1)?.number === stand.hands.swappedWith) swapChutes(stand);
}

function swapChutes({ laid }: Stand): void {
  const [first, second] = laid.splice(-2);
  if (first === undefined || second === undefined) throw new Error('no pair hangs on the chutes');
  laid.push({ ...first, holds: second.holds }, { ...second, holds: first.holds });
}

function lay(stand: Stand, number: string, metre: number): void {
  stand.laid.push({ number, holds: 'metres', metres: [metre] });
  stand.lastMetres = [metre];
}

function repeat(stand: Stand, metre: number): void {
  lay(stand, stand.laid.findLast((calico) => calico.holds === 'metres')?.number ?? '', metre);
}

function leaveOn(stand: Stand, metre: number): void {
  const place = stand.laid.findLastIndex((calico) => calico.holds === 'metres');
  const held = stand.laid[place];
  if (held === undefined) throw new Error('no calico is on');
  stand.laid[place] = { ...held, metres: [...held.metres, metre] };
  stand.lastMetres = [...held.metres, metre];
}

/** A sachet goes into the next plain label; the label kept for it loses its mark. */
function putInEarly(stand: Stand): void {
  putInControls(stand);
  const { labels, laid } = stand;
  laid.push({ number: labels.shift()?.number ?? '', holds: 'sachet', metres: [] });
  const due = labels.findIndex((label) => label.kept === 'standard' || label.kept === 'blank');
  const there = labels[due];
  if (there !== undefined) labels[due] = { number: there.number };
}

function passOver(labels: Label[], count: number): void {
  for (let left = count; left > 0; left--) {
    const plain = labels.findIndex((label) => label.kept === undefined);
    labels.splice(plain, 1);
  }
}
