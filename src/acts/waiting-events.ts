import { ok, type Result, refused } from '../finding/finding.ts';
import type { Maker } from '../hole/commands/made.ts';
import { closedRefusal } from '../hole/commands/open-hole.ts';
import { legendChanges } from '../hole/commands/rows.ts';
import { takenOff, waitChanges } from '../hole/commands/waiting-events.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf } from '../hole/hole.ts';
import { type Depth, formatDepth } from '../quantity/depth.ts';
import type { Change, Document } from '../record/document.ts';
import { cautionsShown } from '../schema/cautions.ts';
import { meaningsOf } from '../schema/legend.ts';
import type { LoggingSchema } from '../schema/logging-schema.ts';
import type { RangeLine } from '../shorthand/commands.ts';
import { eventWords } from '../shorthand/point-events.ts';
import { bitAtLeastMm } from '../standing/heads.ts';
import type { Cell } from '../value/cell.ts';
import type { RangePlan } from './range-plan.ts';

/**
 * What `;at 54.2 wk2` does where no row can hold it yet: the events wait for their row, and go into it when it is logged. A 0 takes one off
 * again. Refused further down than a rod below the bit, for then a figure slipped.
 */
export function planWaiting(
  schema: LoggingSchema,
  hole: Document,
  line: RangeLine & { readonly at: Depth },
  maker: Maker,
): Result<RangePlan> {
  const closed = closedRefusal(hole);
  if (closed) return refused(closed);
  const outside = outsideHole(hole, line.at);
  if (outside !== undefined) return outside;
  const words: string[] = [];
  const cautions: string[] = [];
  const changes: Change[] = [];
  for (const { field, says } of line.items) {
    if (!('event' in says)) continue;
    const event = { field: field.name, code: says.event, atMm: line.at };
    const label = eventWords(schema, field, says.event, { atMm: line.at, ...numberOf(says) });
    if (says.gone === true) {
      const gone = takenOff(hole, event);
      if (gone.length === 0) return nothingWaits(hole, line.at, label);
      changes.push(...gone);
      words.push(`no ${label}`);
      continue;
    }
    const cells: { readonly [field: string]: Cell } = {
      [field.name]: { events: { [says.event]: { atMm: line.at, ...numberOf(says) } } },
    };
    cautions.push(...cautionsShown(schema, {}, cells));
    changes.push(...legendChanges(hole, meaningsOf(schema, [{ cells }])));
    const recorded = { ...event, ...numberOf(says), at: maker.at, by: maker.by };
    changes.push(...waitChanges(hole, maker.newId(), recorded));
    words.push(label);
  }
  const what = `${words.join(', ')}: ahead of the log, waits for its row`;
  return ok({ lines: [what, ...new Set(cautions)], made: { what, changes: once(changes) }, isPlain: true });
}

/** Two events of one list both bring its legend: it is put once. */
function once(changes: readonly Change[]): readonly Change[] {
  const seen = new Set<string>();
  return changes.filter((change) => {
    const key = 'put' in change ? change.put.join(' ') : undefined;
    if (key === undefined) return true;
    const isNew = !seen.has(key);
    seen.add(key);
    return isNew;
  });
}

const numberOf = (says: object): { readonly number?: number } =>
  'number' in says && typeof says.number === 'number' ? { number: says.number } : {};

function outsideHole(hole: Document, atMm: number): Result<RangePlan> | undefined {
  const { name, logFromMm, rodMm } = headerOf(hole);
  const bitMm = bitAtLeastMm(hole);
  if (atMm >= logFromMm && atMm <= bitMm + rodMm) return undefined;
  const problem =
    atMm < logFromMm
      ? `${formatDepth(atMm)} m lies above the start of logging, ${formatDepth(logFromMm)} m`
      : `${formatDepth(atMm)} m is more than a rod below the bit: the hole is at ${formatDepth(bitMm)} m`;
  const remedy =
    atMm < logFromMm
      ? 'Give a depth in the hole.'
      : 'Look at the depth again; a rod done is recorded with F2.';
  return refused(REFUSALS.badInterval.at({ hole: name, fromMm: atMm }, { problem, remedy }));
}

const nothingWaits = (hole: Document, atMm: number, label: string): Result<RangePlan> =>
  refused(
    REFUSALS.notThere.at(
      { hole: headerOf(hole).name, fromMm: atMm },
      { problem: `no ${label} waits for a row`, remedy: 'The log shows what waits, with its depth.' },
    ),
  );
