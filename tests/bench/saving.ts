import { randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openDesk } from '../../src/desk/desk.ts';
import { HOLE, holeMade, rowLogged, tickingClock } from '../desk/support/values.ts';

/** Milliseconds: the middle one, and the one that ninety-nine of a hundred stay under. */
interface Spread {
  readonly p50: number;
  readonly p99: number;
}

/** What saving a row costs, beside a bare append and fsync of as many bytes on the same disk in the same run. */
export interface SavingFigures {
  readonly rows: number;
  readonly bytesARow: number;
  /** From the edit to "saved". */
  readonly desk: Spread;
  readonly bare: Spread;
  /** desk over bare, in the middle. Aim: at most 2. */
  readonly ratio: number;
}

/** Times rows through the desk and bare appends by turns, so that both meet the same disk. */
export async function savingFigures(rows = 500): Promise<SavingFigures> {
  const folder = mkdtempSync(join(tmpdir(), 'offsider-bench-'));
  try {
    writeFileSync(join(folder, 'project.json'), '{}\n');
    const opened = await openDesk({
      folder,
      person: 'Ana Reyes',
      clock: tickingClock(),
      random: (bytes) => new Uint8Array(randomBytes(bytes)),
      idleMs: 60_000,
    });
    if (!opened.ok) throw new Error(opened.findings.map((finding) => finding.problem).join('; '));
    const desk = opened.value;
    const made = desk.submit({ what: 'hole made', parts: [{ document: HOLE, changes: holeMade() }] });
    if (made.ok) await made.durable;
    const bare = await open(join(folder, 'bare.jsonl'), 'ax');
    const line = Buffer.alloc(BYTES_A_ROW, 'x');
    const times = { desk: [] as number[], bare: [] as number[] };
    for (let row = 0; row < rows; row += 1) {
      times.desk.push(
        await timed(async () => {
          const logged = desk.submit({
            what: 'row logged',
            parts: [{ document: HOLE, changes: [rowLogged(desk.newId(), row)] }],
          });
          if (!logged.ok) throw new Error(logged.problem);
          await logged.durable;
        }),
      );
      times.bare.push(
        await timed(async () => {
          await bare.write(line);
          await bare.sync();
        }),
      );
    }
    await bare.close();
    await desk.close();
    const [ours, theirs] = [spread(times.desk), spread(times.bare)];
    return { rows, bytesARow: BYTES_A_ROW, desk: ours, bare: theirs, ratio: ours.p50 / theirs.p50 };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A row's line in the journal, its hashes included. */
const BYTES_A_ROW = 480;

async function timed(run: () => Promise<void>): Promise<number> {
  const start = performance.now();
  await run();
  return performance.now() - start;
}

function spread(times: readonly number[]): Spread {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;
  return { p50: at(0.5), p99: at(0.99) };
}
