import type { BagRun } from '../../hole/bags.ts';
import { type BagNumber, formatBagNumber, type NumberForm, parseBagNumber } from './bag-number.ts';

/** The numbers labelled for a hole, run after run, as one line that can be counted along. */
export interface NumberLine {
  readonly length: number;
  /** The number at a place from 0, or undefined past either end. */
  readonly at: (place: number) => string | undefined;
  /** The place of a number, or undefined where it was not labelled for this hole. */
  readonly placeOf: (number: string) => number | undefined;
}

/** The line of the runs in the order they were made. A run that is not of the project's form, or runs backwards, holds no numbers. */
export function numberLine(form: NumberForm, runs: readonly BagRun[]): NumberLine {
  const stretches: { first: BagNumber; last: BagNumber; start: number }[] = [];
  let length = 0;
  for (const run of runs) {
    const first = parseBagNumber(form, run.first);
    const last = parseBagNumber(form, run.last);
    if (first === undefined || last === undefined) continue;
    if (first.prefix !== last.prefix || last.serial < first.serial) continue;
    stretches.push({ first, last, start: length });
    length += last.serial - first.serial + 1;
  }
  return {
    length,
    at: (place) => {
      if (place < 0 || place >= length) return undefined;
      const held = stretches.findLast((each) => each.start <= place);
      if (held === undefined) return undefined;
      const { prefix, serial } = held.first;
      return formatBagNumber(form, { prefix, serial: serial + place - held.start });
    },
    placeOf: (number) => {
      const parsed = parseBagNumber(form, number);
      if (parsed === undefined) return undefined;
      const held = stretches.find(
        ({ first, last }) =>
          first.prefix === parsed.prefix && first.serial <= parsed.serial && parsed.serial <= last.serial,
      );
      return held === undefined ? undefined : held.start + parsed.serial - held.first.serial;
    },
  };
}
