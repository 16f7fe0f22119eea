import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Disk } from '../../src/files/disk.ts';
import { noProject, notJson } from '../../src/files/findings.ts';
import { keepAsRead, withLastRead } from '../../src/files/last-good.ts';
import { realDisk } from '../../src/files/real-disk.ts';
import { newProject, opened } from '../desk/support/project.ts';

const said = { problem: 'a comma is missing', remedy: 'Mend it.' };
const bytes = (text: string) => new TextEncoder().encode(text);

describe('versions of project.json and logging.json', () => {
  it('are each kept as they were worked with, once', async () => {
    const folder = newProject();
    for (const text of ['{}', '{ "a": 1 }', '{ "a": 1 }', '{}']) {
      writeFileSync(join(folder, 'project.json'), text);
      await (await opened(folder)).close();
    }
    const kept = (number: number) =>
      readFileSync(join(folder, `journal/kept/project.json.read.${number}`), 'utf8');
    expect([kept(1), kept(2)]).toEqual(['{}', '{ "a": 1 }']);
    expect(() => kept(3)).toThrow();
  });

  it('are named where one that is there now is of no use, the newest of more than nine', async () => {
    const folder = newProject();
    mkdirSync(join(folder, 'journal'));
    for (let number = 1; number < 12; number += 1)
      await keepAsRead(realDisk, folder, 'logging.json', bytes(`{ "n": ${number} }`));
    const [named, other] = await withLastRead(realDisk, folder, [
      notJson.at({ file: 'logging.json' }, said),
      notJson.at({ file: 'project.json' }, said),
    ]);
    expect(named?.remedy).toBe(
      'Mend it. Versions that could be read are kept, the newest is journal/kept/logging.json.read.11.',
    );
    expect(other?.remedy).toBe('Mend it.');
  });

  it('keep no one from working where the disk does not take one', async () => {
    const folder = newProject();
    const create: Disk['create'] = async (path) => {
      if (path.includes('kept')) throw Object.assign(new Error('full'), { code: 'ENOSPC' });
      return realDisk.create(path);
    };
    const desk = await opened(folder, { disk: { ...realDisk, create } });
    expect(desk.findings()).toEqual([]);
    await desk.close();
  });

  it('are named where project.json is gone', async () => {
    const folder = newProject();
    await (await opened(folder)).close();
    rmSync(join(folder, 'project.json'));
    const [gone] = await withLastRead(realDisk, folder, [noProject.at({ file: 'this folder' }, said)]);
    expect(gone?.remedy).toContain('the newest is journal/kept/project.json.read.1');
  });
});
