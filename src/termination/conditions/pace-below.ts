import * as z from 'zod';
import { triOf } from '../../quantity/tri.ts';
import { known } from '../evaluate/known.ts';
import { defineCondition } from '../rules/condition-kind.ts';

export const paceBelow = defineCondition({
  key: 'paceBelow',
  about: 'time',
  title: 'The rig drills slower than so many metres an hour.',
  rationale:
    'A hole that hardly goes down costs more than another one. From the stamps of the rods, the last one known. Goes with _ask_.',
  example: { metresPerHour: 4 },
  shape: { metresPerHour: z.number().min(0.1).max(500).describe('Metres an hour') },
  assess: ({ metresPerHour: limit }, situation) =>
    known(
      situation,
      situation.pace,
      ({ metresPerHour }) => (metresPerHour === undefined ? undefined : triOf(metresPerHour < limit)),
      {
        unknown: 'the pace is not known: it needs two rods done (;rod) at two times',
        told: ({ metresPerHour }) => `${(metresPerHour ?? 0).toFixed(1)} m an hour (limit ${limit})`,
      },
    ),
});
