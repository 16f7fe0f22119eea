import type { Finding } from '../../finding/finding.ts';
import type { Bag } from '../../hole/bags.ts';
import { controlStock } from '../findings.ts';
import type { Sampling } from '../sampling.ts';

/** Sachets or blanks of one material: how many came, how many are in bags, how many are left (negative: more used than came). */
interface Stock {
  readonly kind: 'standard' | 'blank';
  readonly material: string;
  readonly came: number;
  readonly used: number;
  readonly left: number;
}

/** Materials whose last few are named: a day's worth, common practice. */
const FEW = 5;

/** Stock of every control material, from the issued bags of all holes. A spoiled bag with a material used its sachet up. */
export function stockOf(sampling: Sampling, bags: readonly Bag[]): readonly Stock[] {
  const stock = (kind: Stock['kind'], material: string, came: number): Stock => {
    const used = bags.filter(
      (bag) => bag.material === material && (bag.kind === kind || bag.kind === 'spoiled'),
    ).length;
    return { kind, material, came, used, left: came - used };
  };
  return [
    ...sampling.standards.map((each) => stock('standard', each.lot, each.sachets)),
    ...sampling.blanks.map((each) => stock('blank', each.name, each.bags)),
  ];
}

/** Materials still put out that are used up or down to the last few. */
export function checkStock(sampling: Sampling, bags: readonly Bag[]): readonly Finding[] {
  const retired = new Set([
    ...sampling.standards.filter((each) => each.retired).map((each) => each.lot),
    ...sampling.blanks.filter((each) => each.retired).map((each) => each.name),
  ]);
  return stockOf(sampling, bags)
    .filter((each) => !retired.has(each.material) && each.left <= FEW)
    .map((each) =>
      controlStock.at(
        { thing: `${each.kind} ${each.material}` },
        {
          excerpt: `${each.came} came, ${each.used} used`,
          problem: each.left <= 0 ? 'None is left.' : `${each.left} left.`,
          remedy:
            'Send for more, or mark the material retired in project.json so that the others take its turns.',
        },
      ),
    );
}
