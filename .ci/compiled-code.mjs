// Has the program's compiled code made, so that the first start is as fast as the next: the program makes it itself, a second after its first screen.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { spawn } from '@lydell/node-pty';

/** Opens the sample project in a terminal of its own, only to read, until the compiled code is there. False if it isn't within a minute. */
export async function compiledCode(dist) {
  const args = [join(dist, 'offsider.js'), '--read-only', 'sample-projects/mulgara-bend'];
  const program = spawn(process.execPath, args, { cols: 100, rows: 30 });
  let isOver = false;
  program.onExit(() => {
    isOver = true;
  });
  const isMade = () => readdirSync(dist).some((file) => file.endsWith('.code'));
  for (let tenths = 0; tenths < 600 && !isMade() && !isOver; tenths++) await pause(100);
  if (!isOver) program.kill();
  return isMade();
}
