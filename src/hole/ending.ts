import * as z from 'zod';
import { depthMm, stamp, words } from './parts.ts';

/** The verdicts of the termination rules: advice on ending the hole. */
export const VERDICTS = ['not yet', 'may end', 'end', 'ask'] as const;

/** A decision on the hole's end: table `decisions`. A person's, with what the advice was then. */
export const decision = z.strictObject({
  kind: z.enum(['ended', 'extended', 'ended early', 'held', 'reopened']),
  depthMm,
  loggedMm: depthMm.describe('Logged depth that the verdict rested on, in whole millimetres'),
  verdict: z.enum(VERDICTS),
  rules: z
    .array(z.strictObject({ rule: words, state: z.enum(['met', 'not met', 'cannot tell']), words }))
    .describe('Each rule as it was'),
  toMm: depthMm
    .optional()
    .describe(
      'For `extended`: no advice on ending is given before the hole is drilled to here, in whole millimetres',
    ),
  reason: words.optional().describe('Why; required where it goes against the verdict'),
  called: words.optional().describe('Who was called'),
  settles: z
    .array(words)
    .optional()
    .describe('For `extended`: the rules that the call was about; where this is left out, all that asked'),
  rulesHash: words.describe('SHA-256 of the rules in force'),
  schemaHash: words.describe('SHA-256 of the logging schema in force'),
  at: stamp,
  by: words,
});
export type Decision = Readonly<z.infer<typeof decision>>;

/** How the collar was left: table `collarStates`. An open collar is a hazard whenever it is unattended. */
export const collarState = z.strictObject({
  state: z.enum(['capped', 'plugged', 'open']),
  at: stamp,
  by: words,
});
export type CollarState = Readonly<z.infer<typeof collarState>>;

/** A stop called by the driller for safety or hole condition: table `stops`. While one is open no advice on ending is shown. */
export const stop = z.strictObject({
  because: words,
  at: stamp,
  by: words,
  endedAt: stamp.optional(),
});
export type Stop = Readonly<z.infer<typeof stop>>;
