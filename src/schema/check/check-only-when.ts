import { comparisonOf, type FieldCondition, placedComparisons } from '../../condition/condition.ts';
import type { Finding, FindingKind } from '../../finding/finding.ts';
import { onlyWhenLater, onlyWhenSenseless, onlyWhenUnknown, unlikelyUntellable } from '../findings.ts';
import {
  type Field,
  type LoggingSchema,
  listOf,
  qualifiersOf,
  qualitiesOf,
  scaleOf,
} from '../logging-schema.ts';
import type { Raise } from '../read/whereabouts.ts';

/** A problem of one comparison of a condition over logged fields, without its place. */
type ConditionProblem = {
  readonly kind: FindingKind;
  readonly problem: string;
  readonly remedy: string;
};

/** What is wrong with the only-whens of a schema: what they ask is not there, is below, or has no answer. */
export function checkOnlyWhen(schema: LoggingSchema, raise: Raise): readonly Finding[] {
  return schema.fields.flatMap((field, index) => {
    if (field.onlyWhen === undefined) return [];
    return placedComparisons(field.onlyWhen).flatMap(({ comparison: condition, path }) => {
      const part = { field: field.name, member: 'onlyWhen', within: path };
      const at = schema.fields.findIndex((each) => each.name === condition.field);
      if (at >= index)
        return [
          raise(onlyWhenLater, part, {
            problem: `it asks ${condition.field}, which ${at === index ? 'is itself' : 'is below it'}`,
            remedy: `Move ${field.name} below ${condition.field}, or ask a field above.`,
          }),
        ];
      return problemsOfCondition(schema, condition).map(({ kind, ...said }) => raise(kind, part, said));
    });
  });
}

/** Unlikely pairs that ask what is not there or has no answer. */
export function checkUnlikely(schema: LoggingSchema, raise: Raise): readonly Finding[] {
  return (schema.unlikely ?? []).flatMap(({ name, when }) =>
    placedComparisons(when).flatMap(({ comparison, path }) =>
      problemsOfCondition(schema, comparison).map(({ problem, remedy }) =>
        raise(unlikelyUntellable, { unlikely: name, member: 'when', within: path }, { problem, remedy }),
      ),
    ),
  );
}

/** What is wrong with one comparison over the fields of a schema. */
function problemsOfCondition(schema: LoggingSchema, condition: FieldCondition): readonly ConditionProblem[] {
  const field = schema.fields.find((each) => each.name === condition.field);
  if (field === undefined)
    return [
      {
        kind: onlyWhenUnknown,
        problem: `no field is called ${condition.field}`,
        remedy: `Fields are: ${schema.fields.map((each) => each.name).join(', ')}.`,
      },
    ];
  const missing = cannotLookUp(schema, field) ? [] : unknownCodes(schema, field, condition);
  return [...missing, ...senseless(field, condition)];
}

/** A field whose list or scale is not there has its own finding; its codes can't be looked up. */
function cannotLookUp(schema: LoggingSchema, field: Field): boolean {
  const listGone = 'list' in field && schema.lists[field.list] === undefined;
  return listGone || ('scale' in field && schema.scales[field.scale] === undefined);
}

function unknownCodes(
  schema: LoggingSchema,
  field: Field,
  condition: FieldCondition,
): readonly ConditionProblem[] {
  const list = listOf(schema, field)?.codes.map((code) => code.code);
  const levels = scaleOf(schema, field)?.levels.flatMap((level) => level.code ?? []);
  const known = list ?? levels;
  if (known === undefined) return [];
  const asked = [
    ...('is' in condition ? [condition.is] : []),
    ...('isOneOf' in condition ? condition.isOneOf : []),
  ];
  const of = condition.of === undefined || list === undefined ? [] : [condition.of];
  // Behind "of" a code is asked that says more of it, from a list of its qualifiers.
  const qualities = of.length === 0 ? known : qualitiesOf(schema, field, condition.of);
  return [
    ...asked.filter((code) => !qualities.includes(code)),
    ...of.filter((code) => !known.includes(code)),
  ].map((code) => ({
    kind: onlyWhenUnknown,
    problem: `${field.name} has no code ${code}`,
    remedy: 'Check the spelling, capitals too, against the list.',
  }));
}

function senseless(field: Field, condition: FieldCondition): readonly ConditionProblem[] {
  const comparison = comparisonOf(condition);
  const problem = (said: string): readonly ConditionProblem[] => [
    {
      kind: onlyWhenSenseless,
      problem: said,
      remedy: 'Ask it another way; "seen" can be asked of every field.',
    },
  ];
  if (condition.of !== undefined && !('list' in field))
    return problem(`"of" asks for one code of ${field.name}, which has no codes`);
  if (comparison === 'seen') return [];
  if (comparison === 'is' || comparison === 'isOneOf') {
    const hasTexts = ['code', 'codes', 'events', 'level', 'levels', 'percents', 'text'].includes(field.kind);
    return hasTexts && (condition.of === undefined || qualifiersOf(field).length > 0)
      ? []
      : problem(`"${comparison}" asks for a code, and ${field.name} has a number there`);
  }
  const hasNumber =
    ['level', 'levels', 'percents', 'percent', 'number'].includes(field.kind) ||
    ((field.kind === 'code' || field.kind === 'events') && condition.of !== undefined);
  return hasNumber ? [] : problem(`"${comparison}" asks for a number, and ${field.name} has none`);
}
