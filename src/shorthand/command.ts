import { type Depth, parseDepth } from '../quantity/depth.ts';
import type { Interval } from '../quantity/interval.ts';
import type { Wrong } from './meaning.ts';
import type { Until } from './reason.ts';
import type { RodCare } from './rod-care.ts';

/** What a word behind `;` asks for, as data; depths in millimetres along the hole. */
export type Command =
  | { readonly does: 'undo' | 'redo' | 'leave' }
  /** `check`: what was read at the rod check, where it was typed: last digits, `x6` bags, `@54.5` depth. */
  | { readonly does: 'rod done'; readonly check?: string }
  /** A mismatch noted at a rod is mended; `check` as at the rod. */
  | { readonly does: 'mend'; readonly check?: string }
  /** A bag in hand compared with where it lies: any depth within its metre, and the chute it hangs under. */
  | {
      readonly does: 'scan';
      readonly number: string;
      readonly depthMm: Depth;
      readonly chute?: 'first' | 'second';
    }
  | { readonly does: 'put control off'; readonly reason: string }
  | ({ readonly does: 'bag'; readonly kind: 'primary' | 'duplicate'; readonly number: string } & Interval)
  | { readonly does: 'control'; readonly kind: 'standard' | 'blank'; readonly number: string }
  | { readonly does: 'spoiled bag'; readonly number: string; readonly reason: string }
  /** A torn bag and the spare that takes its place; if none is given, the next one. */
  | { readonly does: 'spare'; readonly number: string; readonly spare?: string; readonly reason: string }
  /** Rows of the interval again from `atMm` down, or from the logged head if none is given. */
  | ({ readonly does: 'copy'; readonly atMm?: Depth } & Interval)
  /** Rows of the interval moved down by `byMm`, up where it is negative. */
  | ({ readonly does: 'shift'; readonly byMm: number } & Interval)
  /** `clear`: not logged again. `insert`: a forgotten interval; rows below move down. `merge`: one row of several. */
  | ({ readonly does: 'clear' | 'insert' | 'merge' } & Interval)
  /** The row that holds `atMm` becomes two, alike. */
  | { readonly does: 'split'; readonly atMm: Depth }
  | RigCommand;

/** What is noted at the drilled head; an interval left out is the rod being drilled. */
export type RigCommand =
  | { readonly does: 'moisture'; readonly moisture: 'dry' | 'moist' | 'wet'; readonly over?: Interval }
  | {
      readonly does: 'recovery';
      readonly recovery: 'full' | 'good' | 'fair' | 'poor' | 'none';
      readonly over?: Interval;
    }
  | { readonly does: 'contaminated'; readonly over?: Interval }
  /** The driller's word on what was felt at the bit, over the latest rod where no interval is said; `driller`: who said it. */
  | {
      readonly does: 'felt';
      readonly felt: 'solid' | 'cavity';
      readonly over?: Interval;
      readonly driller?: string;
    }
  /** A cavity that was written down by a slip, taken out of the record; the history keeps it. */
  | { readonly does: 'no cavity'; readonly over: Interval }
  /** What was seen of cyclone, splitter and hole at the latest rod. */
  | { readonly does: 'hygiene'; readonly care: RodCare }
  /** Masses in kilograms as typed: whoever takes them reads the figures. */
  | ({ readonly does: 'mass'; readonly masses: MassesTyped } & Interval)
  /** The next number whose kind can be chosen becomes this control; the reason may be the log's own. */
  | {
      readonly does: 'choose control';
      readonly kind: 'standard' | 'blank' | 'field duplicate';
      readonly reason?: string;
    }
  /** A duplicate and its primary hang on each other's chute: their numbers change places. */
  | { readonly does: 'swap pair'; readonly lastDigits: string }
  /** The bit as measured, millimetres, at a depth or where the hole is drilled to. */
  | { readonly does: 'bit'; readonly bitMm: number; readonly atMm?: Depth }
  /** Calicos ticked off, by their last digits: one, or the first and the last. */
  | { readonly does: 'tick'; readonly first: string; readonly last?: string }
  | { readonly does: 'photo'; readonly tray: number; readonly file: string }
  | { readonly does: 'number bags'; readonly first: string; readonly last: string }
  /** Labels left over from a hole of the rig that is over carry on into this one. */
  | { readonly does: 'take labels left over' }
  /** `lastDigits`: of the control put off that is placed now; the oldest if none is given. */
  | { readonly does: 'place control'; readonly lastDigits?: string }
  /** A shot, and a run of a survey tool, as words; read where shots are read, against the hole. */
  | { readonly does: 'shot'; readonly said: string }
  | { readonly does: 'survey run'; readonly said: string }
  /** Shots, or their azimuths alone, that are not used, or used again. */
  | { readonly does: 'reject shots' | 'use shots'; readonly said: string }
  | { readonly does: 'collar'; readonly state: 'capped' | 'plugged' }
  /** Direction and depth of the hole as words; read where plans are read. */
  | { readonly does: 'plan'; readonly said: string }
  /** A contact or zone that the plan expects, as words; read where the schema is known. */
  | { readonly does: 'expect'; readonly said: string }
  /** `called`: who was called, where `called NAME:` stands in front. */
  | {
      readonly does: 'decide';
      readonly kind: 'held' | 'extended';
      readonly reason: string;
      readonly called?: string;
      /** For `extended`: the depth to go on to, or how many metres more. */
      readonly until?: Until;
    }
  | { readonly does: 'not lined up'; readonly reason: string }
  | { readonly does: 'stop'; readonly reason: string }
  | { readonly does: 'stop over' };

/** Masses of a metre by what was weighed, as typed, and the percent of water in it. */
export type MassesTyped = { readonly [what in 'bulk' | 'split' | 'duplicate' | 'moisture']?: string };

/** One command: its word, how it is typed, what it does, and how its text is read. */
export type CommandWord = {
  readonly word: string;
  readonly form: string;
  readonly does: string;
  /** Shown in words before it is done; `=` at the end of the line takes the preview's place. */
  readonly previewed: boolean;
  /** It may ask before it is done; `=` at the end of the line is the answer. */
  readonly asks?: true;
  readonly read: (text: string) => Command | Wrong;
};

/** A refusal that shows the form. */
export function wrong(needed: string, form: string): Wrong {
  return { problem: `Needs ${needed}`, remedy: `Type it like ${form}` };
}

/** `44-49` in metres, the upper depth first; undefined for anything else. */
export function readInterval(text: string): Interval | undefined {
  const [from, to, ...more] = text.split('-').map(parseDepth);
  if (from === undefined || to === undefined || more.length > 0 || from >= to) return undefined;
  return { fromMm: from, toMm: to };
}

/** A word that is alone. */
export function alone(word: string, command: Command, does: string): CommandWord {
  return {
    word,
    form: `;${word}`,
    does,
    previewed: false,
    read: (text) =>
      text === '' ? command : { problem: `;${word} takes nothing after it`, remedy: `Type ;${word}` },
  };
}
