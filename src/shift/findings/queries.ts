import { defineFinding } from '../../finding/finding.ts';

/** The lines of the query list: where a plod is off our own record past tolerance, and what makes either of them doubtful. */
export const SHIFT_QUERIES = {
  hours: defineFinding({
    code: 'plod-hours-differ',
    severity: 'warning',
    title: 'A plod claims other hours than the record has.',
    rationale:
      'Active and standby hours are paid at different rates, and idle time remembered late tends to grow.',
  }),
  metres: defineFinding({
    code: 'plod-metres-differ',
    severity: 'warning',
    title: 'A plod claims other metres of a hole than the rods drilled.',
    rationale: 'Metres are most of the bill; a rod counted twice is paid twice.',
  }),
  shots: defineFinding({
    code: 'plod-shots-differ',
    severity: 'warning',
    title: 'A plod claims another number of survey shots than were recorded.',
    rationale: 'A shot that was paid and is not in the record is either missing data or was never taken.',
  }),
  consumables: defineFinding({
    code: 'plod-consumables-differ',
    severity: 'warning',
    title: 'A plod claims other consumables than the record has.',
    rationale: 'Consumables are paid at cost plus, one by one.',
  }),
  money: defineFinding({
    code: 'plod-money-differs',
    severity: 'warning',
    title: 'A line of the bill comes out otherwise from the plod than from the record.',
    rationale: 'It shows what a difference is worth before the plod is signed.',
  }),
  activityUnknown: defineFinding({
    code: 'plod-activity-unknown',
    severity: 'warning',
    title: 'A plod has time on an activity that is not in the list.',
    rationale: 'It has no charge class, so it is in no sum and would be signed unseen.',
  }),
  standbyNotAuthorised: defineFinding({
    code: 'standby-not-authorised',
    severity: 'warning',
    title: 'Standby was recorded without the person who authorised it.',
    rationale: 'Standby that nobody is named for is the first line that a bill is argued about.',
  }),
  drilledOnStandby: defineFinding({
    code: 'drilled-on-standby',
    severity: 'warning',
    title: 'Rods were drilled while the record says standby.',
    rationale:
      'A change of activity that was not entered makes the record itself wrong, and the plod look so.',
  }),
} as const;
