import {
  cpSync,
  existsSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openProject } from '../../src/commands/at-project.ts';
import { openDesk } from '../../src/desk/desk.ts';
import type { Disk } from '../../src/files/disk.ts';
import { realDisk } from '../../src/files/real-disk.ts';
import { type Finding, formatFinding } from '../../src/finding/finding.ts';
import { freshFolder, hear, SAMPLE } from '../commands/support/outside.ts';
import { deskOptions } from '../desk/support/project.ts';
import { MISREAD } from './misread.ts';

const HOLE_FILE = 'holes/MBRC003.json';

/** A copy of the sample project with one hole: enough for one file at a time. */
function smallSample(): string {
  const folder = freshFolder();
  for (const file of ['project.json', 'logging.json', HOLE_FILE])
    cpSync(join(SAMPLE, file), join(folder, file));
  return folder;
}

/** What is found on opening a copy of the sample with something done to it; nothing may be thrown. */
async function foundAfter(
  change: (folder: string) => void,
  disk: Disk = realDisk,
): Promise<readonly Finding[]> {
  const folder = smallSample();
  change(folder);
  const opened = await openDesk(deskOptions(folder, { disk }));
  if (!opened.ok) return opened.findings;
  const findings = opened.value.findings();
  const closed = await opened.value.close();
  expect(closed).toEqual({ ok: true });
  for (const finding of findings) {
    expect(formatFinding(finding)).not.toMatch(/^somewhere/);
    expect(finding.remedy).not.toBe('');
  }
  return findings;
}

const put = (file: string, bytes: string | Uint8Array) => (folder: string) =>
  writeFileSync(join(folder, file), bytes);
const codes = (findings: readonly Finding[]): readonly string[] => [
  ...new Set(findings.map((finding) => finding.code)),
];

describe('names of files among the holes', () => {
  const reserved = [
    'CON',
    'nul',
    'Aux',
    'PRN',
    'COM1',
    'com9',
    'LPT3',
    'COM¹',
    'COM²',
    'LPT³',
    'COM0',
    'CONIN$',
  ];
  const odd = [
    'mbrc003',
    'Mbrc003',
    'MBRC003 ',
    'MBRC003.',
    ' MBRC009',
    '-MBRC9',
    '_MBRC9',
    'MBRC003.json',
    'MBRC003~',
    'MBRC003 (1)',
  ];
  const strange = [
    'ÄBC',
    'ＭＢＲＣ００３',
    'MBRC003\u200b',
    'MBRC003\u202e',
    'MBRC\x1b[31m',
    '..',
    '...',
    'A'.repeat(41),
    'A:B',
    'A*B',
    'A?B',
    '~ROOT',
    '%2e%2e',
    'null',
    '__proto__',
    'constructor',
  ];

  it.each([...reserved, ...odd, ...strange])(
    '%j is none of ours, is named, and is left as it is',
    async (name) => {
      let path = '';
      const findings = await foundAfter((folder) => {
        path = join(folder, 'holes', `${name}.json`);
        cpSync(join(folder, HOLE_FILE), path);
      });
      expect(codes(findings)).toEqual(['foreign-file']);
      expect(existsSync(path)).toBe(true);
    },
  );
});

describe('JSON that is made to be misread', () => {
  it.each(MISREAD)('is refused as a hole, and left as it is: %s', async (_what, text, code) => {
    let folder = '';
    const findings = await foundAfter((made) => {
      folder = made;
      put(HOLE_FILE, text)(made);
    });
    expect(codes(findings)).toContain(code);
    for (const finding of findings) expect(formatFinding(finding).length).toBeLessThan(1200);
    expect(readFileSync(join(folder, HOLE_FILE)).equals(Buffer.from(text))).toBe(true);
  });

  it.each(MISREAD)('is refused as project.json and as logging.json: %s', async (_what, text) => {
    for (const file of ['project.json', 'logging.json']) {
      const folder = smallSample();
      put(file, text)(folder);
      const opened = await openProject(hear().outside, { folder, write: true });
      expect(opened.ok).toBe(false);
      for (const finding of opened.ok ? [] : opened.findings) {
        expect(finding.place.file).toBe(file);
        expect(finding.remedy).not.toBe('');
      }
      expect(existsSync(join(folder, 'journal'))).toBe(false);
    }
  });

  it('may begin with one byte order mark', async () => {
    const findings = await foundAfter((folder) =>
      put(HOLE_FILE, `\ufeff${readFileSync(join(folder, HOLE_FILE), 'utf8')}`)(folder),
    );
    expect(findings).toEqual([]);
  });
});

describe('a file of 100 MB', () => {
  it('is refused by its size, before a byte of it is read', async () => {
    let read: readonly string[] = [];
    const watched: Disk = {
      ...realDisk,
      readFile: async (path, most) => {
        const bytes = await realDisk.readFile(path, most);
        read = [...read, path];
        return bytes;
      },
    };
    for (const [file, limit] of [
      [HOLE_FILE, 24],
      ['project.json', 4],
    ] as const) {
      const findings = await foundAfter((folder) => {
        writeFileSync(join(folder, file), '');
        read = [];
        truncateSync(join(folder, file), 100 * 1024 * 1024);
      }, watched);
      expect(findings.find((finding) => finding.place.file === file)?.problem).toBe(
        `it is 100 MB; at most ${limit} MB is read`,
      );
      expect(read.filter((path) => path.endsWith(file))).toEqual([]);
    }
  });
});

describe('links', () => {
  it.each(['holes', 'shifts', 'dispatches', 'results', 'journal', 'outbox'])(
    'that put the folder %s elsewhere are refused, and nothing is written there',
    async (room) => {
      const elsewhere = freshFolder();
      const findings = await foundAfter((folder) => {
        rmSync(join(folder, room), { recursive: true, force: true });
        symlinkSync(elsewhere, join(folder, room));
      });
      expect(findings.map((finding) => [finding.code, finding.place.file])).toEqual([['link-outside', room]]);
      expect(readdirSync(elsewhere)).toEqual([]);
    },
  );

  it.each([
    ['a file of the system', '/etc/passwd', 'link-outside'],
    ['a device that never ends', '/dev/zero', 'link-outside'],
    ['a folder above', '../../..', 'link-outside'],
    ['the project itself', '..', 'unreadable-file'],
    ['nothing', 'nowhere.json', 'unreadable-file'],
    ['itself', 'MBRC009.json', 'unreadable-file'],
  ])('in the place of a hole to %s are not followed', async (_what, to, code) => {
    const findings = await foundAfter((folder) => symlinkSync(to, join(folder, 'holes/MBRC009.json')));
    expect(codes(findings)).toEqual([code]);
  });

  it.each(['project.json', 'logging.json'])(
    'in the place of %s are not followed, and nothing is locked',
    async (file) => {
      const folder = smallSample();
      rmSync(join(folder, file));
      symlinkSync('/etc/passwd', join(folder, file));
      const opened = await openProject(hear().outside, { folder, write: true });
      expect(opened.ok ? [] : codes(opened.findings)).toEqual(['link-outside']);
      expect(existsSync(join(folder, 'journal'))).toBe(false);
    },
  );

  it('that stay within the project are read', async () => {
    const findings = await foundAfter((folder) => {
      cpSync(join(folder, HOLE_FILE), join(folder, 'kept-here.json'));
      rmSync(join(folder, HOLE_FILE));
      symlinkSync('../kept-here.json', join(folder, HOLE_FILE));
    });
    expect(findings).toEqual([]);
  });
});
