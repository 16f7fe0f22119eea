import type { Maker } from '../hole/commands/made.ts';
import type { Collar } from '../hole/header.ts';
import { type HoleState, isOver, type Plan } from '../hole/header.ts';
import { headerOf, holeNouns, planOf } from '../hole/hole.ts';
import { formatAzimuth } from '../quantity/azimuth.ts';
import { formatDepth } from '../quantity/depth.ts';
import { formatDip } from '../quantity/dip.ts';
import type { Change, Document, Thing } from '../record/document.ts';
import { own, sameJson } from '../record/json.ts';
import { isLinedUp } from '../standing/survey.ts';
import { plannedCollar } from '../survey/collar/collars.ts';

/** A hole as a program has it: its plan, and its planned position in whole millimetres of the project's grid. */
export interface Programmed {
  readonly plan: Plan;
  readonly collar: Pick<Collar, 'eastingMm' | 'northingMm' | 'elevationMm'>;
  /** Fields of the plan that the program has no column for: they stay as they are. */
  readonly unsaid: ReadonlySet<PlanField>;
}

/** What a later program makes of a hole that is there: nothing, a change of its plan in words, or a reason why not. */
export type Revision =
  | { readonly kind: 'same' }
  | {
      readonly kind: 'revised';
      /** `depth 120 → 150 m`, part by part. */
      readonly parts: readonly string[];
      readonly changes: readonly Change[];
      /** What a person has to do because of it. */
      readonly toDo?: string;
    }
  | { readonly kind: 'refused'; readonly problem: string; readonly remedy: string };

const PLAN_FIELDS = [
  'azimuthDeg',
  'azimuthNorth',
  'dipDeg',
  'depthMm',
  'targetMm',
  'target',
  'expects',
] as const;
/** A field of the plan that a program speaks of. */
export type PlanField = (typeof PLAN_FIELDS)[number];

const DIRECTION: readonly string[] = ['azimuthDeg', 'azimuthNorth', 'dipDeg'];

/**
 * Compares a hole with the same one in a later program. What the program leaves empty is taken out of the plan. A hole that is begun keeps
 * its direction and its position: those are drilled. One that is over takes nothing. Positions are kept, the last planned one counts.
 */
export function revision(
  hole: Document,
  to: Programmed,
  from: { readonly grid: string; readonly source: string },
  maker: Maker,
): Revision {
  const { state } = headerOf(hole);
  const plan = planOf(hole);
  const is: Thing = (plan ?? {}) as Thing;
  const wanted = to.plan as unknown as Thing;
  const differing = PLAN_FIELDS.filter(
    (field) => !to.unsaid.has(field) && !sameJson(own(is, field), own(wanted, field)),
  );
  const collar = plannedCollar(holeNouns(hole, 'collars'));
  const moved =
    collar === undefined ||
    collar.eastingMm !== to.collar.eastingMm ||
    collar.northingMm !== to.collar.northingMm ||
    collar.elevationMm !== to.collar.elevationMm;
  if (differing.length === 0 && !moved) return { kind: 'same' };
  const turned = differing.some((field) => DIRECTION.includes(field));
  const no = whyNot(state, turned || moved);
  if (no !== undefined) return { kind: 'refused', ...no };
  const set = Object.fromEntries(
    differing.flatMap((field) => {
      const value = own(wanted, field);
      return value === undefined ? [] : [[field, value]];
    }),
  );
  const unset = differing.filter((field) => own(wanted, field) === undefined);
  const changes: Change[] = [];
  if (plan === undefined) changes.push({ put: ['plan', 'plan'], thing: wanted });
  else if (differing.length > 0)
    changes.push({
      patch: ['plan', 'plan'],
      ...(Object.keys(set).length === 0 ? {} : { set }),
      ...(unset.length === 0 ? {} : { unset }),
    });
  if (moved)
    changes.push({
      put: ['collars', maker.newId()],
      thing: { rank: 'planned', ...to.collar, ...from, at: maker.at, by: maker.by },
    });
  const toDo =
    turned && isLinedUp(hole)
      ? 'its line-up was for the old direction: line it up again before it is begun'
      : undefined;
  return {
    kind: 'revised',
    parts: [
      ...(turned ? [`direction ${directionOf(plan)} → ${directionOf(to.plan)}`] : []),
      ...(differing.includes('depthMm')
        ? [`depth ${depthOf(plan?.depthMm)} → ${depthOf(to.plan.depthMm)}`]
        : []),
      ...(differing.includes('targetMm')
        ? [`target depth ${depthOf(plan?.targetMm)} → ${depthOf(to.plan.targetMm)}`]
        : []),
      ...(differing.includes('target')
        ? [`target ${plan?.target ?? 'none'} → ${to.plan.target ?? 'none'}`]
        : []),
      ...(differing.includes('expects') ? [`expects ${expectsOf(plan)} → ${expectsOf(to.plan)}`] : []),
      ...(moved ? [`position ${placeOf(collar)} → ${placeOf(to.collar)}`] : []),
    ],
    changes,
    ...(toDo === undefined ? {} : { toDo }),
  };
}

function whyNot(
  state: HoleState,
  turnedOrMoved: boolean,
): { readonly problem: string; readonly remedy: string } | undefined {
  if (isOver(state))
    return {
      problem: `the hole is ${state}, and the program says something else of it`,
      remedy:
        'To go on in it reopen it first (o on the list of holes); for another hole give it a name of its own.',
    };
  if (state === 'planned' || !turnedOrMoved) return undefined;
  return {
    problem: `the hole is ${state}: its direction and position are drilled, and the program says others`,
    remedy:
      'Correct the line in the program; only its depth, its target and what it expects can still change.',
  };
}

function directionOf(plan: Plan | undefined): string {
  if (plan === undefined) return 'none';
  return `${formatAzimuth({ deg: plan.azimuthDeg, north: plan.azimuthNorth })} ${formatDip(plan.dipDeg)}`;
}

const depthOf = (mm: Plan['targetMm']): string => (mm === undefined ? 'none' : `${formatDepth(mm)} m`);

const expectsOf = (plan: Plan | undefined): string =>
  plan?.expects === undefined || plan.expects.length === 0
    ? 'nothing'
    : plan.expects
        .map(({ name, fromMm, toMm }) =>
          toMm === undefined
            ? `${name} ${formatDepth(fromMm)}`
            : `${name} ${formatDepth(fromMm)}–${formatDepth(toMm)}`,
        )
        .join(', ');

const placeOf = (collar: Programmed['collar'] | undefined): string =>
  collar === undefined
    ? 'none'
    : `${[collar.eastingMm, collar.northingMm, collar.elevationMm].map((mm) => (mm / 1000).toFixed(1)).join(' ')}`;
