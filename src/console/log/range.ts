import { planRange } from '../../acts/range.ts';
import type { RangeCommand, RangePlan } from '../../acts/range-plan.ts';
import { planSaid } from '../../acts/said-range.ts';
import type { Result } from '../../finding/finding.ts';
import type { Document } from '../../record/document.ts';
import type { RangeLine } from '../../shorthand/commands.ts';
import { projectForHole } from '../../standing/hole-schema.ts';
import type { Prompt } from '../prompt.ts';
import type { Shown } from '../screens/shown.ts';
import { holeInHand, type State } from '../state.ts';
import { type Step, saying, sayingFinding, still, submitting, type World } from '../step.ts';
import { line, wrap } from '../widgets/line.ts';

/** Shows what a change of several rows would do, in words; `insisted` does it at once. */
export function previewRange(
  state: State,
  hole: Document,
  range: RangeLine | RangeCommand,
  world: World,
  insisted = false,
): Step {
  const plan = planOf(state, hole, range, world);
  if (!plan.ok) return still(plan.findings[0] === undefined ? state : sayingFinding(state, plan.findings[0]));
  if (plan.value.made.changes.length === 0) return still(saying(state, 'Nothing would change.'));
  if (insisted) return submitting(state, hole, plan.value.made);
  const [title = '', ...lines] = plan.value.lines;
  return still({ ...state, prompt: { kind: 'preview', title, lines, range }, message: undefined });
}

/** Enter on the preview: the change is made, as one edit that can be undone. */
export function makeRange(state: State, world: World): Step {
  const hole = holeInHand(state);
  if (state.prompt?.kind !== 'preview' || hole === undefined) return still(state);
  const plan = planOf(state, hole, state.prompt.range, world);
  const closed: State = { ...state, prompt: undefined };
  if (!plan.ok)
    return still(plan.findings[0] === undefined ? closed : sayingFinding(closed, plan.findings[0]));
  return submitting(closed, hole, plan.value.made);
}

/** The preview: what the change would do, row by row. */
export function previewShown(
  _state: State,
  { title, lines }: Extract<Prompt, { readonly kind: 'preview' }>,
  width: number,
): Shown {
  return {
    title,
    lines: lines.flatMap((each) => (each.startsWith('CAUTION') ? wrap(each, width, 'alert') : [line(each)])),
    foot: [line('Enter makes the change. Esc changes nothing.', 'faint')],
  };
}

function planOf(
  state: State,
  hole: Document,
  range: RangeLine | RangeCommand,
  world: World,
): Result<RangePlan> {
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const { schema } = projectForHole(state.project, hole);
  return 'kind' in range ? planSaid(schema, hole, range, maker) : planRange(schema, hole, range, maker);
}
