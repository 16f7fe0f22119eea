import { execFileSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openDesk } from '../../src/desk/desk.ts';
import { asReading, errorCode, whyRefused } from '../../src/files/disk.ts';
import { patiently, realDisk } from '../../src/files/real-disk.ts';
import { deskOptions, newProject } from '../desk/support/project.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'offsider-disk-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('the real disk', () => {
  it('makes a file that was not there, and refuses one that was', async () => {
    const path = join(folder, 'a.txt');
    const file = await realDisk.create(path);
    expect(await file.write(bytes('one '))).toBe(4);
    expect(await file.write(bytes('two'))).toBe(3);
    await file.sync();
    await file.close();
    await realDisk.syncFolder(folder);
    expect(readFileSync(path, 'utf8')).toBe('one two');
    expect(errorCode(await realDisk.create(path).catch((error: unknown) => error))).toBe('EEXIST');
  });

  it('makes a folder once and lets it be the second time', async () => {
    await realDisk.makeFolder(join(folder, 'holes'));
    await realDisk.makeFolder(join(folder, 'holes'));
    expect(await realDisk.list(folder)).toEqual(['holes']);
  });

  it('lists names in order, whatever order the medium has them in', async () => {
    for (const name of ['b', 'a', 'C']) writeFileSync(join(folder, name), '');
    expect(await realDisk.list(folder)).toEqual(['C', 'a', 'b']);
  });

  it('tells a file, a folder and a link apart, the link not followed', async () => {
    writeFileSync(join(folder, 'file'), 'four');
    mkdirSync(join(folder, 'sub'));
    symlinkSync(join(folder, 'file'), join(folder, 'link'));
    expect(await realDisk.facts(join(folder, 'file'))).toMatchObject({ kind: 'file', size: 4 });
    expect(await realDisk.facts(join(folder, 'sub'))).toMatchObject({ kind: 'folder' });
    expect(await realDisk.facts(join(folder, 'link'))).toMatchObject({ kind: 'link' });
  });

  it('reads a file up to a limit, whatever size it says it has, and nothing but a file', async () => {
    writeFileSync(join(folder, 'file'), 'four');
    mkdirSync(join(folder, 'sub'));
    symlinkSync(join(folder, 'file'), join(folder, 'link'));
    execFileSync('mkfifo', [join(folder, 'pipe')]);
    const refusal = (name: string, most?: number) =>
      realDisk.readFile(join(folder, name), most).then(String, errorCode);
    expect(await realDisk.readFile(join(folder, 'file'), 4)).toEqual(bytes('four'));
    expect(await refusal('file', 3)).toBe('TOOLARGE');
    expect(await refusal('link')).toBe('LINK');
    expect(await refusal('sub')).toBe('EISDIR');
    expect(await refusal('pipe')).toBe('NOTAFILE');
    expect(await refusal('../../../../../../../dev/zero')).toBe('NOTAFILE');
    // A file of the system that says it has no bytes, and has.
    expect((await realDisk.readFile('/proc/self/status')).length).toBeGreaterThan(100);
    expect(await realDisk.readFile('/proc/self/status', 10).catch(errorCode)).toBe('TOOLARGE');
  });

  it('tells a file that may not be read from one that may not be written', () => {
    const refused = Object.assign(new Error('x'), { code: 'EACCES' });
    expect(whyRefused(asReading(refused))).toBe('this user may not read it');
    expect(whyRefused(refused)).toBe('this user may not write there');
    expect(whyRefused(asReading(Object.assign(new Error('x'), { code: 'EIO' })))).toBe(
      'the disk reports a fault',
    );
  });

  it('says in words why it refused', async () => {
    const error = await realDisk.readFile(join(folder, 'nothing')).catch((failure: unknown) => failure);
    expect(whyRefused(error)).toBe('the file or its folder is not there');
    expect(whyRefused(Object.assign(new Error('x'), { code: 'EXOTIC' }))).toBe('EXOTIC');
    expect(whyRefused(new Error('odd'))).toBe('odd');
    expect(whyRefused('text')).toBe('text');
  });
});

