import { hashText } from '../../record/hash.ts';
import type { Sampling } from '../sampling.ts';

/**
 * Which of `names` comes at a turn (a whole number from 0): every name once a round, each round in an order of its own.
 * Reproducible from the seed; without it the next name can't be told from the ones before. Undefined where there are none.
 */
export function rotated(seed: string, names: readonly string[], turn: number): string | undefined {
  if (names.length === 0) return undefined;
  const round = Math.floor(turn / names.length);
  const order = names
    .map((name) => ({ name, key: hashText(`${seed}\n${round}\n${name}`) }))
    .sort((a, b) => (a.key < b.key ? -1 : 1));
  return order[turn % names.length]?.name;
}

/**
 * What a control is made of: the lot of a standard, the name of a blank. It hangs on the serial alone, so the sheet printed
 * the evening before and the rod done agree. Undefined for a duplicate, and where the project names no material.
 */
export function materialFor(sampling: Sampling, kind: string, serial: number): string | undefined {
  const names = materialNames(sampling, kind);
  return rotated(`${sampling.rotationSeed}\n${kind}`, names, turnOf(sampling, kind, serial));
}

/** Materials of a kind that are still put out. */
function materialNames({ standards, blanks }: Sampling, kind: string): readonly string[] {
  if (kind === 'standard') return standards.filter((each) => each.retired !== true).map((each) => each.lot);
  if (kind === 'blank') return blanks.filter((each) => each.retired !== true).map((each) => each.name);
  return [];
}

/** How many slots of a kind lie below a serial: the turn of the rotation. */
function turnOf(sampling: Sampling, kind: string, serial: number): number {
  const slots = sampling.slots.filter(
    (slot) => slot.kind === kind || slot.oneOf.some((each) => each === kind),
  );
  const below = slots.map((slot) => Math.max(0, Math.ceil((serial - slot.at) / slot.every)));
  return slots.length === 0 ? serial : below.reduce((sum, each) => sum + each, 0);
}
