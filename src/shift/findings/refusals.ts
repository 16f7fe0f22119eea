import { defineFinding } from '../../finding/finding.ts';

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
    rationale: 'Without its charge class the time would be in nobody’s sum.',
  }),
  sheetTwice: defineFinding({
    code: 'plod-sheet-twice',
    severity: 'fault',
    title: 'A plod with that sheet number is here already.',
    rationale: 'A sheet taken down twice would be paid twice.',
  }),
  lineUnsound: defineFinding({
    code: 'plod-line-unsound',
    severity: 'fault',
    title: 'A line of a plod can not be as it is written.',
    rationale: 'Metres without a hole, or a foot above its top, can not be held against the record.',
  }),
  plodSigned: defineFinding({
    code: 'plod-signed',
    severity: 'fault',
    title: 'A plod that is signed would be withdrawn.',
    rationale: 'A signature stands for the sheet as it was; what is agreed later is a sheet of its own.',
  }),
  notThere: defineFinding({
    code: 'shift-thing-not-there',
    severity: 'fault',
    title: 'What is to be changed or signed is not there.',
    rationale: 'A change that lands on nothing would look done and be lost.',
  }),
} as const;
