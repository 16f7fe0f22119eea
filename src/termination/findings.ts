import { defineFinding } from '../finding/finding.ts';

/** Raised by decision.ts when a hole is checked. */
export const endedAgainstAdvice = defineFinding({
  code: 'termination-ended-against-advice',
  severity: 'note',
  title: 'A hole was ended, or gone on with, against the advice of its rules.',
  rationale:
    'That is allowed, and the reason is recorded; the manager who tunes the rules wants to see where they were not followed.',
});

/** Raised by decision.ts when a hole is checked. */
export const askedAndCalled = defineFinding({
  code: 'termination-asked-and-called',
  severity: 'note',
  title: 'The advice was ask, and someone was called before the hole was ended or gone on with.',
  rationale:
    'That is what the advice wants. It is shown beside the holes that went against it, with who was called, for whoever tunes the rules.',
});

/** Raised by decision.ts, on recording and on checking a hole. */
export const endedWithoutReason = defineFinding({
  code: 'termination-ended-without-reason',
  severity: 'fault',
  title: 'A decision on the hole’s end goes against the advice and gives no reason.',
  rationale:
    'The advice is there to be overruled by a person, but whoever reads the hole later has to see why: a hole that ended early can’t be lengthened from the office.',
});

/** Raised by decision.ts, on recording. */
export const extendedNowhere = defineFinding({
  code: 'termination-extended-nowhere',
  severity: 'fault',
  title: 'A hole is to go on to a depth that is drilled already.',
  rationale:
    'The advice on ending waits until the depth that was settled is drilled. One that lies above the bit is a slip, or the call was made too late.',
});

/** Raised by check-rules.ts. */
export const nothingEnds = defineFinding({
  code: 'termination-nothing-ends',
  severity: 'warning',
  title: 'No rule ever advises ending the hole.',
  rationale: 'The panel will say not yet to the last metre, and it will soon not be read.',
});

/** Raised by check-rules.ts. */
export const overrideWithout = defineFinding({
  code: 'termination-override-without',
  severity: 'warning',
  title: 'A hole does without a rule that the project does not have.',
  rationale: 'The rule that was meant stays in force for the hole.',
});

/** Raised by check-rules.ts. */
export const ruleCallsNoOne = defineFinding({
  code: 'termination-rule-calls-no-one',
  severity: 'warning',
  title: 'A safety rule says to call, and not whom.',
  rationale:
    'At the rig, with a void under the bit, no one should look for a number: the advice shows the name or the channel that stands in the rule.',
});

/** Raised by check-rules.ts. */
export const ruleCodeRetired = defineFinding({
  code: 'termination-rule-code-retired',
  severity: 'warning',
  title: 'A rule asks for a code that is retired.',
  rationale: 'New rows do not use it any more, so the rule takes them for rows without it.',
});

/** Raised by check-rules.ts. */
export const ruleCodeUnknown = defineFinding({
  code: 'termination-rule-code-unknown',
  severity: 'fault',
  title: 'A rule asks for a code that the list of its field does not have.',
  rationale:
    'No one can log it: the rule takes every metre for one without it, and a barren tail is met in rich ground.',
});

/** Raised by check-rules.ts. */
export const ruleFieldUnknown = defineFinding({
  code: 'termination-rule-field-unknown',
  severity: 'fault',
  title: 'A rule asks a field that the logging schema does not have.',
  rationale:
    'It can’t be logged, so the rule can never be decided; a misspelt field looks like a rule that watches the hole and watches nothing.',
});

/** Raised by check-rules.ts. */
export const ruleHeldBack = defineFinding({
  code: 'termination-rule-held-back',
  severity: 'warning',
  title: 'A rule ends the hole at a depth at which another still holds it open.',
  rationale:
    'The hole goes on past the depth that the rule was written for: a maximum above a minimum is mostly a slip of the pen.',
});

/** Raised by check-rules.ts. */
export const ruleNeverMet = defineFinding({
  code: 'termination-rule-never-met',
  severity: 'fault',
  title: 'A rule can never be met.',
  rationale:
    'A rule that no log and no depth can meet looks like a rule that watches the hole, and says nothing at the moment it is there for.',
});

/** Raised by check-rules.ts. */
export const ruleSenseless = defineFinding({
  code: 'termination-rule-senseless',
  severity: 'fault',
  title: 'A rule compares a field in a way that it has no answer for.',
  rationale:
    'A rock has no size and a percent is not a code: the comparison can never be decided, or never holds, whatever is logged.',
});

/** Raised by check-rules.ts. */
export const ruleTwice = defineFinding({
  code: 'termination-rule-twice',
  severity: 'fault',
  title: 'Two rules have the same name.',
  rationale:
    'A decision records each rule by its name, and a hole changes a rule by its name: with two of one name it is unclear which.',
});

/** Raised by check-rules.ts. */
export const ruleSeesNoVoid = defineFinding({
  code: 'termination-rule-sees-no-void',
  severity: 'fault',
  title: 'A rule about voids, and no code that means a void.',
  rationale:
    'A void that is met can’t be logged as one, so the rule takes its metre for rock and says that there is none.',
});

/** Raised by check-rules.ts. */
export const rulesContradict = defineFinding({
  code: 'termination-rules-contradict',
  severity: 'fault',
  title: 'Two rules ask the same and advise differently.',
  rationale:
    'Where they are met one of the two goes unheard, and the reader of the rules does not know which.',
});
