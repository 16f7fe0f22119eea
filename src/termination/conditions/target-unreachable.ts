import { triNot } from '../../quantity/tri.ts';
import { directionWanted, known } from '../evaluate/known.ts';
import { defineCondition } from '../rules/condition-kind.ts';

export const targetUnreachable = defineCondition({
  key: 'targetUnreachable',
  about: 'direction',
  title: 'The target can’t be reached any more.',
  rationale:
    'From the last shot on: no bend that a hole of this kind takes would bring it back. Goes with _ask_.',
  example: {},
  shape: {},
  assess: (_said, situation) =>
    known(
      situation,
      situation.direction,
      ({ targetReachable }) => (targetReachable === undefined ? undefined : triNot(targetReachable)),
      {
        unknown: (entries) => `whether the target can be reached is not known: ${directionWanted(entries)}`,
        told: ({ targetReachable }) =>
          targetReachable === 'no' ? 'the target can’t be reached any more' : 'the target can be reached',
      },
    ),
});
