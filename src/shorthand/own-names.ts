import type { ExampleStrokes } from './example-strokes.ts';

/** Names of the project in hand that examples are made of. */
export type OwnNames = {
  readonly bagPrefix: string;
  readonly bagDigits: number;
  /** A name that the next hole could have. */
  readonly hole: string;
  /** Somebody who could be called, never the person at the keyboard. */
  readonly person: string;
  readonly driller: string;
  /** Strokes of its own schema. */
  readonly strokes: ExampleStrokes;
  /** Where the hole in hand is, worked out where an example asks for it; none where no hole is in hand. */
  readonly at?: (() => HoleAt) | undefined;
};

/** What examples about a hole are near to. Depths in metres. */
export type HoleAt = {
  /** The number of the next bag, without its prefix. */
  readonly nextBag: number | undefined;
  readonly drilledM: number;
  readonly loggedM: number;
  readonly plannedM: number | undefined;
  readonly rodM: number;
};

/**
 * An example in the names of the project in hand. Texts are written with made-up ones, a bag `ZQ000163`, a hole `ZQRC014`, a person `Ines Falk`, a driller `Mick Tarrant`,
 * a row `ba py2`, the bags around 163 and metres around 46; only texts of ours are given here: what a person typed or a file holds is shown as it is.
 */
export function inOwnNames(text: string, own: OwnNames | undefined): string {
  if (own === undefined) return text;
  const named = text
    .replaceAll(/\bZQRC\d+\b/g, own.hole)
    .replaceAll('Ines Falk', own.person)
    .replaceAll('Mick Tarrant', own.driller);
  const at = /\d/.test(text) ? own.at?.() : undefined;
  return inOwnBags(inOwnMetres(inOwnStrokes(named, own.strokes), at), own, at?.nextBag);
}

/** The example bags are 158 to 169 and those that are labelled 201 to 320 and 601 to 720: the first kind follows the next bag of the hole. */
function inOwnBags(text: string, { bagPrefix, bagDigits }: OwnNames, next: number | undefined): string {
  const nearNext = (serial: number): number =>
    next === undefined || serial < 150 || serial >= 170 ? serial : Math.max(1, serial - 163 + next);
  return text
    .replaceAll(
      /\bZQ0*(\d+)\b/g,
      (_, digits: string) => `${bagPrefix}${String(nearNext(Number(digits))).padStart(bagDigits, '0')}`,
    )
    .replaceAll(/(?<![\d.])1[56]\d(?![\d.])/g, (digits) =>
      String(nearNext(Number(digits)) % 1000).padStart(3, '0'),
    );
}

/** Rows of the examples are 44 to 50, the rod ends at 60, the plan at 120: they follow the log, the drilled head and the plan of the hole. */
function inOwnMetres(text: string, at: HoleAt | undefined): string {
  if (at === undefined) return text;
  const rows = Math.max(-44, Math.floor(at.loggedM) - 50);
  const bit = Math.max(at.drilledM, at.rodM) - 60;
  const plan = (at.plannedM ?? 120) - 120;
  const moved = (by: number) => (depth: string) => String(Number((Number(depth) + by).toFixed(2)));
  return text
    .replaceAll(/(?<![\d.@])(?:4[4-9]|50)(?:\.\d)?(?![\d.%]| mm)/g, moved(rows))
    .replaceAll(/(?<=@)54\.5\b/g, String(Number((at.rodM - 0.5).toFixed(2))))
    .replaceAll(/(?<=@)60\b/g, moved(bit))
    .replaceAll(/(?<=;shot |b)6[03](?= |:)/g, moved(bit))
    .replaceAll(/\b7[08](?=-| |$)/g, moved(bit))
    .replaceAll(/(?<=to )132\b/g, moved(plan));
}

/** A rock and a mineral that the schema types, in the place of those of the examples. */
function inOwnStrokes(text: string, { rock, mineral, key, named, seen, event }: ExampleStrokes): string {
  const told = {
    'ba py2': `${rock} ${mineral.text}`,
    "rock'BAS": named,
    'sulphides PYR>=2': seen,
    ws2: event,
  };
  return text
    .replaceAll(
      /\bba py2\b|\brock'BAS\b|\bsulphides PYR>=2|\bws2\b/g,
      (each) => told[each as keyof typeof told],
    )
    .replaceAll(/\bpy2\b/g, mineral.text)
    .replaceAll(/\bpy9=/g, `${mineral.pair}9=`)
    .replaceAll(/\bp(?=[03](?:\b|$)|,)/g, key);
}
