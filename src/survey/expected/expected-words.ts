import { formatDepth } from '../../quantity/depth.ts';
import { offWords, rangeWords } from '../checks/expected-off.ts';
import type { DepthRange } from './expected.ts';
import type { ExpectedLogged } from './expected-logged.ts';

/** One expected contact or zone as cells: its name, where the plan has it, where it should come in the hole as it runs, what the log says. */
export function expectedCells(zone: ExpectedLogged): readonly [string, string, string, string] {
  const { expected, top, foot } = zone;
  const hazard = expected.hazard === undefined ? '' : ` (${expected.hazard.toUpperCase()})`;
  const planned =
    expected.toMm === undefined
      ? formatDepth(expected.fromMm)
      : `${formatDepth(expected.fromMm)} to ${formatDepth(expected.toMm)}`;
  const here =
    top === undefined
      ? zone.blind === true
        ? 'not known yet'
        : 'not on its way'
      : expected.toMm === undefined
        ? range(top)
        : `${range(top)} to ${foot === undefined ? 'not known' : range(foot)}`;
  return [`${expected.name}${hazard}`, planned, here, loggedWords(zone)];
}

const range = (of: DepthRange) => rangeWords(of.earliestMm, of.latestMm);

function loggedWords({ state, loggedTopMm, loggedFootMm, topOffMm, footOffMm }: ExpectedLogged): string {
  switch (state) {
    case 'no log marker':
      return 'the plan does not say what in the log tells it';
    case 'ahead':
      return 'not logged yet';
    case 'not seen':
      return 'passed, NOT SEEN';
    case 'seen': {
      const top = `${formatDepth(loggedTopMm ?? 0)} m, ${offWords(topOffMm ?? 0)}`;
      return loggedFootMm === undefined
        ? top
        : `${top}; bottom ${formatDepth(loggedFootMm)} m, ${offWords(footOffMm ?? 0)}`;
    }
  }
}
