import type { FindingKind } from '../../finding/finding.ts';
import { endedAgainstAdvice } from '../../termination/findings/ended-against-advice.ts';
import { endedWithoutReason } from '../../termination/findings/ended-without-reason.ts';
import { nothingEnds } from '../../termination/findings/nothing-ends.ts';
import { overrideWithout } from '../../termination/findings/override-without.ts';
import { ruleCodeRetired } from '../../termination/findings/rule-code-retired.ts';
import { ruleCodeUnknown } from '../../termination/findings/rule-code-unknown.ts';
import { ruleFieldUnknown } from '../../termination/findings/rule-field-unknown.ts';
import { ruleHeldBack } from '../../termination/findings/rule-held-back.ts';
import { ruleNeverMet } from '../../termination/findings/rule-never-met.ts';
import { ruleSenseless } from '../../termination/findings/rule-senseless.ts';
import { ruleTwice } from '../../termination/findings/rule-twice.ts';
import { rulesContradict } from '../../termination/findings/rules-contradict.ts';

/** Every kind of finding that termination/ raises. */
export const TERMINATION_FINDING_KINDS: readonly FindingKind[] = [
  endedAgainstAdvice,
  endedWithoutReason,
  nothingEnds,
  overrideWithout,
  ruleCodeRetired,
  ruleCodeUnknown,
  ruleFieldUnknown,
  ruleHeldBack,
  ruleNeverMet,
  ruleSenseless,
  ruleTwice,
  rulesContradict,
];
