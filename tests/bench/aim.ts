/** The middle of some values. */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

/** Prints a figure beside its aim: `met` or `MISSED`. Nothing else comes of it: the bench guards nothing. */
export function against(what: string, value: number, most: number, unit = ''): void {
  const verdict = value <= most ? 'met' : 'MISSED';
  console.log(`  ${what}: ${value.toFixed(2)}${unit}, aim ≤ ${most}${unit}: ${verdict}`);
}

/** A part of the bench. One that can't be measured says why, and the bench goes on. */
export async function section(title: string, measure: () => void | Promise<void>): Promise<void> {
  console.log(`== ${title}`);
  try {
    await measure();
  } catch (error) {
    console.log(`  NOT MEASURED: ${error instanceof Error ? error.message.slice(0, 600) : String(error)}`);
  }
}

/** How long two things take that are done in turn, so that both meet the same machine: the ratio of the middles and of the shortest. */
export async function inTurn(
  rounds: number,
  ours: () => unknown,
  theirs: () => unknown,
): Promise<{
  readonly ours: number;
  readonly theirs: number;
  readonly ratio: number;
  readonly least: number;
}> {
  const times = { ours: [] as number[], theirs: [] as number[] };
  for (let round = 0; round < rounds; round += 1) {
    times.theirs.push(await timed(theirs));
    times.ours.push(await timed(ours));
  }
  const [a, b] = [median(times.ours), median(times.theirs)];
  return { ours: a, theirs: b, ratio: a / b, least: Math.min(...times.ours) / Math.min(...times.theirs) };
}

/** Milliseconds that something takes. */
export async function timed(run: () => unknown): Promise<number> {
  const start = performance.now();
  await run();
  return performance.now() - start;
}
