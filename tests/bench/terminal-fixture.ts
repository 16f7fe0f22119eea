// What the terminal layer costs by itself: the fixture program of its tests, with and without the long-lived caches, beside a bare echo.
import { join } from 'node:path';
import { bundleProgram, removeBundle } from '../e2e/support/bundle.ts';
import { bareEcho, firstPaint, idle, keyToPaint, type Measured } from './terminal.ts';

const entry = join(import.meta.dirname, '..', 'e2e', 'support', 'fixture-app.tsx');
const fixture = (bundle: string): Measured => ({
  command: process.execPath,
  args: [bundle],
  ready: (screen) => screen.some((line) => line.includes('entry ▸')),
});
// Each key paints; Enter now and then, as in a row of the log.
const keys = Array.from({ length: 500 }, (_, index) => (index % 7 === 6 ? 'enter' : 'p2ser1c'[index % 7]!));

const bundles = [await bundleProgram(entry), await bundleProgram(entry, { stockInk: true })] as const;
const [shipped, stock] = [fixture(bundles[0]), fixture(bundles[1])];
for (const [name, program] of [
  ['bare echo', bareEcho],
  ['fixture, stock Ink', stock],
  ['fixture', shipped],
  ['bare echo', bareEcho],
] as const) {
  const { p50, p95, p99, bytesAKey, firstFrameBytes } = await keyToPaint(program, keys);
  const times = [p50, p95, p99].map((ms) => ms.toFixed(1)).join(' / ');
  const share = ((100 * bytesAKey) / firstFrameBytes).toFixed(1);
  console.log(
    `key to paint, ${name}: p50/p95/p99 ${times} ms, ${bytesAKey.toFixed(0)} B a key (${share} % of the first frame)`,
  );
}
const { bytes, cpuMs } = await idle(shipped, 10_000);
console.log(`idle, 10 s: ${bytes} B written, ${cpuMs ?? 'unknown'} ms of CPU`);
const { paintMs, bareMs, ratio } = await firstPaint(shipped);
console.log(
  `first paint: ${paintMs.toFixed(0)} ms, ${ratio.toFixed(1)} × bare node (${bareMs.toFixed(0)} ms)`,
);
bundles.forEach(removeBundle);
