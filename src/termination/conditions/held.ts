import { formatDepth } from '../../quantity/depth.ts';
import { always, historyFrom } from '../evaluate/history.ts';
import { outcomeOf } from '../evaluate/outcome.ts';
import { deepestMm } from '../evaluate/situation.ts';
import { aheadOf, from } from '../evaluate/span.ts';
import { defineCondition } from '../rules/condition-kind.ts';

export const held = defineCondition({
  key: 'held',
  about: 'people',
  title: 'The geologist has put the hole on hold.',
  rationale:
    'Someone wants to be called before the hole is ended or goes on. Its rule goes before all others.',
  example: {},
  shape: {},
  goesFirst: true,
  assess: (_said, situation) => {
    const { hold } = situation;
    const text =
      hold === undefined
        ? 'no hold'
        : `held by ${hold.by} since ${formatDepth(hold.sinceMm)} m${hold.called === undefined ? '' : `, ${hold.called} called`}: ${hold.because}`;
    const history =
      hold === undefined
        ? always('no')
        : historyFrom([
            { atMm: 0, state: 'no' },
            { atMm: hold.sinceMm, state: 'yes' },
          ]);
    const here = from(deepestMm(situation));
    return outcomeOf(situation, history, {
      progress: text,
      reason: text,
      deciding: [],
      foreseen: false,
      ahead: aheadOf(here, here),
    });
  },
});
