import { type Finding, ok, type Result } from '../../finding/finding.ts';
import { recordStream } from '../../hole/commands/drilled.ts';
import type { Made, Maker } from '../../hole/commands/made.ts';
import { formatInterval, type Interval } from '../../quantity/interval.ts';
import { formatMass, type Mass } from '../../quantity/mass.ts';
import type { Document } from '../../record/document.ts';
import { readMass } from '../../sampling/mass-typed.ts';
import type { MassesTyped } from '../../shorthand/command.ts';

const WEIGHED = [
  { what: 'bulk', field: 'bulkG', bag: 'bulk' },
  { what: 'split', field: 'splitG', bag: 'calico' },
  { what: 'duplicate', field: 'duplicateG', bag: 'calico' },
] as const;

/** Masses of a metre, typed in kilograms. A figure that is in grams, or more than such a bag holds, is refused with what to type. */
export function recordMasses(
  hole: Document,
  said: Interval & { readonly masses: MassesTyped },
  maker: Maker,
): Result<Made> {
  const found: Finding[] = [];
  const read: { what: string; field: string; mass: Mass }[] = [];
  for (const { what, field, bag } of WEIGHED) {
    const typed = said.masses[what];
    if (typed === undefined) continue;
    const mass = readMass(typed, bag);
    if (mass.ok) read.push({ what, field, mass: mass.value });
    else found.push(...mass.findings);
  }
  if (found.length > 0) return { ok: false, findings: found };
  const over = { fromMm: said.fromMm, toMm: said.toMm };
  const masses = Object.fromEntries(read.map(({ field, mass }) => [field, mass]));
  const words = read.map(({ what, mass }) => `${what} ${formatMass(mass)}`).join(', ');
  return ok({
    ...recordStream(hole, { ...over, ...masses }, maker),
    what: `${words} at ${formatInterval(over)}`,
  });
}
