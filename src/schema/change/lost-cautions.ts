import { type Caution, type Code, type CodeList, type LoggingSchema, listOf } from '../logging-schema.ts';

/** A danger that a code means: the kind of its caution, or that no chips come up where it is logged. */
export type Danger = Caution['kind'] | 'loss of return';

/**
 * What one schema can say of dangers and another can no longer, by field: a kind of danger that none of its codes means any more, with the
 * codes that did, and codes that stay, by their code or their words, and mean it no more. Retired codes can't be logged and don't count.
 */
export function lostCautions(before: LoggingSchema, after: LoggingSchema): readonly string[] {
  return before.fields.flatMap((field) => {
    const was = inUse(listOf(before, field));
    const changed = after.fields.find((each) => each.name === field.name);
    const is = changed === undefined ? [] : inUse(listOf(after, changed));
    if (was.length === 0) return [];
    return [...new Set([...kindsGone(field.name, was, is), ...codesBare(field.name, was, is)])];
  });
}

function kindsGone(field: string, was: readonly Code[], is: readonly Code[]): readonly string[] {
  const kinds = [...new Set(was.flatMap(dangersOf))];
  return kinds
    .filter((kind) => !is.some((code) => dangersOf(code).includes(kind)))
    .map((kind) => {
      const codes = was.filter((code) => dangersOf(code).includes(kind)).map(named);
      return `${field} would have no code for ${kind} (it has ${codes.join(', ')})`;
    });
}

function codesBare(field: string, was: readonly Code[], is: readonly Code[]): readonly string[] {
  return was.flatMap((code) => {
    const same = is.find(
      (each) => each.code === code.code || each.label.toLowerCase() === code.label.toLowerCase(),
    );
    if (same === undefined) return [];
    const lost = dangersOf(code).filter((kind) => !dangersOf(same).includes(kind));
    return lost.map((kind) => `${field}: ${named(same)} would lose its caution (${kind})`);
  });
}

function inUse(list: CodeList | undefined): readonly Code[] {
  return (list?.codes ?? []).filter(({ retiredSince }) => retiredSince === undefined);
}

function dangersOf({ caution, noChips }: Code): readonly Danger[] {
  return [
    ...(caution === undefined ? [] : [caution.kind]),
    ...(noChips === true ? ['loss of return' as const] : []),
  ];
}

function named({ code, label }: Code): string {
  return `${code} ${label}`;
}
