/** A slip that neither the last digits nor the count of a rod can show, and what would catch it. */
export interface NoTrace {
  readonly slip: string;
  readonly caughtBy: string;
}

/** Slips that leave no trace in the numbers of a rod. The rod check can't find them, and says so nowhere: these would. */
export const NO_TRACE: readonly NoTrace[] = [
  {
    slip: 'duplicate and primary swapped on the two chutes',
    caughtBy:
      'a scan at the chute; the pair’s results lie no further apart than they should, so they never show it',
  },
  {
    slip: 'two bags of one rod swapped',
    caughtBy: 'a scan beside the pile; a grade that does not fit the log of its metre',
  },
  {
    slip: 'a metre without a bag and a number skipped in the same rod',
    caughtBy: 'a scan beside any pile between the two; bags laid out beside their piles',
  },
  {
    slip: 'a control put in early under a number of the same rod',
    caughtBy:
      'a scan beside any pile between the two numbers; the laboratory’s result of the number kept for it',
  },
  {
    slip: 'a standard of the wrong lot',
    caughtBy: 'its result: it fails as one lot and fits another',
  },
  {
    slip: 'two digits the wrong way round in front of the last ones that are read',
    caughtBy: 'the whole number typed or scanned: it is labelled for no hole, or for another one',
  },
  {
    slip: "another hole's bag whose last digits are those expected",
    caughtBy: 'the whole number typed or scanned; the receipt of the laboratory',
  },
];
