import type { Maker } from '../hole/commands/made.ts';
import { headerOf, holeNouns } from '../hole/hole.ts';
import { depthFromMm } from '../quantity/depth.ts';
import type { Change, Document, DocumentName } from '../record/document.ts';
import type { ReceivedMass } from '../sampling/laboratory/laboratory-masses.ts';
import { recordMasses } from './mass.ts';

/** Masses as received that would be recorded in the holes they came from, as one edit over all of them. */
export interface MassesMade {
  readonly what: string;
  readonly metres: number;
  readonly parts: readonly { readonly document: DocumentName; readonly changes: readonly Change[] }[];
}

/** Records the laboratory's masses of calicos at their metres, where none was weighed on the rig: a mass that was read there stands. */
export function recordReceivedMasses(
  holes: readonly Document[],
  masses: readonly ReceivedMass[],
  maker: Maker,
): MassesMade {
  const kgOf = new Map(masses.map((each) => [each.number, each.kg]));
  const parts = holes.flatMap((hole) => {
    const changes = changesOf(hole, kgOf, maker);
    return changes.length === 0
      ? []
      : [{ document: { kind: hole.kind, id: hole.id }, changes, name: headerOf(hole).name }];
  });
  const metres = parts.reduce((sum, part) => sum + part.changes.length, 0);
  return {
    what: `masses as received of ${metres} metres: ${parts.map((part) => part.name).join(', ')}`,
    metres,
    parts: parts.map(({ document, changes }) => ({ document, changes })),
  };
}

/** A primary's mass is the metre's split, its duplicate's the second one: of one metre they are one fact. */
function changesOf(hole: Document, kgOf: ReadonlyMap<string, string>, maker: Maker): readonly Change[] {
  const byMetre = new Map<string, { fromMm: number; toMm: number; split?: string; duplicate?: string }>();
  for (const { number, kind, fromMm, toMm } of holeNouns(hole, 'bags')) {
    const kg = kgOf.get(number);
    if (kg === undefined || fromMm === undefined || toMm === undefined) continue;
    if (kind !== 'primary' && kind !== 'field duplicate') continue;
    const there = byMetre.get(`${fromMm} ${toMm}`) ?? { fromMm, toMm };
    byMetre.set(`${fromMm} ${toMm}`, { ...there, [kind === 'primary' ? 'split' : 'duplicate']: kg });
  }
  return [...byMetre.values()].flatMap(({ fromMm, toMm, split, duplicate }) => {
    const fact = holeNouns(hole, 'stream').find((each) => each.fromMm === fromMm && each.toMm === toMm);
    const masses = {
      ...(split === undefined || fact?.splitG !== undefined ? {} : { split }),
      ...(duplicate === undefined || fact?.duplicateG !== undefined ? {} : { duplicate }),
    };
    if (Object.keys(masses).length === 0) return [];
    const over = { fromMm: depthFromMm(fromMm), toMm: depthFromMm(toMm) };
    const made = recordMasses(hole, { ...over, masses }, maker);
    return made.ok ? made.value.changes : [];
  });
}