describe('a rename while another program holds the file', () => {
  const held = (code: string, times: number) => {
    let calls = 0;
    const pauses: number[] = [];
    const rename = patiently(
      async () => {
        calls += 1;
        if (calls <= times) throw Object.assign(new Error(code), { code });
      },
      async (ms) => {
        pauses.push(ms);
      },
    );
    return { rename, pauses };
  };

  it.each(['EPERM', 'EACCES', 'EBUSY'])(
    'is tried again after %s, with pauses that grow to a tenth of a second',
    async (code) => {
      const { rename, pauses } = held(code, 6);
      await rename('a', 'b');
      expect(pauses).toEqual([10, 20, 40, 80, 100, 100]);
    },
  );

  it('is given up after twenty seconds', async () => {
    const { rename, pauses } = held('EBUSY', Number.POSITIVE_INFINITY);
    await expect(rename('a', 'b')).rejects.toThrow('EBUSY');
    expect(pauses.reduce((sum, ms) => sum + ms, 0)).toBeGreaterThanOrEqual(20_000);
    expect(pauses.reduce((sum, ms) => sum + ms, 0)).toBeLessThan(20_200);
  });

  it('is not tried again where the disk is full', async () => {
    const { rename, pauses } = held('ENOSPC', 1);
    await expect(rename('a', 'b')).rejects.toThrow('ENOSPC');
    expect(pauses).toEqual([]);
  });
});

/** Runs as someone who owns none of these files: as root everything is allowed, so then as the user that owns nothing. */
async function asNobody<T>(run: () => Promise<T>): Promise<T> {
  const isRoot = process.geteuid?.() === 0;
  if (isRoot) process.seteuid?.(NOBODY);
  try {
    return await run();
  } finally {
    if (isRoot) process.seteuid?.(0);
  }
}
const NOBODY = 65_534;

describe('rights of a user, as this system has them', () => {
  const why = (run: () => Promise<unknown>) =>
    asNobody(() =>
      run().then(
        () => 'it was allowed',
        (error: unknown) => whyRefused(error),
      ),
    );
  afterEach(() => {
    for (const name of ['shut', 'seen']) chmodSync(join(folder, name), 0o755);
  });
  beforeEach(() => {
    chmodSync(folder, 0o755);
    for (const name of ['shut', 'seen']) {
      mkdirSync(join(folder, name));
      writeFileSync(join(folder, name, 'a.txt'), 'one');
    }
    writeFileSync(join(folder, 'seen', 'private.txt'), 'one');
    chmodSync(join(folder, 'seen', 'private.txt'), 0o000);
    chmodSync(join(folder, 'shut'), 0o000);
    chmodSync(join(folder, 'seen'), 0o555);
  });

  it('say of what may not be read that it may not be read', async () => {
    const [file, inside] = [join(folder, 'seen', 'private.txt'), join(folder, 'shut', 'a.txt')];
    for (const run of [
      () => realDisk.readFile(file),
      () => realDisk.readFile(inside),
      () => realDisk.facts(inside),
      () => realDisk.realPath(inside),
      () => realDisk.list(join(folder, 'shut')),
    ])
      expect(await why(run)).toBe('this user may not read it');
    expect(await why(() => realDisk.readFile(join(folder, 'seen', 'a.txt')))).toBe('it was allowed');
  });

  it('say of what may not be written that it may not be written', async () => {
    const [file, fresh] = [join(folder, 'seen', 'a.txt'), join(folder, 'seen', 'new.txt')];
    for (const run of [
      () => realDisk.create(fresh),
      () => realDisk.makeFolder(join(folder, 'seen', 'new')),
      () => realDisk.rename(file, fresh),
      () => realDisk.unlink(file),
    ])
      expect(await why(run)).toBe('this user may not write there');
    expect(readFileSync(file, 'utf8')).toBe('one');
  });

  it('are said of a project that may be read only, and of one that may not', async () => {
    const project = newProject();
    const refusal = async () => {
      const result = await openDesk(deskOptions(project));
      return result.ok ? 'it was opened' : (result.findings[0]?.problem ?? '');
    };
    chmodSync(project, 0o555);
    const written = await asNobody(refusal);
    chmodSync(project, 0o000);
    const read = await asNobody(refusal);
    chmodSync(project, 0o755);
    expect(written).toBe('it cannot be written: this user may not write there');
    expect(read).toBe('this user may not read it');
  });
});
