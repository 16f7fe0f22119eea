import { ok, type Result, refused } from '../finding/finding.ts';
import type { Bag } from '../hole/bags.ts';
import type { Made } from '../hole/commands/made.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, holeThings } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Change, Document, Thing } from '../record/document.ts';
import { numberAmong } from '../sampling/numbers/number-named.ts';

/**
 * A field duplicate and its primary hung on each other's chute: each number takes the other's part, both stay in their metre. Either number
 * names the pair, by its last digits.
 */
export function swapPair(project: Project, hole: Document, text: string): Result<Made> {
  const bags = holeThings(hole, 'bags');
  const pairs = bags.flatMap(([twinId, twin]) => {
    const primary = bags.find(([, each]) => each.kind === 'primary' && each.number === twin.of);
    if (twin.kind !== 'field duplicate' || primary === undefined) return [];
    return [{ twinId, twin, primaryId: primary[0], primary: primary[1] }];
  });
  const refusal = {
    kind: REFUSALS.notThere,
    place: { hole: headerOf(hole).name, thing: `bag ${text}` },
    problem: 'no duplicate and its primary are issued under these digits',
    remedy: 'Type the last digits of the duplicate or of its primary, as they are on the calico.',
  };
  const numbers = pairs.flatMap(({ twin, primary }) => [primary.number, twin.number]);
  const named = numberAmong(project.sampling.numbers, numbers, text, refusal);
  if (!named.ok) return named;
  const pair = pairs.find(({ twin, primary }) => [twin.number, primary.number].includes(named.value));
  if (pair === undefined) return refused(refusal.kind.at(refusal.place, refusal));
  const { twin, primary } = pair;
  return ok({
    what: `${twin.number} is the primary, ${primary.number} its duplicate: they hung on each other’s chute`,
    changes: [
      becomes(pair.primaryId, { kind: 'field duplicate', of: twin.number, ...methodOf(twin) }),
      {
        ...becomes(pair.twinId, { kind: 'primary' }),
        unset: ['of', ...('method' in twin ? ['method'] : [])],
      },
      ...bags
        .filter(([id, bag]) => bag.of === primary.number && id !== pair.twinId)
        .map(([id]) => ({ patch: ['bags', id], set: { of: twin.number } }) as const),
    ],
  });
}

function becomes(id: string, bag: Partial<Bag>): Extract<Change, { readonly patch: unknown }> {
  const reason = 'the pair hung on each other’s chute';
  return { patch: ['bags', id], set: { ...bag, reason } as Thing };
}

function methodOf({ method }: Bag): Partial<Bag> {
  return method === undefined ? {} : { method };
}
