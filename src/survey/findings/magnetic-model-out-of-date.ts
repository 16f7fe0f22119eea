import { defineFinding } from '../../finding/finding.ts';

/** Raised where the declination is asked for a date no carried model covers. */
export const magneticModelOutOfDate = defineFinding({
  code: 'survey-magnetic-model-out-of-date',
  severity: 'fault',
  title: 'No World Magnetic Model covers the date.',
  rationale:
    'Magnetic north moves, and a model is good for five years. A declination taken outside its years is wrong by an amount nobody ' +
    'knows, and turns every magnetic azimuth with it.',
});
