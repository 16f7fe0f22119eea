import { execFile } from 'node:child_process';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { readDocumentFile } from '../../src/files/document-file.ts';
import { loadDocument } from '../../src/files/load-document.ts';
import { DOCUMENT_LIMITS, readJsonText } from '../../src/files/read-json.ts';
import { realDisk } from '../../src/files/real-disk.ts';
import { loadSnapshot } from '../../src/files/snapshot.ts';
import { against, inTurn } from './aim.ts';
import { atHole, HOLE, type RealProject, realHole, take } from './real-hole.ts';

const run = promisify(execFile);

/** Reading a hole beside JSON.parse of its text: with every check, and where its bytes were read before. */
export async function reading(hole: RealProject): Promise<void> {
  const bytes = readFileSync(hole.file);
  const text = bytes.toString('utf8');
  const parse = () => JSON.parse(text);
  const cold = await inTurn(15, () => readAll(bytes), parse);
  console.log(
    `  ${(bytes.length / 1e6).toFixed(1)} MB: JSON.parse ${cold.theirs.toFixed(0)} ms, every check ${cold.ours.toFixed(0)} ms`,
  );
  against('every check, over JSON.parse (shortest)', cold.least, 4);
  await loadSnapshot(realDisk, hole.folder, HOLE, []);
  const known = await inTurn(15, () => loadSnapshot(realDisk, hole.folder, HOLE, []), parse);
  against('the same bytes again in one process, over JSON.parse (shortest)', known.least, 1.5);
}

function readAll(bytes: Uint8Array): void {
  const json = readJsonText(bytes, 'hole', DOCUMENT_LIMITS);
  const stored = json.ok ? readDocumentFile(json.value, HOLE) : json;
  if (!stored.ok) throw new Error(JSON.stringify(stored.findings));
  loadDocument('hole', stored.value, []);
}

/** How long nothing else runs while the files are written after a row: the longest of the first such time after opening and of those after it. */
export async function stall(hole: RealProject, metres: number): Promise<void> {
  const at = await atHole(hole.folder);
  const stalls: number[] = [];
  for (let row = 0; row < 6; row += 1) {
    await take(at, `py${1 + (row % 3)}`);
    stalls.push(await longestGap(at.desk.snapshot()));
  }
  await at.desk.close();
  console.log(
    `  ${metres} m: one after another ${stalls.map((each) => each.toFixed(0)).join(' ')} ms (by the clock)`,
  );
  against(`${metres} m, longest`, Math.max(...stalls), 16, ' ms');
}

/** The longest time between two turns of the event loop until something is done. */
async function longestGap(work: Promise<unknown>): Promise<number> {
  let longest = 0;
  let last = performance.now();
  let over = false;
  void work.finally(() => {
    over = true;
  });
  while (!over) {
    await new Promise((turn) => setImmediate(turn));
    const now = performance.now();
    longest = Math.max(longest, now - last);
    last = now;
  }
  return longest;
}

/** Lines of a pipe: what each costs in processor time in a long hole, beside a short one. */
export async function entering(): Promise<void> {
  const cost = async (metres: number): Promise<number> => {
    const before = process.cpuUsage();
    // Lines of a pipe follow one another at once.
    (await realHole(metres, 0.002)).remove();
    const { user } = process.cpuUsage(before);
    return user / 1000 / metres;
  };
  await cost(60);
  const short = await cost(850);
  const long = await cost(4300);
  console.log(`  a metre costs ${short.toFixed(2)} ms of 1,000 lines, ${long.toFixed(2)} ms of 5,000`);
  against('5,000 lines over 1,000, a line', long / short, 1.2);
}

/** Commands from start to end beside a bare node, and how large the bundle is. */
export async function commands(bundle: string, folder: string): Promise<void> {
  const node = (...args: readonly string[]) => run(process.execPath, [...args]);
  for (const [name, args, most] of [
    ['holes', ['holes', '--project', folder], 2.5],
    ['--version', ['--version'], 1.3],
  ] as const) {
    const { ratio, least, ours, theirs } = await inTurn(
      11,
      () => node(bundle, ...args),
      () => node('-e', '0'),
    );
    console.log(
      `  ${name}: ${ours.toFixed(0)} ms, bare node ${theirs.toFixed(0)} ms, ratio of the shortest ${least.toFixed(2)}`,
    );
    against(`${name}, over bare node`, ratio, most);
  }
  const dist = dirname(bundle);
  const scripts = readdirSync(dist, { recursive: true, encoding: 'utf8' }).filter((file) =>
    /\.[cm]?js$/.test(file),
  );
  const size = scripts.reduce((sum, file) => sum + statSync(join(dist, file)).size, 0);
  against('bundle, everything that it loads', size / 1e6, 1.3, ' MB');
}
