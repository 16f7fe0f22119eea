import { readdirSync, statSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { join } from 'node:path';
import { against, inTurn } from './aim.ts';
import { atHole, type RealProject, take } from './real-hole.ts';

/** So few that no file is written among them: that is the stall after a row. */
const ROWS = 150;

/** Enter to durable: a row is read, made, and on the medium, beside a bare append and fsync of as many bytes in turn with it. */
export async function saving(hole: RealProject, metres: number, most: number): Promise<void> {
  const at = await atHole(hole.folder);
  const row = (index: number) => take(at, `py${1 + (index % 3)}cl${1 + (index % 2)}`);
  const journal = join(hole.folder, 'journal');
  const bytesWritten = () =>
    readdirSync(journal)
      .filter((file) => file.endsWith('.jsonl'))
      .reduce((sum, file) => sum + statSync(join(journal, file)).size, 0);
  for (let index = 0; index < 20; index += 1) await row(index);
  const before = bytesWritten();
  await row(0);
  const line = Buffer.alloc(bytesWritten() - before, 'x');
  const bare = await open(join(hole.folder, 'bare.jsonl'), 'ax');
  let index = 0;
  const { ours, theirs, ratio, least } = await inTurn(
    ROWS,
    () => row(index++),
    async () => {
      await bare.write(line);
      await bare.sync();
    },
  );
  await bare.close();
  await at.desk.close();
  console.log(
    `  ${metres} m: a row of ${line.length} bytes ${ours.toFixed(2)} ms, bare ${theirs.toFixed(2)} ms; ratio of the shortest ${least.toFixed(2)} (by the clock)`,
  );
  against(`${metres} m, over a bare append and fsync of as many bytes`, ratio, most);
}
