import { depthFromMetres, formatDepth } from '../../quantity/depth.ts';
import { triOf } from '../../quantity/tri.ts';
import { directionWanted, known } from '../evaluate/known.ts';
import { defineCondition, metresM } from '../rules/condition-kind.ts';

export const projectedMiss = defineCondition({
  key: 'projectedMiss',
  about: 'direction',
  title: 'As the hole goes, it will miss its target by too much.',
  rationale:
    'The miss at the target with the hole carried on as it goes, from the last shot on. A projection: it says where the hole would come out, not where it ' +
    'will. It can’t be told before the first shot.',
  example: { moreThanM: 10 },
  shape: { moreThanM: metresM.describe('Metres from the target') },
  assess: ({ moreThanM }, situation) =>
    known(
      situation,
      situation.direction,
      ({ projectedMissMm }) =>
        projectedMissMm === undefined ? undefined : triOf(projectedMissMm > depthFromMetres(moreThanM)),
      {
        unknown: (entries) => `the projected miss is not known: ${directionWanted(entries)}`,
        told: ({ projectedMissMm }) =>
          `projected miss ${formatDepth(projectedMissMm ?? 0)} m (limit ${moreThanM} m)`,
      },
    ),
});
