import { ok, type Result, refused } from '../../finding/finding.ts';
import { type Mass, massFromKg } from '../../quantity/mass.ts';
import { massInGrams, massUnreadable } from '../findings.ts';

/** The most that a bag can hold, kilograms: a calico, and the bulk bag of a metre. */
export const MOST_KG = { calico: 30, bulk: 200 } as const;

/** A mass typed in kilograms (`3.2`). A figure that only makes sense in grams is named as such, with what to type instead. */
export function readMass(text: string, bag: keyof typeof MOST_KG): Result<Mass> {
  const place = { field: `mass of the ${bag}` };
  const kg = /^\d{1,6}(\.\d{1,3})?$/.test(text) ? Number(text) : Number.NaN;
  if (kg <= MOST_KG[bag]) return ok(massFromKg(kg));
  const grams = kg / 1000;
  if (kg >= 100 && grams <= MOST_KG[bag])
    return refused(
      massInGrams.at(place, {
        excerpt: text,
        problem: `${text} kg is more than a ${bag} bag holds; it looks like grams.`,
        remedy: `Type kilograms: ${Number(grams.toFixed(3))}`,
      }),
    );
  return refused(
    massUnreadable.at(place, {
      excerpt: text,
      problem: 'This is not a mass in kilograms that such a bag can have.',
      remedy: `Type kilograms from 0 to ${MOST_KG[bag]}, such as 3.2`,
    }),
  );
}
