import type { Outside } from '../desk/outside.ts';
import type { Finding } from '../finding/finding.ts';
import { formatFinding } from '../finding/finding.ts';
import { formatBagNumber } from '../sampling/numbers/bag-number.ts';
import type { Sampling, Slot } from '../sampling/sampling.ts';
import { checkRatesSoFar, PUBLISHED_RATES, rateRows, ratesSoFar } from '../sampling/scheme/rates-so-far.ts';
import { checkScheme } from '../sampling/scheme/scheme-check.ts';
import { checkStock, stockOf } from '../sampling/scheme/stock.ts';
import { bagsOfHoles } from '../standing/dispatches.ts';
import { atProject, type Shared } from './at-project.ts';
import { EXIT, say, sayJson } from './say.ts';
import { tableText } from './table-text.ts';

/** What `offsider controls` is given. */
export interface ControlsAsked extends Shared {
  readonly json: boolean;
}

/** The control scheme: what its slots reserve, the rate of each kind wanted, given and put out, the stock, and what is wrong with it. */
export function controls(outside: Outside, asked: ControlsAsked): Promise<number> {
  return atProject(outside, asked, async ({ desk, project }) => {
    const { sampling } = project;
    const bags = bagsOfHoles(desk.documents().values());
    const rates = ratesSoFar(sampling, bags);
    const stock = stockOf(sampling, bags);
    const findings: readonly Finding[] = [
      ...checkScheme(sampling),
      ...checkRatesSoFar(sampling, bags),
      ...checkStock(sampling, bags),
    ];
    if (asked.json)
      sayJson(outside, { slots: sampling.slots, rates, published: PUBLISHED_RATES, stock, findings });
    else
      say(
        outside,
        [
          'Numbers reserved for controls:',
          ...slotLines(sampling),
          '',
          tableText(rateRows(rates)),
          'Published, for comparison:',
          ...PUBLISHED_RATES.map((each) => `  ${each}`),
          '',
          'In stock:',
          ...stock.map((each) => `  ${each.kind} ${each.material}: ${each.left} of ${each.came} left`),
          '',
          ...(findings.length === 0
            ? ['Nothing is wrong with the scheme.']
            : findings.map((each) => `${each.severity}: ${formatFinding(each)}`)),
        ].join('\n'),
      );
    return findings.some((each) => each.severity !== 'note') ? EXIT.findings : EXIT.fine;
  });
}

function slotLines(sampling: Sampling): readonly string[] {
  const { slots } = sampling;
  if (slots.length === 0) return ['  none'];
  return slots.map((slot) => `  every ${slot.every}: ${firstOf(sampling, slot)} …  ${kindsOf(slot)}`);
}

/** The first two numbers of a slot, from where the first block begins. */
function firstOf({ numbers, blocks }: Sampling, { every, at }: Slot): string {
  const { prefix, serial } = blocks[0]?.first ?? { prefix: numbers.prefixes[0] ?? '', serial: 1 };
  const first = serial + ((((at - serial) % every) + every) % every);
  return [first, first + every].map((each) => formatBagNumber(numbers, { prefix, serial: each })).join(', ');
}

function kindsOf({ kind, oneOf }: Slot): string {
  const others = oneOf.filter((each) => each !== kind);
  return others.length === 0 ? kind : `${kind}, or ${others.join(' or ')} where that is chosen`;
}
