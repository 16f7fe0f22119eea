import { defineFinding } from '../finding/finding.ts';

/** What a command on a hole can refuse, declared once; the message of each names the place and the way out. */
export const REFUSALS = {
  closed: defineFinding({
    code: 'hole-closed',
    severity: 'fault',
    title: 'The hole is closed: nothing is added to it until it is reopened.',
    rationale: 'A row that slips into a finished hole changes data that camp may have used already.',
  }),
  overlap: defineFinding({
    code: 'rows-overlap',
    severity: 'fault',
    title: 'A row would cover metres that another row covers.',
    rationale: 'A metre logged twice has two truths; everything counted by length would count it twice.',
  }),
  badInterval: defineFinding({
    code: 'interval-upside-down',
    severity: 'fault',
    title: 'An interval ends at or above its start, or starts above where logging starts.',
    rationale: 'An interval without length holds nothing and breaks every count by length.',
  }),
  notThere: defineFinding({
    code: 'not-there',
    severity: 'fault',
    title: 'What is to be changed is not there.',
    rationale: 'A change that lands on nothing would look done and be lost.',
  }),
  asked: defineFinding({
    code: 'asked-first',
    severity: 'fault',
    title: 'What is to be recorded goes ill with what is known, and is asked first.',
    rationale: 'A slip and a right entry look alike on the line: whoever typed it knows which it is.',
  }),
  rodBackwards: defineFinding({
    code: 'rod-above-drilled',
    severity: 'fault',
    title: 'A rod done is at or above the depth already drilled.',
    rationale:
      'The drilled head only goes down; a depth mark that goes up is a slip of the pen or of the rod count.',
  }),
  stateWrong: defineFinding({
    code: 'state-does-not-allow',
    severity: 'fault',
    title: 'The state of the hole does not allow this.',
    rationale: 'A hole has a history in order: planned, drilling, suspended, abandoned or complete.',
  }),
  planUnread: defineFinding({
    code: 'plan-not-read',
    severity: 'fault',
    title: 'A plan typed for the hole can’t be read.',
    rationale:
      'A direction read wrongly would put every comparison with the plan off, and nothing would look wrong.',
  }),
  shotUnread: defineFinding({
    code: 'shot-not-read',
    severity: 'fault',
    title: 'A survey shot or run typed for the hole can’t be read.',
    rationale:
      'A depth taken for a dip, or a north guessed at, would bend the hole on paper and nothing would look wrong.',
  }),
  bagsAmended: defineFinding({
    code: 'bags-amended-since',
    severity: 'fault',
    title: 'A mismatch can’t be fixed: its bags were amended by hand since.',
    rationale: 'What someone wrote down of a bag that lay before them is not written over by a rule.',
  }),
  bagUsed: defineFinding({
    code: 'bag-used-twice',
    severity: 'fault',
    title: 'A bag number would be used a second time.',
    rationale: 'A number used twice makes two samples one at the laboratory; they can’t be told apart again.',
  }),
} as const;

/** What is in a hole that no entry would make: it came by a merge, by another program or by a wrong clock. */
export const STANDING_FINDINGS = {
  loggedTwice: defineFinding({
    code: 'rows-logged-twice',
    severity: 'fault',
    title: 'Two rows cover the same metres.',
    rationale:
      'Two copies logged the same metre. Everything counted by length counts it twice, and one of the two is wrong.',
  }),
  clockBehind: defineFinding({
    code: 'clock-behind',
    severity: 'warning',
    title: 'The clock of this computer lies more than a day behind what was recorded already.',
    rationale:
      'Rods, shifts and edits are stamped with it: pace, the shift record and the order of two laptops’ work hang on these times.',
  }),
  notLinedUp: defineFinding({
    code: 'line-up-missing',
    severity: 'warning',
    title: 'A hole was begun to a plan, and no line-up is recorded.',
    rationale:
      'The line-up is where cautions are read, permission is asked and the direction is checked. Left out it is soon forgotten, and every metre ' +
      'of the hole hangs on a direction that no one looked at.',
  }),
  gap: defineFinding({
    code: 'metres-not-logged',
    severity: 'warning',
    title: 'Metres above the deepest row are not logged.',
    rationale: 'A gap is easily taken for barren ground by whoever reads the log later, and chips get lost.',
  }),
  rodTwice: defineFinding({
    code: 'rod-recorded-twice',
    severity: 'fault',
    title: 'One rod is recorded twice.',
    rationale: 'Two copies recorded the same rod: its bags may be issued twice and metres counted twice.',
  }),
  rodsOutOfOrder: defineFinding({
    code: 'rods-out-of-order',
    severity: 'warning',
    title: 'A rod was recorded before the rod above it.',
    rationale: 'Pace, plod metres and the shift record are counted from these times.',
  }),
} as const;

/** What is found of a hole that was signed off at camp, and what accepting a finding or signing off can refuse. */
export const ACCEPTANCE_FINDINGS = {
  changedSince: defineFinding({
    code: 'changed-since-signed-off',
    severity: 'warning',
    title: 'A hole was changed after it was signed off at camp.',
    rationale:
      'Whoever relies on the sign-off relies on the hole as it was; a copy from a rig can bring more.',
  }),
  refused: defineFinding({
    code: 'acceptance-refused',
    severity: 'fault',
    title: 'A finding can’t be accepted, or a hole can’t be signed off or opened again, as asked.',
    rationale:
      'A sign-off over what is open, or without a reason, would vouch for what no one has looked at.',
  }),
} as const;

/** What is found of questions that a merge left, in a document of any kind, and what settling one can refuse. */
export const QUESTION_FINDINGS = {
  open: defineFinding({
    code: 'question-open',
    severity: 'warning',
    title: 'Two copies changed the same cell differently, and it is not settled which to keep.',
    rationale:
      'Ours is kept until it is settled. Passed on as it is, one of two observations is dropped and no one chose which.',
  }),
  changed: defineFinding({
    code: 'question-changed-since',
    severity: 'fault',
    title: 'Theirs is to be taken into a cell that was changed since the two copies were merged.',
    rationale: 'What was written there since was never compared with theirs: it would be overwritten unseen.',
  }),
  unfit: defineFinding({
    code: 'question-does-not-fit',
    severity: 'fault',
    title: 'What the other copy says no longer fits what is around it.',
    rationale:
      'A row that its own schema refuses, or that overlaps another, is not made to settle a question.',
  }),
} as const;
