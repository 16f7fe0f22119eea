import {
  type Condition,
  comparisonOf,
  type FieldCondition,
  fieldConditions,
} from '../../condition/condition.ts';
import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import {
  codeOf,
  type Field,
  fieldNamed,
  type LoggingSchema,
  listOf,
  qualifiersOf,
  qualitiesOf,
  scaleOf,
} from '../../schema/logging-schema.ts';
import { ruleCodeRetired, ruleCodeUnknown, ruleFieldUnknown, ruleSenseless } from '../findings.ts';

/** What is wrong with the fields and codes that a condition over rows names. */
export function checkFields(condition: Condition, schema: LoggingSchema, place: Place): readonly Finding[] {
  return fieldConditions(condition).flatMap((each) => checkComparison(each, schema, place));
}

function checkComparison(
  comparison: FieldCondition,
  schema: LoggingSchema,
  place: Place,
): readonly Finding[] {
  const field = fieldNamed(schema, comparison.field);
  const at = { ...place, field: comparison.field };
  if (field === undefined) {
    return [
      ruleFieldUnknown.at(at, {
        problem: `there is no field ${comparison.field} in the logging schema`,
        remedy: `Name one of: ${schema.fields.map((each) => each.name).join(', ')}.`,
      }),
    ];
  }
  const known = knownOf(schema, field);
  const { of } = comparison;
  const codes = [
    ...(of === undefined ? [] : checkCode(of, field, known, schema, at)),
    ...codesAsked(comparison).flatMap((code) =>
      checkCode(code, field, of === undefined ? known : qualitiesOf(schema, field, of), schema, at),
    ),
  ];
  return [...codes, ...(hasAnswer(comparison, field) ? [] : [senseless(comparison, field, at)])];
}

/** The codes that a comparison asks for, in `is` and `isOneOf`. */
function codesAsked(comparison: FieldCondition): readonly string[] {
  return 'is' in comparison ? [comparison.is] : 'isOneOf' in comparison ? comparison.isOneOf : [];
}

/** The codes that a field can hold, of its list or its scale; undefined where it has neither. */
function knownOf(schema: LoggingSchema, field: Field): readonly string[] | undefined {
  const levels = scaleOf(schema, field)?.levels.flatMap((level) => level.code ?? []);
  return listOf(schema, field)?.codes.map((each) => each.code) ?? levels;
}

function checkCode(
  code: string,
  field: Field,
  known: readonly string[] | undefined,
  schema: LoggingSchema,
  place: Place,
): readonly Finding[] {
  if (known === undefined) return [];
  if (!known.includes(code)) {
    return [
      ruleCodeUnknown.at(place, {
        problem: `${field.label} has no code ${code}`,
        remedy: known.length === 0 ? 'Compare with a number.' : `Name one of: ${known.join(', ')}.`,
      }),
    ];
  }
  const retired = codeOf(schema, field, code)?.retiredSince;
  if (retired === undefined) return [];
  return [
    ruleCodeRetired.at(place, {
      problem: `${code} is retired since ${retired}`,
      remedy: 'Name the code used for it now, and keep the old one where old rows still have it.',
    }),
  ];
}

/** Whether a field of its kind can ever answer the comparison. */
function hasAnswer(comparison: FieldCondition, field: Field): boolean {
  const asks = comparisonOf(comparison);
  const several = 'list' in field;
  if (comparison.of !== undefined && !several) return false;
  if (asks === 'seen') return true;
  const byCode = asks === 'is' || asks === 'isOneOf';
  if (comparison.of !== undefined) return byCode ? qualifiersOf(field).length > 0 : field.kind !== 'codes';
  if (byCode) return several || field.kind === 'level' || field.kind === 'text';
  return !['code', 'codes', 'events', 'text', 'flag'].includes(field.kind);
}

function senseless(comparison: FieldCondition, field: Field, place: Place): Finding {
  const asks = comparisonOf(comparison);
  const what = comparison.of === undefined ? field.label : `${comparison.of} of ${field.label}`;
  return ruleSenseless.at(place, {
    problem: `"${asks}" has no answer for ${what} (${field.kind})`,
    remedy:
      field.kind === 'code'
        ? 'Ask what it is, or how much of one code there is (`of`).'
        : 'Ask a number of a number, a code of a list, or whether it was seen.',
  });
}
