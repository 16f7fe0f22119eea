import type { Bag } from '../../../hole/bags.ts';
import {
  choosing,
  freeOfKind,
  layWith,
  type MismatchKind,
  type Situation,
  type Supposition,
} from '../mismatch.ts';

/** A number reserved for a control was used for a metre, or its bag was left out. */
export const controlForgotten: MismatchKind = {
  code: 'control-forgotten',
  name: 'a control forgotten',
  happened: 'The control that was due in this rod is not in the stream.',
  claims: ['a control due is not there'],
  ground:
    'Open the bag with the number kept for the control. Empty, or not there: put the sachet in now. Chips in it: it stays a sample, and the control goes under the number given in the mending.',
  nearSplitter: true,
  suppose: (situation) =>
    situation.expected
      .filter((bag) => bag.kind !== 'primary')
      .flatMap((bag) => [...usedForMetre(situation, bag), ...leftOut(situation, bag)]),
};

function usedForMetre(situation: Situation, control: Bag): readonly Supposition[] {
  const { number, kind } = control;
  if (kind === 'spoiled' || kind === 'no sample') return [];
  const asMetre = { number, kind: 'primary' as const, reason: `its ${kind} was forgotten` };
  const issue = layWith(situation, choosing(situation, [asMetre]));
  const used = new Set(issue.map((bag) => bag.number));
  const later = freeOfKind(situation, (each) => each === 'primary').find((each) => !used.has(each));
  const moved = later === undefined ? [] : [{ number: later, kind, reason: `forgotten at ${number}` }];
  return [
    {
      at: number,
      place: number,
      fix: { issue, choices: [asMetre, ...moved] },
      weight: 3,
    },
  ];
}

function leftOut({ expected }: Situation, control: Bag): readonly Supposition[] {
  if (control.kind === 'field duplicate') return [];
  const lying = expected.filter((bag) => bag !== control);
  const { number, kind } = control;
  const deed = `${number} is empty, put its ${kind} in now`;
  return [{ at: number, place: number, lying, fix: { issue: expected }, deed, weight: 2 }];
}
