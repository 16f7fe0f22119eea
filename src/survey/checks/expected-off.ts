import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { formatDepth } from '../../quantity/depth.ts';
import type { ExpectedLogged } from '../expected/expected-logged.ts';
import { expectedNotSeen, expectedOff } from '../findings.ts';
import type { SurveySettings } from '../settings.ts';

/** Contacts and zones logged further off than the settings allow, or passed by that much and not seen. */
export function checkExpected(
  zones: readonly ExpectedLogged[],
  loggedMm: number,
  settings: Pick<SurveySettings, 'expectedToleranceM'>,
  place: Place,
): readonly Finding[] {
  const toleranceMm = settings.expectedToleranceM * 1000;
  return zones.flatMap((zone) => {
    const { expected, top, state, loggedTopMm, topOffMm = 0 } = zone;
    const at = { ...place, thing: expected.name };
    const where = `${rangeWords(top?.earliestMm ?? expected.fromMm, top?.latestMm ?? expected.fromMm)} m`;
    if (state === 'not seen' && loggedMm > (top?.latestMm ?? expected.fromMm) + toleranceMm)
      return [
        expectedNotSeen.at(at, {
          problem: `expected at ${where}, and not in the log down to ${formatDepth(loggedMm)} m`,
          remedy:
            'Look at the chips again; if it is not there, tell whoever made the plan, and look at the survey.',
        }),
      ];
    if (loggedTopMm === undefined || Math.abs(topOffMm) <= toleranceMm) return [];
    return [
      expectedOff.at(
        { ...at, fromMm: loggedTopMm },
        {
          problem: `logged at ${formatDepth(loggedTopMm)} m, ${offWords(topOffMm)} (${where})`,
          remedy:
            'Is it the same contact? If so, the rest of the plan moves with it: look at the survey and the target.',
        },
      ),
    ];
  });
}

/** A range narrower than this is told as one depth, millimetres: no one logs finer. */
const ONE_DEPTH_MM = 500;

/** `52–58`, or `52` where both are as good as the same; whole decimetres. */
export function rangeWords(earliestMm: number, latestMm: number): string {
  const tenth = (mm: number) => formatDepth(Math.round(mm / 100) * 100);
  return latestMm - earliestMm < ONE_DEPTH_MM ? tenth(earliestMm) : `${tenth(earliestMm)}–${tenth(latestMm)}`;
}

/** `3.2 m deeper`, `as expected`. */
export function offWords(offMm: number): string {
  if (Math.abs(offMm) < 50) return 'as expected';
  return `${(Math.abs(offMm) / 1000).toFixed(1)} m ${offMm > 0 ? 'deeper' : 'higher'} than expected`;
}
