import { ok, type Result } from '../../finding/finding.ts';
import { startDrilling } from '../../hole/commands/states.ts';
import { headerOf } from '../../hole/hole.ts';
import { headsOf } from '../../standing/heads.ts';
import { rigNamed } from '../rig-named.ts';
import { holeOf, type LinesAt, makerOf, submitMade, type Taken } from './submit-made.ts';

/** Starts drilling a planned or suspended hole with a rig, as opening it in the console does; a hole that is being drilled is left as it is. */
export async function startWithRig(at: LinesAt, rig: string): Promise<Result<Taken>> {
  const hole = holeOf(at);
  const name = rigNamed(at.project, rig);
  if (!name.ok) return name;
  const { state } = headerOf(hole);
  if (state !== 'planned' && state !== 'suspended') return ok({ kind: 'nothing' });
  const bitMm = at.project.settings.rigs.find((each) => each.name === name.value)?.bitMm;
  const maker = makerOf(at.desk);
  const interval = {
    method: 'RC',
    rig: name.value,
    fromMm: headsOf(hole).drilledMm,
    ...(bitMm === undefined ? {} : { bitMm }),
    startedAt: maker.at,
  };
  return ok(await submitMade(at, startDrilling(hole, interval, maker)));
}
