import type { WaitingEvent } from '../hole/log.ts';
import { formatDepth } from '../quantity/depth.ts';
import { fieldNamed, type LoggingSchema } from '../schema/logging-schema.ts';
import { eventWords } from '../shorthand/point-events.ts';
import type { PointEvent } from '../value/cell.ts';

/** An event that waits for its row, in words: `water strike 2 L/s at 54.2 m`; by its code where the schema lacks its field. */
export function waitingWords(
  schema: LoggingSchema,
  { field: name, code, ...event }: Pick<WaitingEvent, 'field' | 'code' | 'number'> & PointEvent,
): string {
  const field = fieldNamed(schema, name);
  const place = event.atMm === undefined ? '' : ` at ${formatDepth(event.atMm)} m`;
  return field === undefined ? `${code}${place}` : eventWords(schema, field, code, event);
}
