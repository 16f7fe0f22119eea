import { describe, expect, it } from 'vitest';
import { highestCounter, newReplica, takeReplica } from '../../src/files/replica.ts';
import { apply } from '../../src/record/apply.ts';
import { emptyDocument } from '../../src/record/document.ts';
import { HOLE, holeMade, rowLogged, seededRandom } from '../desk/support/values.ts';
import { recordingDisk } from '../faults/recording-disk.ts';
import { freshProject } from '../faults/sitting.ts';

async function projectDisk() {
  const disk = recordingDisk(await freshProject());
  await disk.makeFolder('/project/journal');
  return disk;
}

describe('a replica id', () => {
  it('is six characters without vowels, and differs as the random bytes do', () => {
    const random = seededRandom(1);
    const made = new Set(Array.from({ length: 500 }, () => newReplica(random)));
    for (const replica of made) expect(replica).toMatch(/^[2-9b-df-hj-km-np-tv-z]{6}$/);
    expect(made.size).toBe(500);
  });

  it('stays with a folder from one opening to the next', async () => {
    const disk = await projectDisk();
    const first = await takeReplica(disk, '/project', 'rig', seededRandom(1), 'aa');
    expect(await takeReplica(disk, '/project', 'rig', seededRandom(2), 'ab')).toBe(first);
  });

  it('is another where documents or ends of histories are lacking: numbers given in them would be given once more', async () => {
    const disk = await projectDisk();
    const first = await takeReplica(disk, '/project', 'rig', seededRandom(1), 'aa');
    expect(await takeReplica(disk, '/project', 'rig', seededRandom(2), 'ab', true)).not.toBe(first);
  });

  it.each([
    ['another computer', '"host":"rig"', '"host":"camp"'],
    ['another device', '"device":"memory"', '"device":"stick"'],
    ['another folder of the same device', /"inode":"\d+"/, '"inode":"999"'],
    ['a file that cannot be read', '{', '['],
  ])('is made again on %s', async (_, from, to) => {
    const disk = await projectDisk();
    const first = await takeReplica(disk, '/project', 'rig', seededRandom(1), 'aa');
    const text = new TextDecoder().decode(await disk.readFile('/project/journal/replica.json'));
    await disk.unlink('/project/journal/replica.json');
    const file = await disk.create('/project/journal/replica.json');
    await file.write(new TextEncoder().encode(text.replace(from, to)));
    expect(await takeReplica(disk, '/project', 'rig', seededRandom(2), 'ab')).not.toBe(first);
  });
});

describe('the counter of a replica', () => {
  const made = apply(
    emptyDocument(HOLE),
    { edit: 'abcdef-7', at: '2026-03-14T08:00:00+08:00', by: 'Ana Reyes', what: 'x' },
    [...holeMade(), rowLogged('abcdef-12', 0), rowLogged('others-99', 1)],
  );
  if (!made.ok) throw new Error(made.problem);

  it('goes on above every id of its own in tables, histories and journal, and of no one else', () => {
    expect(highestCounter('abcdef', [made.document], [])).toBe(12);
    expect(highestCounter('abcdef', [{ ...made.document, tables: {} }], [])).toBe(12);
    expect(highestCounter('ghjkmn', [made.document], [])).toBe(0);
    const edit = { edit: 'abcdef-40', at: '', by: '', what: '', parts: [] };
    expect(highestCounter('abcdef', [made.document], [edit])).toBe(40);
  });

  it('sees what was merged in', () => {
    const entry = {
      ...made.entry,
      edit: 'ghjkmn-1',
      hash: 'of the merge',
      changes: [],
      incoming: [made.entry],
    };
    expect(highestCounter('abcdef', [{ ...emptyDocument(HOLE), history: [entry] }], [])).toBe(12);
  });
});
