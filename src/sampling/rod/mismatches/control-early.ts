import { choicesByNumber, reservedFor } from '../../scheme/scheme.ts';
import { choosing, freeOfKind, layWith, type MismatchKind } from '../mismatch.ts';

/** A control of the next rod was put in now, under a number meant for a metre. */
export const controlEarly: MismatchKind = {
  code: 'control-early',
  name: 'a control put in early',
  happened: 'A control that is due later is in this rod, under a metre’s number.',
  claims: ['a control lies under a metre’s number'],
  ground: 'Find the sachet bag. It keeps its number; the number kept for it further on becomes a metre.',
  nearSplitter: true,
  asks: 'Which calico holds a sachet, though its number is a metre’s?',
  suppose: (situation) => {
    const { samples, sampling, expected } = situation;
    const placeOf = (number: string) => situation.line.placeOf(number) ?? -1;
    const ends = placeOf(expected.at(-1)?.number ?? '');
    const due = freeOfKind(situation, (kind) => kind === 'standard' || kind === 'blank').find(
      (each) => placeOf(each) > ends,
    );
    if (due === undefined) return [];
    const { kind } = reservedFor(sampling, due, choicesByNumber(situation.state.choices));
    return freeOfKind(situation, (each) => each === 'primary')
      .slice(0, samples.length + 1)
      .map((number) => {
        const choices = [
          { number, kind, reason: `put in before ${due}` },
          { number: due, kind: 'primary' as const, reason: `its ${kind} went in early` },
        ];
        const issue = layWith(situation, choosing(situation, choices));
        return {
          at: number,
          place: number,
          fix: { issue, choices },
          weight: 1.5 / samples.length,
        };
      });
  },
};
