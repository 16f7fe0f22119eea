import { describe, expect, it } from 'vitest';
import { createDurably, isTemporaryName, writeDurably } from '../../src/files/write-durably.ts';
import { newMedium } from '../faults/medium.ts';
import { type Fault, recordingDisk } from '../faults/recording-disk.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const text = async (disk: ReturnType<typeof recordingDisk>, path: string): Promise<string> =>
  new TextDecoder().decode(await disk.readFile(path));

/** A disk that does one thing wrong at every operation of a name. */
const diskWith = (fault: Fault | undefined, name = '') =>
  recordingDisk(newMedium(), (operation) => (operation.name === name ? fault : undefined));

describe('a durable write', () => {
  it('goes by way of a temporary name, sync, rename and sync of the folder, in that order', async () => {
    const disk = diskWith(undefined);
    await writeDurably(disk, '/a.json', bytes('{}'), 'abc');
    expect(disk.operations.map(({ name, path }) => `${name} ${path}`)).toEqual([
      'create /.a.json.abc.tmp',
      'write /.a.json.abc.tmp',
      'sync /.a.json.abc.tmp',
      'close /.a.json.abc.tmp',
      'rename /a.json',
      'syncFolder /',
    ]);
    expect(isTemporaryName('.a.json.abc.tmp')).toBe(true);
    expect(isTemporaryName('a.json')).toBe(false);
  });

  it('takes its bytes in parts, many to a write, and they stand one after another', async () => {
    const disk = diskWith(undefined);
    const parts = Array.from({ length: 300 }, (_, index) => bytes(`${index}${'-'.repeat(1000)}`));
    await writeDurably(disk, '/a.json', parts, 'abc');
    expect(Buffer.compare(await disk.readFile('/a.json'), Buffer.concat(parts))).toBe(0);
    expect(disk.operations.filter(({ name }) => name === 'write')).toHaveLength(3);
  });

  it('writes every byte however few the disk takes at a time', async () => {
    let shorts = 3;
    const disk = recordingDisk(newMedium(), ({ name }) =>
      name === 'write' && shorts-- > 0 ? 'short' : undefined,
    );
    await writeDurably(disk, '/a.json', bytes('0123456789'), 'abc');
    expect(await text(disk, '/a.json')).toBe('0123456789');
  });

  it.each<[Fault, string]>([
    ['ENOSPC', 'create'],
    ['ENOSPC', 'write'],
    ['lost sync', 'sync'],
    ['EIO', 'close'],
    ['EIO', 'rename'],
  ])('that fails with %s at its %s leaves the old file whole and nothing else', async (fault, name) => {
    const trouble: { now: Fault | undefined } = { now: undefined };
    const disk = recordingDisk(newMedium(), (operation) =>
      operation.name === name ? trouble.now : undefined,
    );
    await writeDurably(disk, '/a.json', bytes('old'), 'abc');
    trouble.now = fault;
    await expect(writeDurably(disk, '/a.json', bytes('new and longer'), 'abd')).rejects.toThrow();
    expect(await text(disk, '/a.json')).toBe('old');
    expect(await disk.list('/')).toEqual(['a.json']);
  });

  it('of a new file refuses one that is there, and leaves it', async () => {
    const disk = diskWith(undefined);
    await createDurably(disk, '/a.json', bytes('first'));
    await expect(createDurably(disk, '/a.json', bytes('second'))).rejects.toThrow('EEXIST');
    expect(await text(disk, '/a.json')).toBe('first');
  });

  it('of a new file that fails takes the part that was made away', async () => {
    const disk = diskWith('ENOSPC', 'write');
    await expect(createDurably(disk, '/a.json', bytes('first'))).rejects.toThrow('ENOSPC');
    expect(await disk.list('/')).toEqual([]);
  });
});
