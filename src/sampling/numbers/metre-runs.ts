/** Metres that follow one another without a gap. */
export interface MetreRun {
  readonly fromMm: number;
  readonly toMm: number;
  readonly count: number;
}

/** The metres of which something holds, joined where they follow one another. Metres come from the top down. */
export function runsOf<Metre extends { readonly fromMm: number; readonly toMm: number }>(
  metres: readonly Metre[],
  holds: (metre: Metre) => boolean,
): readonly MetreRun[] {
  const runs: MetreRun[] = [];
  for (const { fromMm, toMm } of metres.filter(holds)) {
    const open = runs.at(-1);
    if (open?.toMm === fromMm) runs[runs.length - 1] = { fromMm: open.fromMm, toMm, count: open.count + 1 };
    else runs.push({ fromMm, toMm, count: 1 });
  }
  return runs;
}
