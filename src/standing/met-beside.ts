import { headerOf, holeNouns, rowsDown } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { formatInterval, type Interval } from '../quantity/interval.ts';
import type { Document } from '../record/document.ts';
import { holdsVoid } from '../schema/cautions.ts';
import type { ExpectedZone } from '../termination/evaluate/situation.ts';
import { joined } from '../termination/evaluate/unlogged.ts';

/** Voids that the holes a hole stands for met, a few metres beside it: it has to expect each where it was, plan or no plan. */
export function voidsMetBeside(
  project: Project,
  hole: Document,
  others: Iterable<Document>,
): readonly ExpectedZone[] {
  return ancestorsOf(hole, others).flatMap((one) =>
    joined(voidsIn(project, one)).map((metres) => ({
      name: `void met in ${headerOf(one).name} at ${formatInterval(metres)}`,
      fromMm: metres.fromMm,
      toMm: metres.toMm,
      hazard: 'void' as const,
    })),
  );
}

/** The hole that it stands for, the one that this one stood for, and so on. */
function ancestorsOf(hole: Document, others: Iterable<Document>): readonly Document[] {
  if (headerOf(hole).parent === undefined) return [];
  const byId = new Map([...others].filter(({ kind }) => kind === 'hole').map((one) => [one.id, one]));
  const found = new Map<string, Document>();
  for (let parent = headerOf(hole).parent; parent !== undefined; ) {
    const one = byId.get(parent.hole);
    if (one === undefined || one.id === hole.id || found.has(one.id)) break;
    found.set(one.id, one);
    parent = headerOf(one).parent;
  }
  return [...found.values()];
}

function voidsIn(project: Project, hole: Document): readonly Interval[] {
  const logged = rowsDown(hole).flatMap(([, row]) => (holdsVoid(project.schema, row.cells) ? [row] : []));
  const felt = holeNouns(hole, 'feltByDriller').filter((each) => each.felt === 'cavity');
  return [...logged, ...felt].map(({ fromMm, toMm }) => ({ fromMm, toMm }));
}
