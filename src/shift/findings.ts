import { defineFinding } from '../finding/finding.ts';

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
    title: 'A line of the bill differs between the plod and the record.',
    rationale: 'It shows what a difference is worth before the plod is signed.',
  }),
  timeDiffers: defineFinding({
    code: 'plod-time-differs',
    severity: 'warning',
    title: 'A plod has a time under another charge class than the record.',
    rationale: 'Named by the clock, a difference can be remembered; as a sum of hours it can only be argued.',
  }),
  activityDiffers: defineFinding({
    code: 'plod-activity-differs',
    severity: 'warning',
    title: 'A plod has a time under another activity than the record, charged by the same class.',
    rationale:
      'A move has free time and a lump sum, conditioning has neither, though both are by the hour: the class alone hides it.',
  }),
  crew: defineFinding({
    code: 'plod-crew-differs',
    severity: 'warning',
    title: 'A plod names another crew than the record.',
    rationale:
      'Who was on the rig says who can be asked, and a sheet with another crew may be of another shift.',
  }),
  holeDiffers: defineFinding({
    code: 'plod-hole-differs',
    severity: 'warning',
    title: 'A plod has a time on another hole than the record.',
    rationale: 'Bands, minimums and lump sums go by the hole.',
  }),
  overlap: defineFinding({
    code: 'plod-times-overlap',
    severity: 'warning',
    title: 'Two lines of a plod claim the same time.',
    rationale: 'Time claimed twice is paid twice, and the sum of hours hides it.',
  }),
  missing: defineFinding({
    code: 'plod-time-missing',
    severity: 'warning',
    title: 'The lines of a plod do not make the length of the shift.',
    rationale: 'Time that is left out tends to come back on another sheet.',
  }),
  changedSince: defineFinding({
    code: 'plod-changed-since-signed',
    severity: 'warning',
    title: 'A shift was changed after its plod was signed.',
    rationale: 'The signature is for the figures as they were; an invoice must show both.',
  }),
  activityUnknown: defineFinding({
    code: 'plod-activity-unknown',
    severity: 'warning',
    title: 'A plod has time on an activity that is not in the list.',
    rationale: 'It has no charge class, so it is in no sum and would be signed unseen.',
  }),
  notInContract: defineFinding({
    code: 'item-not-in-contract',
    severity: 'warning',
    title: 'A consumable was used that the contract does not name.',
    rationale: 'Nothing is paid for it on either bill, so a name written otherwise hides what is owed.',
  }),
  standbyNotAuthorised: defineFinding({
    code: 'standby-not-authorised',
    severity: 'warning',
    title: 'Standby was recorded without the person who authorised it.',
    rationale: 'Standby without a name is the first line that a bill is argued about.',
  }),
  drilledOnStandby: defineFinding({
    code: 'drilled-on-standby',
    severity: 'warning',
    title: 'Rods were drilled while the record says that the rig stood.',
    rationale:
      'A change of activity that was not entered makes the record itself wrong, and the plod look so.',
  }),
  drilledOnAnother: defineFinding({
    code: 'drilled-on-another-hole',
    severity: 'warning',
    title: 'Rods of a hole were drilled while the record has the rig on another.',
    rationale:
      'Metres go to the hole of the rods and hours to the hole of the activity: where the two differ one hole is billed for the other.',
  }),
} as const;

/** What `check` asks of the shift record itself. */
export const SHIFT_CHECKS = {
  endPresumed: defineFinding({
    code: 'shift-end-presumed',
    severity: 'warning',
    title: 'A shift was left open; its end is presumed.',
    rationale: 'Hours up to an end that was not recorded are no answer to a plod that claims more.',
  }),
  untold: defineFinding({
    code: 'shift-time-not-recorded',
    severity: 'warning',
    title: 'No activity is recorded for part of a shift.',
    rationale: 'What the rig did in that time rests on the plod alone.',
  }),
  outside: defineFinding({
    code: 'drilled-outside-shifts',
    severity: 'warning',
    title: 'Rods or shots were stamped in no shift of the rig.',
    rationale: 'They are in no sum, so a plod that claims them looks wrong.',
  }),
} as const;

/** What a command on a shift can refuse, declared once; the message of each names the place and the way out. */
export const SHIFT_REFUSALS = {
  ended: defineFinding({
    code: 'shift-ended',
    severity: 'fault',
    title: 'The shift has ended: no activity is added to it.',
    rationale: 'Time added to a shift that was handed over would be counted in two shifts.',
  }),
  activityUnknown: defineFinding({
    code: 'activity-unknown',
    severity: 'fault',
    title: 'An activity is not in the list of project.json.',
    rationale: 'Without its charge class the time would be in no total.',
  }),
  lineUnread: defineFinding({
    code: 'shift-line-unread',
    severity: 'fault',
    title: 'A line of the shift record or of a plod can’t be read.',
    rationale: 'Time that was guessed from a line half understood would be paid for.',
  }),
  timeWrong: defineFinding({
    code: 'shift-time-wrong',
    severity: 'fault',
    title: 'A time can not be in this shift as given.',
    rationale: 'Each minute belongs to one activity of one shift; one counted twice is paid twice.',
  }),
  sheetTwice: defineFinding({
    code: 'plod-sheet-twice',
    severity: 'fault',
    title: 'A plod with that sheet number is here already.',
    rationale: 'A sheet recorded twice would be paid twice.',
  }),
  lineUnsound: defineFinding({
    code: 'plod-line-unsound',
    severity: 'fault',
    title: 'A line of a plod can’t be right as written.',
    rationale: 'Metres without a hole, or a bottom above its top, can’t be compared with the record.',
  }),
  plodAnother: defineFinding({
    code: 'plod-another',
    severity: 'fault',
    title: 'The shift has a plod already.',
    rationale: 'Two sheets for one shift are most often one sheet recorded twice.',
  }),
  plodSigned: defineFinding({
    code: 'plod-signed',
    severity: 'fault',
    title: 'A plod that is signed would be withdrawn, or signed again as it is.',
    rationale: 'A signature is for the sheet as it was; what is agreed later is a new sheet.',
  }),
  notThere: defineFinding({
    code: 'shift-thing-not-there',
    severity: 'fault',
    title: 'What is to be changed or signed is not there.',
    rationale: 'A change that lands on nothing would look done and be lost.',
  }),
} as const;

/** Raised when the shift part of project.json is turned into rules. */
export const settingsUnsound = defineFinding({
  code: 'shift-settings-unsound',
  severity: 'fault',
  title: 'The shift part of project.json does not hold together.',
  rationale:
    'A rate without its band, a shift that overlaps another or two activities on one key give a bill that no one can check.',
});
