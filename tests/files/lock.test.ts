import { describe, expect, it } from 'vitest';
import { type LockRequest, takeLock } from '../../src/files/lock.ts';
import { recordingDisk } from '../faults/recording-disk.ts';
import { freshProject } from '../faults/sitting.ts';

const PATH = '/project/journal/lock.json';

async function lockDisk() {
  const disk = recordingDisk(await freshProject());
  await disk.makeFolder('/project/journal');
  return disk;
}

const request = (token: string, more: Partial<LockRequest> = {}): LockRequest => ({
  token,
  owner: 'Ana Reyes',
  since: '2026-03-14T08:00:00+08:00',
  machine: { host: 'rig', process: 1, boot: 'one', isRunning: () => false },
  takeOver: false,
  pause: async () => {},
  ...more,
});

describe('the lock of a project', () => {
  it('says who holds it, and is gone once it is given back', async () => {
    const disk = await lockDisk();
    const lock = await takeLock(disk, '/project', request('aa'));
    if (!lock.ok) throw new Error('must be taken');
    expect(JSON.parse(new TextDecoder().decode(await disk.readFile(PATH)))).toEqual({
      token: 'aa',
      owner: 'Ana Reyes',
      host: 'rig',
      process: 1,
      boot: 'one',
      since: '2026-03-14T08:00:00+08:00',
    });
    expect(await lock.value.displacedBy()).toBeUndefined();
    await lock.value.release();
    expect(await disk.list('/project/journal')).toEqual([]);
  });

  it('that no one finished writing is taken over after a pause', async () => {
    const disk = await lockDisk();
    await disk.create(PATH);
    const pauses: number[] = [];
    const lock = await takeLock(
      disk,
      '/project',
      request('aa', { pause: async (ms) => void pauses.push(ms) }),
    );
    expect(lock.ok && lock.value.findings.map((finding) => finding.code)).toEqual(['stale-lock']);
    expect(pauses).toEqual([200]);
  });

  it('that another console is just filling is seen as held once it is full', async () => {
    const disk = await lockDisk();
    const file = await disk.create(PATH);
    const holder = { token: 'zz', owner: 'Ben Ito', host: 'camp', process: 9, boot: '', since: 'just now' };
    const fill = async (): Promise<void> => {
      await file.write(new TextEncoder().encode(JSON.stringify(holder)));
    };
    const lock = await takeLock(disk, '/project', request('aa', { pause: fill }));
    expect(lock.ok ? '' : lock.findings[0]?.problem).toBe(
      'Ben Ito has this project open on camp since just now',
    );
  });

  it('of a live holder is taken over where a person says so, and the holder learns who has it', async () => {
    const disk = await lockDisk();
    const live = { host: 'rig', process: 1, boot: 'one', isRunning: () => true };
    const first = await takeLock(disk, '/project', request('aa', { machine: live }));
    expect((await takeLock(disk, '/project', request('bb', { machine: live }))).ok).toBe(false);
    const second = await takeLock(
      disk,
      '/project',
      request('bb', { machine: live, takeOver: true, owner: 'Ben Ito' }),
    );
    // Its console did not end: that is not said of it.
    expect(second.ok && second.value.findings.map(({ code, problem }) => [code, problem])).toEqual([
      ['lock-taken', expect.stringContaining('which may still be open')],
    ]);
    expect(first.ok && (await first.value.displacedBy())).toMatchObject({ token: 'bb', owner: 'Ben Ito' });
    if (first.ok) await first.value.release();
    expect(await disk.list('/project/journal')).toEqual(['lock.json']);
  });

  it('that is stale goes to one of many who ask at once, and the others are told who has it', async () => {
    const disk = await lockDisk();
    await takeLock(disk, '/project', request('old'));
    const asking = Array.from({ length: 6 }, (_, index) =>
      takeLock(
        disk,
        '/project',
        request(`new${index}`, {
          machine: { host: 'rig', process: 100 + index, boot: 'one', isRunning: (process) => process >= 100 },
        }),
      ),
    );
    const locks = (await Promise.all(asking)).flatMap((lock) => (lock.ok ? [lock.value] : []));
    const holding = await Promise.all(locks.map((lock) => lock.displacedBy()));
    expect(holding.filter((by) => by === undefined)).toHaveLength(1);
  });

  it('that was deleted by hand can be made again, but not over another one', async () => {
    const disk = await lockDisk();
    const lock = await takeLock(disk, '/project', request('aa'));
    if (!lock.ok) throw new Error('must be taken');
    await disk.unlink(PATH);
    expect(await lock.value.displacedBy()).toBe('no one');
    await lock.value.renew();
    expect(await lock.value.displacedBy()).toBeUndefined();
    await expect(lock.value.renew()).rejects.toThrow('EEXIST');
  });

  it.each(['create', 'write', 'sync'] as const)(
    'is refused in words where the disk fails at its %s',
    async (name) => {
      const disk = recordingDisk(await freshProject(), (operation) =>
        operation.name === name && operation.path === PATH ? 'EIO' : undefined,
      );
      await disk.makeFolder('/project/journal');
      const lock = await takeLock(disk, '/project', request('aa'));
      expect(lock.ok ? '' : lock.findings[0]?.problem).toBe(
        'the project cannot be written: the disk reports a fault',
      );
      expect(await disk.list('/project/journal')).toEqual([]);
    },
  );
});
