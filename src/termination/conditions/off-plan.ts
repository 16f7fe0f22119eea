import { depthFromMetres, formatDepth } from '../../quantity/depth.ts';
import { triOf } from '../../quantity/tri.ts';
import { directionWanted, known } from '../evaluate/known.ts';
import { defineCondition, metresM } from '../rules/condition-kind.ts';

export const offPlan = defineCondition({
  key: 'offPlan',
  about: 'direction',
  title: 'The hole is too far from its plan.',
  rationale:
    'Distance of the deepest surveyed point from the planned hole, from the last shot on. It can’t be told before the first shot.',
  example: { moreThanM: 5 },
  shape: { moreThanM: metresM.describe('Metres from the planned hole') },
  assess: ({ moreThanM }, situation) =>
    known(
      situation,
      situation.direction,
      ({ offPlanMm }) =>
        offPlanMm === undefined ? undefined : triOf(offPlanMm > depthFromMetres(moreThanM)),
      {
        unknown: (entries) => `the distance from the plan is not known: ${directionWanted(entries)}`,
        told: ({ offPlanMm }) => `${formatDepth(offPlanMm ?? 0)} m from the plan (limit ${moreThanM} m)`,
      },
    ),
});
