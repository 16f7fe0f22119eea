import { startWithRig } from '../../acts/start.ts';
import { ok, type Result } from '../../finding/finding.ts';
import { headerOf } from '../../hole/hole.ts';
import { rigNamed } from '../rig-named.ts';
import { holeOf, type LinesAt, makerOf, submitMade, type Taken } from './submit-made.ts';

/** Starts drilling a planned or suspended hole with a rig, as opening it in the console does; a hole that is being drilled is left as it is. */
export async function startDrillingWith(at: LinesAt, rig: string): Promise<Result<Taken>> {
  const hole = holeOf(at);
  const name = rigNamed(at.project, rig);
  if (!name.ok) return name;
  const { state } = headerOf(hole);
  if (state !== 'planned' && state !== 'suspended') return ok({ kind: 'nothing' });
  const made = startWithRig(at.project, hole, name.value, makerOf(at.desk));
  return ok(await submitMade(at, made));
}
