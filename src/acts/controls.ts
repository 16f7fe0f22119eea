import { ok, type Result, refused } from '../finding/finding.ts';
import { issueBags, putOffControl } from '../hole/commands/drilled.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, holeNouns } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import { numberAmong } from '../sampling/numbers/number-named.ts';
import { placedBag } from '../sampling/stream/issue.ts';
import { stream } from '../sampling/stream/stream.ts';
import { streamStateOf } from '../standing/stream.ts';
import { rodOf } from './place-bag.ts';

/** Puts the next control off, with its reason: its number stays reserved for it and stays on the panel. */
export function putNextControlOff(
  project: Project,
  hole: Document,
  reason: string,
  maker: Maker,
): Result<Made> {
  for (const next of stream(project.sampling, streamStateOf(hole))) {
    if (next.kind === 'primary') continue;
    return ok(
      putOffControl(
        {
          number: next.number,
          kind: next.kind,
          reason,
          at: maker.at,
          ...(next.of === undefined ? {} : { of: next.of }),
        },
        maker,
      ),
    );
  }
  return refused(
    REFUSALS.notThere.at(
      { hole: headerOf(hole).name },
      {
        problem: 'no control comes up among the numbered bags',
        remedy: 'Number more bags first: ;numbered and their first and last number.',
      },
    ),
  );
}

/** Places the control put off first: its kept number goes on the bag now. `number` picks another one of those put off. */
export function placeControl(
  project: Project,
  hole: Document,
  number: string | undefined,
  maker: Maker,
): Result<Made> {
  const open = holeNouns(hole, 'putOff').filter((put) => put.placedAt === undefined);
  const refusal = {
    kind: REFUSALS.notThere,
    place: { hole: headerOf(hole).name, ...(number === undefined ? {} : { thing: `bag ${number}` }) },
    problem: 'no control is put off under that number',
    remedy: 'The panel of bags lists those that are.',
  };
  const waiting = open.map((each) => each.number);
  const named = numberAmong(project.sampling.numbers, waiting, number ?? waiting[0] ?? '', refusal);
  if (!named.ok) return named;
  const put = open.find((each) => each.number === named.value);
  if (put === undefined) return refused(refusal.kind.at(refusal.place, refusal));
  const of = holeNouns(hole, 'bags').find((bag) => bag.number === put.of);
  const bag = placedBag(project.sampling, put, of);
  if (!bag.ok) return bag;
  const rod = rodOf(hole, bag.value);
  const placed = rod === undefined ? bag.value : { ...bag.value, rod };
  return issueBags(hole, `${put.kind} ${put.number} placed`, [placed], maker);
}
