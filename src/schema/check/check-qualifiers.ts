import type { Finding } from '../../finding/finding.ts';
import { listMissing, qualifierList, qualifierOfUnknown } from '../findings.ts';
import { type Field, type LoggingSchema, type Qualifier, qualifiersOf } from '../logging-schema.ts';
import type { Raise } from '../read/whereabouts.ts';

/** What is wrong with the lists that say more of a field's codes. */
export function checkQualifiers(schema: LoggingSchema, raise: Raise): readonly Finding[] {
  return schema.fields.flatMap((field) =>
    qualifiersOf(field).flatMap((qualifier) => checkQualifier(schema, field, qualifier, raise)),
  );
}

/** The lists that are written, by name. */
export function writtenLists({ lists }: LoggingSchema): string {
  const names = Object.values(lists).flatMap(({ name, notThere }) => (notThere === true ? [] : [name]));
  return names.join(', ') || 'none is there yet';
}

function checkQualifier(
  schema: LoggingSchema,
  field: Field,
  { list, of }: Qualifier,
  raise: Raise,
): readonly Finding[] {
  const part = { field: field.name, member: 'qualifiers' };
  if (schema.lists[list] === undefined || schema.lists[list].notThere === true)
    return [
      raise(listMissing, part, {
        problem: `it is qualified by the list ${list}, which is not there`,
        remedy: `Write it, or name one of: ${writtenLists(schema)}.`,
      }),
    ];
  const own = 'list' in field ? (schema.lists[field.list]?.codes ?? []) : [];
  const unknown =
    own.length === 0 ? [] : (of ?? []).filter((code) => !own.some((each) => each.code === code));
  const clash = twoMeanings(schema, field, list);
  return [
    ...unknown.map((code) =>
      raise(qualifierOfUnknown, part, {
        problem: `${list} is said of ${code}, and ${field.label} has no code ${code}`,
        remedy: 'Check the spelling, capitals too, against the list; or add the code to it.',
      }),
    ),
    ...(clash === undefined ? [] : [raise(qualifierList, part, clash)]),
  ];
}

/** In what other way the pairs of a qualifier's list are typed; undefined where there is none. */
function twoMeanings(
  schema: LoggingSchema,
  field: Field,
  list: string,
): { readonly problem: string; readonly remedy: string } | undefined {
  const remedy = 'Make a list of its own for it, with pairs of its own.';
  const owner = schema.fields.find((each) => 'list' in each && each.list === list);
  const isSecondHue = owner === field && field.kind === 'code' && !field.second;
  if (owner !== undefined && !isSecondHue)
    return {
      problem: `it is qualified by ${list}, whose codes are logged in ${owner.label} by themselves`,
      remedy,
    };
  const named = schema.fields.find(({ name }) => name === list.toLowerCase());
  if (named !== undefined)
    return {
      problem: `it is qualified by ${list}, and a field is called ${named.name}: ${named.name}' would name both`,
      remedy: 'Give the list or the field another name.',
    };
  const other = schema.fields.find(
    (each) => each !== field && qualifiersOf(each).some((qualifier) => qualifier.list === list),
  );
  // A qualifier of a rock or a colour is said anywhere in the line, so it can be of one field only.
  return other !== undefined && (field.kind === 'code' || other.kind === 'code')
    ? { problem: `it is qualified by ${list}, and so is ${other.label}`, remedy }
    : undefined;
}
