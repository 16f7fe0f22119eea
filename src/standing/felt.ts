import type { FeltByDriller } from '../hole/drilled.ts';
import { holeNouns } from '../hole/hole.ts';
import { formatInterval } from '../quantity/interval.ts';
import { localTime } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';

/** `driller: no cavity felt at 44–50 (Mick Tarrant)`. */
export function feltWords({ felt, driller, ...metres }: FeltByDriller): string {
  const who = driller === undefined ? '' : ` (${driller})`;
  return `driller: ${felt === 'solid' ? 'no cavity felt' : 'CAVITY felt'} at ${formatInterval(metres)}${who}`;
}

/** The driller's latest word, and every cavity that he felt, for whoever takes over: with the time and who wrote it down. */
export function feltLines(hole: Document): readonly string[] {
  const all = holeNouns(hole, 'feltByDriller');
  const latest = all.at(-1);
  return all
    .filter((each) => each.felt === 'cavity' || each === latest)
    .map((each) => `${feltWords(each)}, recorded by ${each.by} ${localTime(each.at)}: no log`);
}
