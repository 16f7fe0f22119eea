import type { Rule } from '../rule.ts';

/** What every style starts with: who has to be called, and why the rod in the hole is finished. */
export const USUAL_RULES: readonly Rule[] = [
  {
    name: 'hold',
    words: 'Someone wants to be called before this hole is ended.',
    verdict: 'ask',
    when: { held: {} },
  },
  {
    name: 'void',
    words:
      'A void or old workings: call, and go by the site procedure. Only the log clears metres here, not the driller’s word.',
    verdict: 'ask',
    when: { voidNear: { inLastM: 6, aheadM: 12 } },
    safety: true,
  },
  {
    name: 'past the limit',
    words: 'Going more than 12 m past the plan needs a call.',
    verdict: 'ask',
    when: { delegatedLimit: { overM: 12 } },
  },
  {
    name: 'stopping short',
    words: 'Stopping more than 30 m short of the plan needs a call.',
    verdict: 'ask',
    when: { shortOfPlan: { byMoreThanM: 30 } },
    whenEnding: true,
  },
  {
    name: 'wet',
    words: 'Wet samples smear: is the rest of the hole worth drilling this way?',
    verdict: 'ask',
    when: { wetInARow: { forM: 6 } },
  },
  {
    name: 'finish the rod',
    words: 'The rest of the rod costs little, and the depth is easy to count.',
    verdict: 'not yet',
    when: { rodFinished: {} },
  },
];
