import type { StreamFact } from '../hole/drilled.ts';
import { holeNouns, ownFromMm, rowsDown } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { depthFromMm } from '../quantity/depth.ts';
import { type Interval, overlaps, sharedMm } from '../quantity/interval.ts';
import { byReference } from '../record/by-reference.ts';
import type { Document } from '../record/document.ts';
import { type Flag, flagsOf } from '../sampling/recovery/hygiene.ts';
import { type Recovery, recoveryOf } from '../sampling/recovery/recovery.ts';
import { holdsVoid } from '../schema/cautions.ts';
import type { ByLevel } from '../schema/logging-schema.ts';
import { isWeatheredMaterial } from '../schema/weathered.ts';
import { rockField } from '../shorthand/rock.ts';
import type { Cell } from '../value/cell.ts';
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
    const weighed = facts.filter((fact) => isWeighed(fact) && sameAs(fact, unit));
    const { bulkG, splitG, duplicateG }: Partial<StreamFact> = Object.assign({}, ...weighed);
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
      isVoid: isVoid(project, hole, unit),
      fact,
    };
    return { ...recoveryOf(drilled), flags: flagsOf(unit, facts, rods) };
  });
});

/** True where rows that say a void cover all of a metre. */
function isVoid({ schema }: Project, hole: Document, at: Interval): boolean {
  const covered = rowsDown(hole)
    .filter(([, row]) => holdsVoid(schema, row.cells))
    .reduce((sum, [, row]) => sum + sharedMm(row, at), 0);
  return covered >= at.toMm - at.fromMm;
}

function unitsOf(project: Project, hole: Document, facts: readonly StreamFact[]): readonly Interval[] {
  const { lengthMm } = project.sampling;
  const { drilledMm } = headsOf(hole);
  const startMm = ownFromMm(hole);
  const weighed = facts.filter(isWeighed).map(({ fromMm, toMm }) => ({ fromMm, toMm }));
  const count = Math.ceil((drilledMm - startMm) / lengthMm);
  const whole = Array.from({ length: count }, (_, index) => ({
    fromMm: depthFromMm(startMm + index * lengthMm),
    toMm: depthFromMm(Math.min(startMm + (index + 1) * lengthMm, drilledMm)),
  })).filter((unit) => !weighed.some((each) => overlaps(each, unit)));
  const once = weighed.filter((each, index) => weighed.findIndex((other) => sameAs(each, other)) === index);
  return [...once, ...whole].sort((a, b) => a.fromMm - b.fromMm);
}

function isWeighed(fact: StreamFact): boolean {
  return fact.bulkG !== undefined || fact.splitG !== undefined || fact.duplicateG !== undefined;
}

function sameAs(a: Interval, b: Interval): boolean {
  return a.fromMm === b.fromMm && a.toMm === b.toMm;
}

/**
 * The bit at a depth, in millimetres: as measured there while the hole deepened, worn evenly between two measurements; a bit that measures more than
 * the one before is another one, from there on. Above the first measurement, and without any, as it was when drilling began.
 */
function bitAt(project: Project, hole: Document, at: Interval): number {
  const measured = [...holeNouns(hole, 'bits')].sort((a, b) => a.depthMm - b.depthMm);
  const above = measured.findLast((each) => each.depthMm <= at.fromMm);
  const below = measured.find((each) => each.depthMm > at.fromMm);
  const began = bitAtStart(project, hole, at);
  if (above === undefined && below === undefined) return began;
  const from = above ?? { depthMm: headsOf(hole).logFromMm, bitMm: began };
  if (below === undefined || below.bitMm > from.bitMm) return from.bitMm;
  const share = (at.fromMm - from.depthMm) / (below.depthMm - from.depthMm);
  return from.bitMm + share * (below.bitMm - from.bitMm);
}

function bitAtStart(project: Project, hole: Document, at: Interval): number {
  const drilling = holeNouns(hole, 'drilling').findLast((each) => each.fromMm <= at.fromMm);
  const rig = project.settings.rigs.find((each) => each.name === drilling?.rig);
  return drilling?.bitMm ?? rig?.bitMm ?? USUAL_BIT_MM;
}

/** The density of the rock that is logged over most of an interval, as weathered as it is logged. */
function densityAt({ schema }: Project, hole: Document, at: Interval): number {
  const field = rockField(schema);
  const [most] = rowsDown(hole)
    .map(([, row]) => row)
    .filter((row) => overlaps(row, at))
    .sort((a, b) => sharedMm(b, at) - sharedMm(a, at));
  const cell = field === undefined ? undefined : most?.cells[field.name];
  if (field === undefined || !('list' in field) || cell === undefined || !('code' in cell))
    return USUAL_DENSITY;
  const list = schema.lists[field.list];
  const code = list?.codes.find((each) => each.code === cell.code);
  const own = Object.entries(code?.densityAtLevels ?? {}).flatMap(([name, levels]) =>
    atLevel(levels, most?.cells[name]),
  );
  if (own[0] !== undefined) return own[0];
  // A density given for saprolite is that of saprolite: weathering is in it already.
  if (code?.densityGcm3 !== undefined && isWeatheredMaterial(code)) return code.densityGcm3;
  const shares = Object.entries(list?.densityShares ?? {}).flatMap(([name, levels]) =>
    atLevel(levels, most?.cells[name]),
  );
  return shares.reduce((density, share) => density * share, code?.densityGcm3 ?? USUAL_DENSITY);
}

/** The figure of the level that a cell holds, or of the highest one below it that has a figure; none where there is none. */
function atLevel(levels: ByLevel[string], cell: Cell | undefined): readonly number[] {
  if (cell === undefined || !('level' in cell)) return [];
  const [nearest] = Object.keys(levels)
    .map(Number)
    .filter((level) => level <= cell.level)
    .sort((a, b) => b - a);
  const figure = nearest === undefined ? undefined : levels[nearest];
  return figure === undefined ? [] : [figure];
}
