import type { Condition, FieldCondition } from './condition.ts';

/** Names fields and codes in the words a person knows them by. */
export type Names = (field: string, code?: string) => string;

/** A condition in words: `pyrite < 1 and rock is basalt`. Brackets stand wherever leaving them out could mislead. */
export function conditionInWords(condition: Condition, names: Names): string {
  if ('all' in condition) return joined(condition.all, ' and ', names);
  if ('any' in condition) return joined(condition.any, ' or ', names);
  if ('not' in condition) return `not (${conditionInWords(condition.not, names)})`;
  return comparisonInWords(condition, names);
}

function joined(conditions: readonly Condition[], word: string, names: Names): string {
  const texts = conditions.map((each) => {
    const text = conditionInWords(each, names);
    return ('all' in each || 'any' in each) && conditions.length > 1 ? `(${text})` : text;
  });
  return texts.join(word);
}

function comparisonInWords(condition: FieldCondition, names: Names): string {
  const what = condition.of === undefined ? names(condition.field) : names(condition.field, condition.of);
  if ('is' in condition) return `${what} is ${names(condition.field, condition.is)}`;
  if ('isOneOf' in condition) {
    return `${what} is ${condition.isOneOf.map((code) => names(condition.field, code)).join(' or ')}`;
  }
  if ('atLeast' in condition) return `${what} ≥ ${condition.atLeast}`;
  if ('moreThan' in condition) return `${what} > ${condition.moreThan}`;
  if ('atMost' in condition) return `${what} ≤ ${condition.atMost}`;
  if ('lessThan' in condition) return `${what} < ${condition.lessThan}`;
  return condition.seen ? `${what} seen` : `no ${what} seen`;
}
