import { execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readGps } from '../../src/files/read-gps.ts';
import { readFixes } from '../../src/survey/collar/fixes.ts';
import { nmeaChecksum } from '../../src/survey/collar/nmea.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'offsider-gps-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const body = 'GPGGA,010203,2907.00000,S,12206.00000,E,1,09,0.9,431.5,M,,M,,';
const SENTENCE = `$${body}*${nmeaChecksum(body)}`;
const QUICK = { forMs: 400, sentences: 3 };

/** A pipe with a name, as a device is for whoever opens it. */
function fifo(name: string): string {
  const path = join(folder, name);
  execFileSync('mkfifo', [path]);
  return path;
}

describe('the sentences of a GPS', () => {
  it('are read whole from a file, those with a bad checksum left out with the reason', async () => {
    const path = join(folder, 'fixes.txt');
    writeFileSync(path, `${SENTENCE}\r\n${SENTENCE.replace('431.5', '431.6')}\r\n${SENTENCE}\r\n`);
    const read = await readGps(path, QUICK);
    expect(read.ok).toBe(true);
    const { average, leftOut } = readFixes(read.ok ? read.text : '');
    expect(average?.fixes).toBe(2);
    expect(leftOut).toMatchObject([{ line: 2, reason: expect.stringContaining('checksum') }]);
  });

  it('are listened to from a device until enough came, though it goes on sending', async () => {
    const path = fifo('device');
    const sender = spawn('sh', [
      '-c',
      `while :; do printf '%s\\r\\n' '${SENTENCE}'; sleep 0.02; done > ${path}`,
    ]);
    const read = await readGps(path, { forMs: 10_000, sentences: 3 });
    sender.kill();
    expect(read).toMatchObject({ ok: true, text: expect.stringContaining(SENTENCE) });
  });

  it('from a device end with its sender', async () => {
    const path = fifo('short');
    const sender = spawn('sh', ['-c', `printf '%s\\n' '${SENTENCE}' > ${path}`]);
    expect(await readGps(path, { forMs: 10_000, sentences: 60 })).toMatchObject({ ok: true });
    sender.kill();
  });

  it('from a device that never sends keep no one waiting past the time', async () => {
    expect(await readGps(fifo('silent'), { forMs: 120, sentences: 3 })).toEqual({
      ok: false,
      problem: 'nothing came from it',
    });
  });

  it('that are not there are told from those that are empty', async () => {
    writeFileSync(join(folder, 'empty'), '');
    expect(await readGps(join(folder, 'empty'), QUICK)).toEqual({ ok: false, problem: 'it is empty' });
    expect(await readGps(join(folder, 'nowhere'), QUICK)).toEqual({
      ok: false,
      problem: 'the file or its folder is not there',
    });
    expect(await readGps(folder, QUICK)).toEqual({ ok: false, problem: 'it is a folder' });
  });
});
