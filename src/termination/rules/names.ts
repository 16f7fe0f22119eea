import type { Condition } from '../../condition/condition.ts';
import { conditionInWords, type Names, type Units } from '../../condition/words.ts';
import {
  codeOf,
  type Field,
  fieldNamed,
  type LoggingSchema,
  qualifiersOf,
  scaleOf,
} from '../../schema/logging-schema.ts';

/** Names fields, codes and level codes by their labels in the schema; one that isn't there keeps its own name. */
export function namesOf(schema: LoggingSchema): Names {
  return (name, code) => {
    const field = fieldNamed(schema, name);
    if (code === undefined) return lower(field?.label ?? name);
    if (field === undefined) return code;
    const label =
      codeOf(schema, field, code)?.label ??
      scaleOf(schema, field)?.levels.find((level) => level.code === code)?.label ??
      qualifiersOf(field)
        .flatMap(({ list }) => schema.lists[list]?.codes ?? [])
        .find((each) => each.code === code)?.label;
    return lower(label ?? code);
  };
}

/** A condition over rows, in the words of the schema: the cut-off of a rule. */
export function cutOff(schema: LoggingSchema, condition: Condition): string {
  const units: Units = (name, of) => {
    const field = fieldNamed(schema, name);
    return field === undefined ? '' : unitOf(field, of);
  };
  return conditionInWords(condition, namesOf(schema), units);
}

/** The unit of a field, or of one code of it, with a space before it; empty where it has none. */
export function unitOf(field: Field, of?: string): string {
  if (field.kind === 'number') return ` ${field.unit}`;
  const percent =
    field.kind === 'percent' || field.kind === 'percents' || (field.kind === 'code' && of !== undefined);
  return percent ? ' %' : '';
}

/** A label in the middle of a sentence. One that starts with two capitals is an abbreviation and stays. */
function lower(label: string): string {
  return /^\p{Lu}\p{Lu}/u.test(label) ? label : label.charAt(0).toLowerCase() + label.slice(1);
}
