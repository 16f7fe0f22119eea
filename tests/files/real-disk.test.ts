import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { asReading, errorCode, whyRefused } from '../../src/files/disk.ts';
import { patiently, realDisk } from '../../src/files/real-disk.ts';

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
