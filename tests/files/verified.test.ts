import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { StoredDocument } from '../../src/files/document-file.ts';
import { readProjectFolder } from '../../src/files/project-folder.ts';
import { realDisk } from '../../src/files/real-disk.ts';
import { keepVerified } from '../../src/files/verified.ts';
import { copyOfSample } from '../commands/support/outside.ts';

const stored = (id: string): StoredDocument => ({
  document: { kind: 'hole', id, tables: {}, history: [] },
  position: { generation: 1, sequence: 1 },
});

describe('what was read and found in order', () => {
  it('is found by the digest of its bytes and its name together', () => {
    const kept = keepVerified(100);
    kept.add('d1', 'holes/A.json', 10, stored('A'));
    expect(kept.get('d1', 'holes/A.json')?.document.id).toBe('A');
    expect(kept.get('d2', 'holes/A.json')).toBeUndefined();
    expect(kept.get('d1', 'holes/B.json')).toBeUndefined();
  });

  it('goes, the longest unused first, where more is read than is kept', () => {
    const kept = keepVerified(100);
    kept.add('a', 'f', 50, stored('A'));
    kept.add('b', 'f', 50, stored('B'));
    kept.get('a', 'f');
    kept.add('c', 'f', 50, stored('C'));
    expect(['a', 'b', 'c'].map((digest) => kept.get(digest, 'f')?.document.id)).toEqual([
      'A',
      undefined,
      'C',
    ]);
    kept.add('d', 'f', 101, stored('D'));
    expect(kept.get('d', 'f')).toBeUndefined();
  });

  it('is the same document where a project is read again, and is checked again where a byte has changed', async () => {
    const folder = copyOfSample();
    const read = async (id: string) =>
      (await readProjectFolder(realDisk, folder, [])).documents.get(`hole/${id}`);
    const first = await read('MBRC001');
    expect((await read('MBRC001'))?.document).toBe(first?.document);
    const file = join(folder, 'holes/MBRC001.json');
    const text = readFileSync(file, 'utf8');

    writeFileSync(file, text.replace('pad stripped, red sand', 'pad stripped, red sanD'));
    expect((await read('MBRC001'))?.copy).toBeDefined();
    writeFileSync(file, text.replaceAll('pad stripped, red sand', 'pad stripped, red sanD'));
    const forged = await readProjectFolder(realDisk, folder, []);
    expect(forged.closed.get('hole/MBRC001')).toBe('its history has been changed');
    writeFileSync(file, text);
    expect((await read('MBRC001'))?.document).toBe(first?.document);
  });
});
