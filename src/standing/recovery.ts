import type { StreamFact } from '../hole/drilled.ts';
import { holeNouns, rowsDown } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { depthFromMm } from '../quantity/depth.ts';
import { type Interval, overlaps, sharedMm } from '../quantity/interval.ts';
import type { Document } from '../record/document.ts';
import { type Flag, flagsOf } from '../sampling/recovery/hygiene.ts';
import { type Recovery, recoveryOf } from '../sampling/recovery/recovery.ts';
import { rockField } from '../shorthand/rock.ts';
import { byReference } from './by-reference.ts';
import { headsOf } from './heads.ts';
import { rodsDown } from './hygiene.ts';
import { streamFactAt } from './stream.ts';

/** Density of a rock whose code has none, t/m³: usual for fresh rock, common practice. */
const USUAL_DENSITY = 2.7;

/** Bit of a drilling interval and a rig without one, in millimetres: that of a common face-sampling hammer, common practice. */
const USUAL_BIT_MM = 139.7;

/** A metre of the sample stream: its recovery, as far as it was weighed or seen, and what makes it less than clean. */
export interface StreamMetre extends Recovery {
  readonly flags: readonly Flag[];
}

/** The drilled metres of a hole from the top down: one a sample, or the interval that was weighed as a whole. */
export const streamMetres = byReference((project: Project, hole: Document): readonly StreamMetre[] => {
  const facts = holeNouns(hole, 'stream');
  const rods = rodsDown(hole);
  return unitsOf(project, hole, facts).map((unit): StreamMetre => {
    const { bulkG, splitG, duplicateG } = facts.find((fact) => isWeighed(fact) && sameAs(fact, unit)) ?? {};
    const { moisture, recovery, waterPermille } = streamFactAt(hole, unit);
    const fact = {
      ...(bulkG === undefined ? {} : { bulkG }),
      ...(splitG === undefined ? {} : { splitG }),
      ...(duplicateG === undefined ? {} : { duplicateG }),
      ...(moisture === undefined ? {} : { moisture }),
      ...(recovery === undefined ? {} : { recovery }),
    };
    const drilled = {
      ...unit,
      ...(waterPermille === undefined ? {} : { moisturePercent: waterPermille / 10 }),
      bitMm: bitAt(project, hole, unit),
      densityGcm3: densityAt(project, hole, unit),
      fact,
    };
    return { ...recoveryOf(drilled), flags: flagsOf(unit, facts, rods) };
  });
});

function unitsOf(project: Project, hole: Document, facts: readonly StreamFact[]): readonly Interval[] {
  const { lengthMm } = project.sampling;
  const { logFromMm, drilledMm } = headsOf(hole);
  const weighed = facts.filter(isWeighed).map(({ fromMm, toMm }) => ({ fromMm, toMm }));
  const count = Math.ceil((drilledMm - logFromMm) / lengthMm);
  const whole = Array.from({ length: count }, (_, index) => ({
    fromMm: depthFromMm(logFromMm + index * lengthMm),
    toMm: depthFromMm(Math.min(logFromMm + (index + 1) * lengthMm, drilledMm)),
  })).filter((unit) => !weighed.some((each) => overlaps(each, unit)));
  return [...weighed, ...whole].sort((a, b) => a.fromMm - b.fromMm);
}

function isWeighed(fact: StreamFact): boolean {
  return fact.bulkG !== undefined || fact.splitG !== undefined || fact.duplicateG !== undefined;
}

function sameAs(a: Interval, b: Interval): boolean {
  return a.fromMm === b.fromMm && a.toMm === b.toMm;
}

function bitAt(project: Project, hole: Document, at: Interval): number {
  const drilling = holeNouns(hole, 'drilling').findLast((each) => each.fromMm <= at.fromMm);
  const rig = project.settings.rigs.find((each) => each.name === drilling?.rig);
  return drilling?.bitMm ?? rig?.bitMm ?? USUAL_BIT_MM;
}

/** The density of the rock that is logged over most of an interval. */
function densityAt({ schema }: Project, hole: Document, at: Interval): number {
  const field = rockField(schema);
  const [most] = rowsDown(hole)
    .map(([, row]) => row)
    .filter((row) => overlaps(row, at))
    .sort((a, b) => sharedMm(b, at) - sharedMm(a, at));
  const cell = field === undefined ? undefined : most?.cells[field.name];
  if (field === undefined || !('list' in field) || cell === undefined || !('code' in cell))
    return USUAL_DENSITY;
  const code = schema.lists[field.list]?.codes.find((each) => each.code === cell.code);
  return code?.densityGcm3 ?? USUAL_DENSITY;
}
