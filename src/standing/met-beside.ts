import { headerOf, holeNouns, rowsDown } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { depthFromMetres, depthFromMm } from '../quantity/depth.ts';
import { formatInterval, type Interval } from '../quantity/interval.ts';
import type { Document } from '../record/document.ts';
import { cautionsIn } from '../schema/cautions.ts';
import type { ExpectedZone } from '../termination/evaluate/situation.ts';
import { joined } from '../termination/evaluate/unlogged.ts';

/** A zone of a hazard, met by another hole. */
export type HazardMet = ExpectedZone & {
  readonly hazard: 'void' | 'fibre';
  readonly toMm: NonNullable<ExpectedZone['toMm']>;
};

/**
 * Voids and fibre that the holes a hole stands for met, a few metres beside it: it has to expect each where it was, plan or no plan, and by
 * the site's stand-off above and below: no zone lies level from one hole to the next.
 */
export function hazardsMetBeside(
  project: Project,
  hole: Document,
  others: Iterable<Document>,
): readonly HazardMet[] {
  const { standOffM } = project.settings.hazards;
  const standOffMm = depthFromMetres(standOffM);
  return ancestorsOf(hole, others).flatMap((one) =>
    (['void', 'fibre'] as const).flatMap((hazard) =>
      joined(metIn(project, one, hazard)).map((metres) => ({
        name: `${hazard} met in ${headerOf(one).name} at ${formatInterval(metres)} (± ${standOffM} m)`,
        fromMm: depthFromMm(Math.max(0, metres.fromMm - standOffMm)),
        toMm: depthFromMm(metres.toMm + standOffMm),
        hazard,
      })),
    ),
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

/** Metres of a hole that were logged as a hazard; a cavity that the driller felt is a void. */
function metIn(project: Project, hole: Document, hazard: HazardMet['hazard']): readonly Interval[] {
  const logged = rowsDown(hole).flatMap(([, row]) =>
    cautionsIn(project.schema, row.cells).some(({ caution }) => caution.kind === hazard) ? [row] : [],
  );
  const felt =
    hazard === 'void' ? holeNouns(hole, 'feltByDriller').filter((each) => each.felt === 'cavity') : [];
  return [...logged, ...felt].map(({ fromMm, toMm }) => ({ fromMm, toMm }));
}
