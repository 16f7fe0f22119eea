import type { Condition, FieldCondition } from './condition.ts';

/** Names fields and codes in the words a person knows them by. */
export type Names = (field: string, code?: string) => string;

/** The unit that stands after a figure compared with a field, a space before it: ` %`. Empty where there is none. */
export type Units = (field: string, of?: string) => string;

const NO_UNITS: Units = () => '';

/** A condition in words: `pyrite < 1 % and rock is basalt`. Brackets stand wherever leaving them out could mislead. */
export function conditionInWords(condition: Condition, names: Names, units: Units = NO_UNITS): string {
  if ('all' in condition) return joined(condition.all, ' and ', names, units);
  if ('any' in condition) return joined(condition.any, ' or ', names, units);
  if ('not' in condition) {
    const { not } = condition;
    if ('is' in not || 'isOneOf' in not) return comparisonInWords(not, names, units, 'is not');
    return `not (${conditionInWords(not, names, units)})`;
  }
  return comparisonInWords(condition, names, units);
}

function joined(conditions: readonly Condition[], word: string, names: Names, units: Units): string {
  const texts = conditions.map((each) => {
    const text = conditionInWords(each, names, units);
    return ('all' in each || 'any' in each) && conditions.length > 1 ? `(${text})` : text;
  });
  return texts.join(word);
}

function comparisonInWords(
  condition: FieldCondition,
  names: Names,
  units: Units,
  is: 'is' | 'is not' = 'is',
): string {
  const unit = units(condition.field, condition.of);
  const what = condition.of === undefined ? names(condition.field) : names(condition.field, condition.of);
  if ('is' in condition) return `${what} ${is} ${names(condition.field, condition.is)}`;
  if ('isOneOf' in condition) {
    return `${what} ${is} ${condition.isOneOf.map((code) => names(condition.field, code)).join(' or ')}`;
  }
  if ('atLeast' in condition) return `${what} ≥ ${condition.atLeast}${unit}`;
  if ('moreThan' in condition) return `${what} > ${condition.moreThan}${unit}`;
  if ('atMost' in condition) return `${what} ≤ ${condition.atMost}${unit}`;
  if ('lessThan' in condition) return `${what} < ${condition.lessThan}${unit}`;
  // A flag may be labelled so itself: "fibre seen".
  const seen = what.endsWith(' seen') ? what : `${what} seen`;
  return condition.seen ? seen : `no ${seen}`;
}
