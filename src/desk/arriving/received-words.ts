import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import type { Received } from './receive-files.ts';
import type { TakenArrival } from './take-arrival.ts';

/** What to say of one thing that arrived: that all is well, or what is wrong with it and what to do. */
export type ReceivedWords =
  | { readonly fine: true; readonly lines: readonly string[] }
  | { readonly fine: false; readonly place: Place; readonly problem: string; readonly remedy: string }
  | { readonly fine: false; readonly findings: readonly Finding[] };

/** What came of one thing that arrived, in words. `again` is how it is given again where it takes much away: `--may-clear`. */
export function receivedWords(received: Received, again: string): ReceivedWords {
  switch (received.kind) {
    case 'taken':
      return takenWords(received.taken, again);
    case 'refused':
      return { fine: false, findings: received.findings };
    case 'left':
      return leftWords(received);
    case 'heard':
      return { fine: true, lines: [heardWords(received)] };
    case 'waiting':
      return { fine: true, lines: [waitingWords(received)] };
    case 'not kept':
      return {
        fine: false,
        place: { thing: received.what },
        problem: received.problem,
        remedy:
          'Free space and receive it again: what was taken in stays, and changes nothing a second time.',
      };
  }
}

function leftWords({ left, drift }: Extract<Received, { readonly kind: 'left' }>): ReceivedWords {
  const { what, why, lacking } = left;
  if (lacking === undefined)
    return { fine: true, lines: [`Left: ${what}: ${why}`, ...drift.map((each) => `  ${each}`)] };
  const remedy = `${lacking} What else came was taken in.`;
  return { fine: false, place: { thing: what }, problem: why, remedy };
}

function takenWords(taken: TakenArrival, again: string): ReceivedWords {
  if (taken.ok === 'ask') {
    const { from, name, does, who } = taken;
    const problem = `it takes away of ours what someone has to agree to: it ${does} (${who})`;
    const remedy = `Nothing of it was taken in. Ask whoever did that; if it is meant, give ${again} too.`;
    return { fine: false, place: { file: from, thing: name }, problem, remedy };
  }
  if (!taken.ok) {
    const { from, name, problem } = taken;
    const remedy = 'Nothing of it was taken in. Look at where the file came from.';
    return { fine: false, place: { file: from, thing: name }, problem, remedy };
  }
  const drift = taken.drift.map((each) => `  by our schema: ${each}`);
  return { fine: true, lines: [`${taken.name}: ${outcomeWords(taken)}`, ...drift] };
}

const WORDS = {
  new: 'new here, taken in',
  same: 'the same as ours',
  older: 'older than ours, nothing changed',
  newer: 'newer than ours, taken in',
  merged: 'went its own way, merged with ours',
} as const;

function outcomeWords({ outcome, edited, asked, did }: Extract<TakenArrival, { readonly ok: true }>): string {
  const byHand =
    edited === 0
      ? ''
      : `; ${edited === 1 ? 'one thing in it was' : `${edited} things in it were`} edited outside offsider, which its history says`;
  const open =
    asked.length === 0
      ? ''
      : `; ${asked.length} ${asked.length === 1 ? 'question' : 'questions'} to settle, nothing of theirs is lost: offsider questions`;
  return `${WORDS[outcome]}${did === '' ? '' : `: it ${did}`}${byHand}${open}`;
}

/** What another copy acknowledged of ours. */
function heardWords({ by, holds, of }: Extract<Received, { readonly kind: 'heard' }>): string {
  return `The copy of ${by} holds ${holds} of ${of} documents as they are here. What is packed for it next goes on from there.`;
}

/** Which parts of a bundle are here and which are not. */
function waitingWords({ header, missing }: Extract<Received, { readonly kind: 'waiting' }>): string {
  const here = header.of - missing.length;
  return `${header.bundle}: ${here} of ${header.of} parts ${here === 1 ? 'is' : 'are'} here and kept in the inbox. Missing: ${missing.length === 1 ? 'part' : 'parts'} ${missing.join(', ')}. Nothing of it is taken in until all are here: receive the ${missing.length === 1 ? 'mail that brings it' : 'mails that bring them'}.`;
}
