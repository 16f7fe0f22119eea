import { type DeskOptions, openDesk } from '../../../src/desk/desk.ts';
import type { Disk } from '../../../src/files/disk.ts';
import { type Fault, recordingDisk } from '../../faults/recording-disk.ts';
import { faultOptions, freshProject } from '../../faults/sitting.ts';

/** A desk over a disk whose trouble can be switched on and off; retries wait until they are asked for. */
export async function troubledDesk(more: Partial<DeskOptions> = {}) {
  const trouble: { now: Fault | undefined; under: string } = { now: undefined, under: '/project' };
  const medium = await freshProject();
  const disk: Disk = recordingDisk(medium, ({ path }) =>
    path.startsWith(trouble.under) ? trouble.now : undefined,
  );
  const opened = await openDesk({ ...faultOptions(disk, 3), after: () => () => {}, ...more });
  if (!opened.ok) throw new Error('must open');
  return { desk: opened.value, trouble, disk, medium };
}
