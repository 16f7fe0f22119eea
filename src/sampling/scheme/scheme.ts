import type { ControlChoice } from '../../hole/bags.ts';
import { type NumberForm, parseBagNumber } from '../numbers/bag-number.ts';
import type { Sampling, Slot } from '../sampling.ts';
import type { ControlKind } from '../settings.ts';

/** The slot that reserves a serial, or undefined where it is for a primary sample. Where two slots meet, the first one has it. */
export function slotAt(slots: readonly Slot[], serial: number): Slot | undefined {
  return slots.find((slot) => serial % slot.every === slot.at);
}

/** What a number is for. */
export interface Reserved {
  readonly kind: 'primary' | ControlKind;
  /** Kinds that can still be chosen. */
  readonly oneOf: readonly ControlKind[];
  /** Someone chose this kind here, beside the scheme or within it. */
  readonly chosen: boolean;
}

/** A kind chosen for a number; of the stored choice only these parts matter here. */
export type Chosen = Pick<ControlChoice, 'number' | 'kind'>;

/** What a number is for: what someone chose for it, else what the scheme reserves it for, else a primary. Known the day before. */
export function reservedFor(
  sampling: Sampling,
  number: string,
  choices: ReadonlyMap<string, Chosen>,
): Reserved {
  const serial = serialOf(sampling.numbers, number);
  const slot = slotAt(sampling.slots, serial);
  const chosen = choices.get(number);
  return {
    kind: chosen?.kind ?? slot?.kind ?? 'primary',
    oneOf: slot?.oneOf ?? [],
    chosen: chosen !== undefined,
  };
}

/** Choices by number, the latest made last. */
export function choicesByNumber(choices: readonly Chosen[]): ReadonlyMap<string, Chosen> {
  return new Map(choices.map((choice) => [choice.number, choice]));
}

/** Serial of a number that is known to be of the project's form. Throws where it is not: reading refuses such a one. */
export function serialOf(form: NumberForm, number: string): number {
  const parsed = parseBagNumber(form, number);
  if (parsed === undefined) throw new Error(`${number} is not a bag number of this project`);
  return parsed.serial;
}
