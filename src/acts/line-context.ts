import { rowsDown } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import { bagNumberPattern } from '../sampling/numbers/bag-number.ts';
import type { EntryContext } from '../shorthand/parse.ts';
import { aboveDepth } from '../standing/above.ts';
import { nextInterval } from '../standing/heads.ts';

/**
 * What an entry line is read against at a depth of a hole: the rows above it and what the project says of entry. `by` logs the next
 * row: after a handover it is said in full, because what another pair of eyes saw does not carry. Left out where an earlier row is open.
 */
export function lineContext(project: Project, hole: Document, fromMm: number, by?: string): EntryContext {
  const before = by === undefined ? undefined : loggedBefore(hole, by);
  const { above, previous, repeats } = aboveDepth(before === undefined ? rowsDown(hole) : [], fromMm);
  return {
    schema: project.schema,
    above,
    previous: previous === above ? undefined : previous,
    repeats,
    gloves: project.settings.log.gloves,
    bagPattern: bagNumberPattern(project.sampling.numbers),
    loggedBefore: before,
  };
}

/** Who logged the last observed row above the logged head, where that was another person: amending it does not make it one's own. */
function loggedBefore(hole: Document, by: string): string | undefined {
  const head = nextInterval(hole).fromMm;
  const last = rowsDown(hole).findLast(([, row]) => row.fromMm < head && row.noReturn !== true);
  const first = hole.history.find((entry) =>
    entry.changes.some(
      (change) => 'put' in change && change.put[0] === 'rows' && change.put[1] === last?.[0],
    ),
  );
  return first === undefined || first.by === by ? undefined : first.by;
}
