import { type Adapter, Low } from 'lowdb';
import { describe, expect, it } from 'vitest';
import type { Disk } from '../../src/files/disk.ts';
import { writeDurably } from '../../src/files/write-durably.ts';
import { afterKill, afterPowerCut, type Choice, type Medium } from './medium.ts';
import { type RecordingDisk, recordingDisk } from './recording-disk.ts';
import {
  cutsFor,
  firstDay,
  type MakeDisk,
  momentsOfSitting,
  runPowerCuts,
  seededNumbers,
  type Tally,
} from './runs.ts';
import { FOLDER, freshProject } from './sitting.ts';

/** A disk on which a sync of a file, or of a folder, says that it is done and does nothing. */
function withoutSync(what: 'file' | 'folder'): MakeDisk {
  return (medium, fault, after): RecordingDisk => {
    const honest = recordingDisk(medium, fault, after);
    if (what === 'folder') return { ...honest, syncFolder: async () => {} };
    return {
      ...honest,
      create: async (path) => ({ ...(await honest.create(path)), sync: async () => {} }),
    };
  };
}

async function lossesWith(makeDisk: MakeDisk): Promise<Tally> {
  const tally: Tally = { points: 0, failures: [] };
  const random = seededNumbers(5);
  const { seen, moments } = await momentsOfSitting(await firstDay(), makeDisk);
  for (const moment of moments.filter((_, index) => index % 4 === 0))
    await runPowerCuts(moment, seen, cutsFor(moment.medium, 1, random).slice(0, 6), tally);
  return tally;
}

/** Saves as lowdb's stock adapter for JSON files does: all of it under a fixed temporary name, renamed, never synced. */
function stockWay(disk: Disk, path: string): Adapter<readonly number[]> {
  return {
    read: async () => JSON.parse(new TextDecoder().decode(await disk.readFile(path))),
    write: async (rows) => {
      const file = await disk.create(`${FOLDER}/.rows.json.tmp`);
      await file.write(new TextEncoder().encode(JSON.stringify(rows)));
      await file.close();
      await disk.rename(`${FOLDER}/.rows.json.tmp`, path);
    },
  };
}

/** Saves as our adapter does. */
function ourWay(disk: Disk, path: string): Adapter<readonly number[]> {
  let token = 0;
  return {
    read: async () => JSON.parse(new TextDecoder().decode(await disk.readFile(path))),
    write: (rows) => {
      token += 1;
      return writeDurably(disk, path, new TextEncoder().encode(JSON.stringify(rows)), `t${token}`);
    },
  };
}

/** Saves ten rows through an adapter; counts the power cuts after which a row that was saved is not there. */
async function lostRows(
  make: (disk: Disk, path: string) => Adapter<readonly number[]>,
): Promise<{ cuts: number; lost: number }> {
  const path = `${FOLDER}/rows.json`;
  const moments: { readonly medium: Medium; readonly saved: number }[] = [];
  let saved = 0;
  const medium = await freshProject();
  const disk = recordingDisk(
    medium,
    () => undefined,
    () => moments.push({ medium: afterKill(medium), saved }),
  );
  const low = new Low<readonly number[]>(make(disk, path), []);
  for (let row = 1; row <= 10; row += 1) {
    low.data = [...low.data, row];
    await low.write();
    saved = row;
  }
  const tally = { cuts: 0, lost: 0 };
  const choices: readonly Choice[] = [
    () => 'drop',
    (piece) => (piece % 2 === 0 ? 'keep' : 'drop'),
    () => 0.5,
  ];
  for (const moment of moments) {
    for (const choose of choices) {
      tally.cuts += 1;
      const left = recordingDisk(afterPowerCut(moment.medium, choose));
      const rows = await make(left, path)
        .read()
        .catch(() => null);
      if ((rows?.length ?? 0) < moment.saved) tally.lost += 1;
    }
  }
  return tally;
}

describe('the fault harness', () => {
  it('sees rows lost where files are not synced', async () => {
    expect((await lossesWith(withoutSync('file'))).failures.length).toBeGreaterThan(0);
  });

  it('sees rows lost where folders are not synced', async () => {
    expect((await lossesWith(withoutSync('folder'))).failures.length).toBeGreaterThan(0);
  });

  it("catches lowdb's stock way of saving losing rows, and ours losing none", async () => {
    const stock = await lostRows(stockWay);
    const ours = await lostRows(ourWay);
    expect(stock.lost).toBeGreaterThan(stock.cuts / 10);
    expect(ours.lost).toBe(0);
    expect(ours.cuts).toBeGreaterThan(100);
  });
});
