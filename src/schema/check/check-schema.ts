import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { nearestFree } from '../change/propose-strokes.ts';
import { bagPrefix } from '../findings.ts';
import type { LoggingSchema } from '../logging-schema.ts';
import { type Origins, raiserOf } from '../read/whereabouts.ts';
import { checkFields } from './check-fields.ts';
import { checkDensities, checkLists, checkScales } from './check-lists.ts';
import { checkOnlyWhen, checkUnlikely } from './check-only-when.ts';
import { checkStrokes } from './check-strokes.ts';

/**
 * Everything that is wrong with a schema, or worth a look. With its origins (from `resolveSchema`) each finding has file,
 * line, column and excerpt; without them, the name of the field, list or scale.
 */
export function checkSchema(schema: LoggingSchema, origins?: Origins): readonly Finding[] {
  const raise = raiserOf(origins);
  const found = [
    ...checkFields(schema, raise),
    ...checkLists(schema, raise),
    ...checkScales(schema, raise),
    ...checkDensities(schema, raise),
    ...checkOnlyWhen(schema, raise),
    ...checkUnlikely(schema, raise),
    ...checkStrokes(schema, raise, (stroke) => nearestFree(schema, stroke)),
  ];
  return found.filter((finding) => !isAccepted(schema, finding));
}

/** True of what the author has looked at and lives with. A fault is never accepted. */
function isAccepted({ accepted = [] }: LoggingSchema, { severity, code, problem }: Finding): boolean {
  return severity !== 'fault' && accepted.some((each) => each.finding === code && each.problem === problem);
}

/**
 * Bag numbers that could be read as a line of the log, by their prefixes (an empty one stands for numbers of digits only).
 * A line never begins with a capital or a digit, so a bag number must.
 */
export function checkBagPrefixes(prefixes: readonly string[], place: Place): readonly Finding[] {
  return prefixes
    .filter((prefix) => prefix !== '' && !/^[A-Z0-9]/.test(prefix))
    .map((prefix) =>
      bagPrefix.at(place, {
        problem: `bag numbers that begin with ${JSON.stringify(prefix)} could be read as a line of the log`,
        remedy: 'Use a prefix that begins with a capital or a digit.',
        excerpt: prefix,
      }),
    );
}
