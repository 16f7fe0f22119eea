import { type Hands, type Label, pile, type Scheme } from './splitter.ts';

export const ROD_M = 6;

/** What a slip is made from: the pile as it lies, the metres of the rod, and chance. */
export interface Occasion {
  readonly random: () => number;
  readonly scheme: Scheme;
  readonly labels: readonly Label[];
  /** What is left of another hole's pile. */
  readonly otherLabels: readonly Label[];
  readonly metres: readonly number[];
  /** A number that was put out of use. */
  readonly spoiled: string;
}

/** How a slip is made in one rod. */
export interface Plan {
  readonly hands: Hands;
  /** The metres really drilled, where the mark says otherwise. */
  readonly drilled?: readonly number[];
}

/** Every kind of slip by the code that the rod check should give it: how it is made, or undefined where the rod gives no occasion. */
const MAKE = {
  'bags-too-few': (of) => ({ hands: { bareAt: anyMetre(of) } }),
  'bags-too-many': (of) => ({ hands: { twiceAt: anyMetre(of) } }),
  'two-metres-in-one-bag': (of) => ({ hands: { leftOnAt: laterMetre(of) } }),
  'last-holes-bags': (of) => ({ hands: { otherPile: { at: anyMetre(of), labels: of.otherLabels } } }),
  skipped: (of) => ({ hands: { passOver: { at: laterMetre(of), count: of.random() < 0.8 ? 1 : 2 } } }),
  'used-twice': (of) => ({ hands: { repeatAt: laterMetre(of) } }),
  'transposed-digits': (of) => ({ hands: { lastReads: (number) => transposed(number, of.random()) } }),
  'control-forgotten': forgotten,
  'control-early': early,
  'empty-duplicate': emptyChute,
  'duplicate-and-primary-swapped': swappedChutes,
  'one-ahead': (of) => ({ hands: { passOver: { at: anyMetre(of), count: 1 } } }),
  'one-behind': (of) => ({ hands: { bareAt: anyMetre(of) } }),
  'wrong-restart': wrongRestart,
  'depth-mark-out': markOut,
  foreign: (of) => {
    const number = `KX${String(Math.floor(of.random() * 1e6)).padStart(6, '0')}`;
    return { hands: { lastReads: () => number } };
  },
  'spoiled-used': (of) => ({ hands: { lastReads: () => of.spoiled } }),
} as const satisfies Readonly<Record<string, (of: Occasion) => Plan | undefined>>;

export type Slip = keyof typeof MAKE;
export const SLIPS = Object.keys(MAKE) as readonly Slip[];

/** Kinds that never change a rod's last number or its count. */
export const WITHOUT_TRACE: readonly Slip[] = ['duplicate-and-primary-swapped'];

/** How the slip is made in this rod, or undefined where the rod gives no occasion for it. */
export function planOf(slip: Slip, of: Occasion): Plan | undefined {
  return MAKE[slip](of);
}

function anyMetre(of: Occasion): number {
  return of.metres[Math.floor(of.random() * of.metres.length)] ?? 0;
}

/** Any metre but the first. */
function laterMetre(of: Occasion): number {
  return of.metres[1 + Math.floor(of.random() * (of.metres.length - 1))] ?? 0;
}

function controlsInRod(of: Occasion): readonly Label[] {
  return of.labels.slice(0, ROD_M).filter((label) => label.kept !== undefined);
}

function forgotten(of: Occasion): Plan | undefined {
  const inRod = controlsInRod(of);
  const control = inRod[Math.floor(of.random() * inRod.length)];
  if (control === undefined) return undefined;
  const slip = control.kept === 'duplicate' || of.random() < 0.5 ? 'used for a metre' : 'left out';
  return { hands: { control: { number: control.number, slip } } };
}

function emptyChute(of: Occasion): Plan | undefined {
  const duplicate = controlsInRod(of).find((label) => label.kept === 'duplicate');
  return duplicate && { hands: { control: { number: duplicate.number, slip: 'nothing caught' } } };
}

function swappedChutes(of: Occasion): Plan | undefined {
  const duplicate = controlsInRod(of).find((label) => label.kept === 'duplicate');
  return duplicate && { hands: { swappedWith: duplicate.number } };
}

/** Only where the control is not due in this rod: put in early within its own rod it leaves no trace. */
function early(of: Occasion): Plan | undefined {
  const due = of.labels.findIndex((label) => label.kept === 'standard' || label.kept === 'blank');
  return due > ROD_M && due < 2 * ROD_M ? { hands: { earlyAt: anyMetre(of) } } : undefined;
}

function wrongRestart(of: Occasion): Plan {
  const lying = new Set(of.labels.map((label) => label.number));
  const next = Number(of.labels[0]?.number.slice(2));
  const later = pile(of.scheme, next, 250).slice(8 + Math.floor(of.random() * 50));
  return {
    hands: { otherPile: { at: anyMetre(of), labels: later.filter((each) => lying.has(each.number)) } },
  };
}

function markOut(of: Occasion): Plan {
  const foot = of.metres.at(-1) ?? 0;
  return { hands: {}, drilled: of.random() < 0.5 ? [...of.metres, foot + 1] : of.metres.slice(0, -1) };
}

/** The number with two different neighbours swapped: of its last three digits, or further in front where those are all alike. */
function transposed(number: string, roll: number): string {
  const differing = Array.from({ length: number.length - 3 }, (_, index) => number.length - 2 - index).filter(
    (at) => number[at] !== number[at + 1],
  );
  const last = differing.filter((at) => at >= number.length - 3);
  const at = last.length === 0 ? differing[0] : last[Math.floor(roll * last.length)];
  if (at === undefined) return number;
  return number.slice(0, at) + number[at + 1] + number[at] + number.slice(at + 2);
}
