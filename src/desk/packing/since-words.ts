import { localDate, localTime, type Stamp } from '../../quantity/stamp.ts';
import type { Since } from './pack.ts';

/** Why a bundle holds everything in full, in words. */
export function unheardWords(camp: readonly string[]): string {
  return camp.length === 0
    ? 'Everything in full: no other copy has said yet what it holds.'
    : `Everything in full: no bundle has come from camp (${camp.join(', ')}) yet that says what it holds.`;
}

/** What a bundle leaves out, in words: who acknowledged what they hold, and how much of it is as they have it. */
export function sinceWords({ receivers, unchanged }: Since, holes: number): string {
  const who = receivers.map(({ by, at }) => `${by} (${localDate(at as Stamp)} ${localTime(at as Stamp)})`);
  const left = `${unchanged} ${unchanged === 1 ? 'document is' : 'documents are'} left out, unchanged`;
  return `Only what is new or changed since ${who.join(' and ')}: ${holes} ${holes === 1 ? 'hole' : 'holes'}; ${left}.`;
}
