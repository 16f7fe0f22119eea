/** Mass as integer grams. */
export type Mass = number & { readonly unit: 'g' };

/** Mass from integer grams. Throws RangeError unless a safe integer of at least 0. */
export function massFromGrams(grams: number): Mass {
  if (!Number.isSafeInteger(grams) || grams < 0)
    throw new RangeError(`mass must be whole grams, got ${grams}`);
  return (grams + 0) as Mass;
}

/** Mass from kilograms, rounded to the gram. Throws RangeError unless finite and at least 0. */
export function massFromKg(kg: number): Mass {
  if (!Number.isFinite(kg) || kg < 0) throw new RangeError(`mass must be kilograms of at least 0, got ${kg}`);
  return massFromGrams(Math.round(kg * 1000));
}

/** Kilograms as a number. */
export function kilograms(mass: number): number {
  return mass / 1000;
}

/** `41.4 kg`, one decimal. */
export function formatMass(mass: number): string {
  return `${kilograms(mass).toFixed(1)} kg`;
}
