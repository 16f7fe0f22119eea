import type { Finding } from '../finding/finding.ts';
import { STANDING_FINDINGS } from '../hole/findings.ts';
import { instantMs, localDate, localTime, parseStamp, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';

/** Past this a clock is set wrong: two laptops that are a few minutes or a time zone apart are not meant, milliseconds. */
const DAY_MS = 24 * 60 * 60 * 1000;

/** Entries of each document that are looked at, from its end: the newest stamp is there unless a clock was wrong for longer than this. */
const LATEST = 200;

/** The newest stamp in the histories of documents; undefined where none has one. */
function newestStamp(documents: Iterable<Document>): Stamp | undefined {
  let newest: string | undefined;
  let newestMs = Number.NEGATIVE_INFINITY;
  for (const { history } of documents)
    for (const { at } of history.slice(-LATEST)) {
      const ms = Date.parse(at);
      if (ms <= newestMs || Number.isNaN(ms)) continue;
      newestMs = ms;
      newest = at;
    }
  return newest === undefined ? undefined : parseStamp(newest);
}

/** How far the clock lies behind what was recorded already, in words; undefined where it does not, by more than a day. */
export function clockBehindWords(documents: Iterable<Document>, now: Stamp): string | undefined {
  const newest = newestStamp(documents);
  if (newest === undefined || instantMs(newest) - instantMs(now) <= DAY_MS) return undefined;
  return `the clock of this computer says ${localDate(now)} ${localTime(now)}, and work of ${localDate(newest)} ${localTime(newest)} is recorded already`;
}

/** The same as a finding of the computer's clock. */
export function clockFindings(documents: Iterable<Document>, now: Stamp): readonly Finding[] {
  const problem = clockBehindWords(documents, now);
  if (problem === undefined) return [];
  const remedy = 'Set the clock before you log: rods, shifts and every edit are stamped with it.';
  return [STANDING_FINDINGS.clockBehind.at({ thing: 'clock' }, { problem, remedy })];
}
