import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { recordStream } from '../hole/commands/drilled.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { formatInterval, type Interval } from '../quantity/interval.ts';
import { formatMass, type Mass } from '../quantity/mass.ts';
import type { Document } from '../record/document.ts';
import { massUnreadable } from '../sampling/findings.ts';
import { readMass } from '../sampling/recovery/mass-typed.ts';
import type { MassesTyped } from '../shorthand/command.ts';

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
  const moisture = readMoisture(said.masses.moisture);
  if (!moisture.ok) found.push(...moisture.findings);
  if (found.length > 0 || !moisture.ok) return { ok: false, findings: found };
  const over = { fromMm: said.fromMm, toMm: said.toMm };
  const { value: water } = moisture;
  const masses = {
    ...Object.fromEntries(read.map(({ field, mass }) => [field, mass])),
    ...(water === undefined ? {} : { waterPermille: water }),
  };
  const words = [
    ...read.map(({ what, mass }) => `${what} ${formatMass(mass)}`),
    ...(water === undefined ? [] : [`${water / 10} % water`]),
  ].join(', ');
  return ok({
    ...recordStream(hole, { ...over, ...masses }, maker),
    what: `${words} at ${formatInterval(over)}`,
  });
}

/** The most water that drill chips hold, percent of their mass: more is a slip, common practice. */
const MOST_WATER_PERCENT = 50;

/** Percent of water as typed, in thousandths; undefined where none is. */
function readMoisture(typed: string | undefined): Result<number | undefined> {
  if (typed === undefined) return ok(undefined);
  const percent = /^\d{1,2}(\.\d)?$/.test(typed) ? Number(typed) : Number.NaN;
  if (percent <= MOST_WATER_PERCENT) return ok(Math.round(percent * 10));
  return refused(
    massUnreadable.at(
      { field: 'moisture' },
      {
        excerpt: typed,
        problem: 'This is not a percentage of water.',
        remedy: `Type percent of the mass as weighed, up to ${MOST_WATER_PERCENT}: 4 or 4.5.`,
      },
    ),
  );
}
