import type { Finding } from '../../finding/finding.ts';
import { checkSchema } from '../check/check-schema.ts';
import type { Code, CodeList, LoggingSchema } from '../logging-schema.ts';

/** What is said of a code, new or changed: a member that is null or undefined is taken away. */
export type CodeSaid = { readonly [member in keyof Code]?: Code[member] | null | undefined } & {
  /** Its place in the list, which changes nothing of the code itself. */
  readonly after?: string | undefined;
  readonly before?: string | undefined;
};

/** The schema with a code of a list changed, or a new one behind the others. The same schema where it has no such list. */
export function withCode(schema: LoggingSchema, list: string, code: string, said: CodeSaid): LoggingSchema {
  const there = schema.lists[list];
  if (there === undefined) return schema;
  const old = there.codes.find((each) => each.code === code);
  const { after: _, before: __, ...own } = said;
  const members = { ...(old ?? { code, label: code, look: '' }), ...own };
  const whole = Object.fromEntries(
    Object.entries(members).filter(([, value]) => value !== null && value !== undefined),
  ) as Code;
  const codes =
    old === undefined
      ? [...there.codes, whole]
      : there.codes.map((each) => (each.code === code ? whole : each));
  const changed: CodeList = { ...there, codes };
  return { ...schema, lists: { ...schema.lists, [list]: changed } };
}

/** Findings of schemas checked before: a schema is never changed in place. */
const checked = new WeakMap<LoggingSchema, readonly Finding[]>();

/** What the check finds in a schema, looked for once however often a screen asks. */
export function findingsOf(schema: LoggingSchema): readonly Finding[] {
  const findings = checked.get(schema) ?? checkSchema(schema);
  checked.set(schema, findings);
  return findings;
}

/** What the check finds in a schema that it did not find in the one before it, worst first. */
export function newlyFound(before: LoggingSchema, after: LoggingSchema): readonly Finding[] {
  const known = new Set(findingsOf(before).map((finding) => JSON.stringify(finding)));
  const fresh = checkSchema(after).filter((finding) => !known.has(JSON.stringify(finding)));
  return (['fault', 'warning', 'note'] as const).flatMap((severity) =>
    fresh.filter((finding) => finding.severity === severity),
  );
}
