import { formatDepth } from '../quantity/depth.ts';
import { formatInterval, type Interval } from '../quantity/interval.ts';
import { codeOf, type Field, type FieldOf, type LoggingSchema } from '../schema/logging-schema.ts';
import { type Cell, NONE, type PointEvent } from '../value/cell.ts';
import { pointIn } from './read-amount.ts';
import { type Refusal, refusal, type Said } from './said.ts';
import { codeNamed, saidTwice } from './slots.ts';
import { labelOf } from './typing-index.ts';

const AT_EXAMPLE = ';at 44.6 ws2';

/** The events of a row with those of the items put in at their depths, and what they take out left out. */
export function combineEvents(
  schema: LoggingSchema,
  interval: Interval | undefined,
  field: FieldOf<'events'>,
  items: readonly Said[],
  before: Cell | undefined,
): Cell | Refusal {
  const twice = saidTwice(field, items);
  if (twice !== undefined)
    return refusal(
      twice,
      `${labelOf(schema, field, codeNamed(twice))} is given twice`,
      'Give it once: a second one in the same row goes into the remark',
    );
  const whole = items.map(({ says }) => says).find((says) => 'cell' in says);
  if (whole !== undefined) return whole.cell;
  const events: { [code: string]: PointEvent } =
    before !== undefined && 'events' in before ? { ...before.events } : {};
  for (const item of items) {
    const { says } = item;
    if (!('event' in says)) continue;
    if (says.gone === true && isUnseen(field, before)) return notObserved(schema, field, item);
    if (says.gone === true) {
      delete events[says.event];
      continue;
    }
    const atMm = says.at === undefined ? undefined : depthOf(says.at, interval);
    if (says.at !== undefined && atMm === undefined) return outside(schema, field, item, interval);
    events[says.event] = {
      ...(atMm === undefined ? {} : { atMm }),
      ...(says.number === undefined ? {} : { number: says.number }),
    };
  }
  return Object.keys(events).length > 0 ? { events } : NONE;
}

/** True where no one looked for events: that one is not there says nothing of the others. */
function isUnseen(field: FieldOf<'events'>, before: Cell | undefined): boolean {
  const unsaid = before ?? { absent: field.unsaid };
  return 'absent' in unsaid && unsaid.absent === 'not observed';
}

function notObserved(schema: LoggingSchema, field: Field, item: Said): Refusal {
  const label = labelOf(schema, field, codeNamed(item));
  return refusal(
    item,
    `${label} can't be taken out: ${field.label} not observed`,
    `Say ${field.name}'0 if you looked and saw none`,
  );
}

/** The depth of an event; where no one knows its row, only one that is typed whole. */
function depthOf(at: Parameters<typeof pointIn>[0], interval: Interval | undefined): number | undefined {
  if (interval === undefined) return at.isTail ? undefined : at.mm;
  return pointIn(at, interval);
}

function outside(schema: LoggingSchema, field: Field, item: Said, interval: Interval | undefined): Refusal {
  const label = labelOf(schema, field, codeNamed(item));
  if (interval === undefined) return refusal(item, `${label}: at what depth?`, 'Type it whole: @44.6');
  const at = 'event' in item.says ? item.says.at : undefined;
  const typed = at === undefined ? '' : `${formatDepth(at.mm)}${at.isTail ? ' of a metre' : ' m'}`;
  return refusal(
    item,
    `${label}: ${typed} is not one place inside the row ${formatInterval(interval)}`,
    `Type a depth from ${formatDepth(interval.fromMm)} to under ${formatDepth(interval.toMm)} m; elsewhere ;at and its depth: ${AT_EXAMPLE}`,
  );
}

/** An event in words: `water strike 2 L/s at 44.6 m`. Units are those of the schema of today; the legend keeps those of the hole. */
export function eventWords(
  schema: LoggingSchema,
  field: Field,
  code: string,
  { atMm, number }: PointEvent,
): string {
  const unit = codeOf(schema, field, code)?.measure?.unit;
  const figure = number === undefined ? '' : ` ${number}${unit === undefined ? '' : ` ${unit}`}`;
  const place = atMm === undefined ? '' : ` at ${formatDepth(atMm)} m`;
  return `${labelOf(schema, field, code)}${figure}${place}`;
}
