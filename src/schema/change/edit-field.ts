import { applyEdits, findNodeAtLocation, modify } from 'jsonc-parser';
import type { Result } from '../../finding/finding.ts';
import type { LoggingSchema } from '../logging-schema.ts';
import type { LoadParent } from '../read/chain.ts';
import type { FieldEntry } from '../read/file-entries.ts';
import { parseJsonFile } from '../read/json-source.ts';
import type { TextFile } from '../read/places.ts';
import { type ChangedSchema, FORMATTING, heldToCheck } from './changed-file.ts';
import { withMember } from './edit-code.ts';

/** What of a field can be changed where the log sheet is read: its words, its place, whether it is required, the day that it is retired. */
export type FieldChange = {
  readonly label?: string;
  /** The field that it comes right after; '' puts it first. */
  readonly after?: string;
  readonly required?: boolean;
  readonly retiredSince?: string;
};

/**
 * Changes a field in a project's logging.json, wherever it was written first: in the file's own entry where it has one, else in a new one
 * that says only what changes. Refused, with nothing changed, where the check finds a new fault.
 */
export function changeField(
  file: TextFile,
  schema: LoggingSchema,
  name: string,
  change: FieldChange,
  loadParent?: LoadParent,
): Result<ChangedSchema> {
  const parsed = parseJsonFile(file);
  if (!parsed.ok) return parsed;
  const members = membersOf(schema, name, change);
  const there = findNodeAtLocation(parsed.value.root, ['fields'])?.children;
  const at = (there ?? []).findIndex((node) => findNodeAtLocation(node, ['name'])?.value === name);
  if (at !== -1) {
    const text = Object.entries(members).reduce(
      (changed, [member, value]) => withMember(changed, ['fields', at, member], value),
      file.text,
    );
    return heldToCheck(file, text, loadParent);
  }
  const own = Object.fromEntries(Object.entries(members).filter(([, value]) => value !== undefined));
  const entry = { name, ...own };
  const isThere = there !== undefined;
  const edits = modify(
    file.text,
    isThere ? ['fields', there.length] : ['fields'],
    isThere ? entry : [entry],
    {
      ...FORMATTING,
      ...(isThere ? { isArrayInsertion: true } : {}),
    },
  );
  return heldToCheck(file, applyEdits(file.text, edits), loadParent);
}

/** A change as a file writes it: first is before what is first now. */
function membersOf(
  { fields }: LoggingSchema,
  name: string,
  { after, ...rest }: FieldChange,
): Partial<FieldEntry> & { readonly after?: string | undefined; readonly before?: string | undefined } {
  if (after === undefined) return rest;
  if (after !== '') return { ...rest, after, before: undefined };
  const first = fields.find((field) => field.name !== name)?.name;
  return { ...rest, after: undefined, ...(first === undefined ? {} : { before: first }) };
}

/** The schema with a field changed, for a preview. The same schema where it has no such field, or none to come after. */
export function withField(schema: LoggingSchema, name: string, change: FieldChange): LoggingSchema {
  const field = schema.fields.find((each) => each.name === name);
  if (field === undefined) return schema;
  const others = schema.fields.filter((each) => each !== field);
  if (change.retiredSince !== undefined) return { ...schema, fields: others };
  const { label = field.label, required = field.required, after } = change;
  const changed = { ...field, label, required };
  const at =
    after === undefined
      ? schema.fields.indexOf(field)
      : after === ''
        ? 0
        : others.findIndex((each) => each.name === after) + 1;
  if (after !== undefined && after !== '' && at === 0) return schema;
  return { ...schema, fields: [...others.slice(0, at), changed, ...others.slice(at)] };
}

/** Why a change can't be meant, before the check looks at what comes of it. */
export function fieldProblem(schema: LoggingSchema, name: string, change: FieldChange): string | undefined {
  const names = schema.fields.map((field) => field.name);
  const listed = names.filter((each) => each !== name).join(', ');
  if (!names.includes(name)) return `no field is called ${name}; there are ${names.join(', ')}`;
  if (change.label === '') return 'type what it is called';
  if ((change.label?.length ?? 0) > 60) return 'its label has more than 60 characters';
  if (change.after !== undefined && change.after !== '' && !names.includes(change.after))
    return `no field is called ${change.after}; it can come after ${listed}`;
  if (change.after === name) return 'it can’t come after itself';
  if (
    change.retiredSince !== undefined &&
    !/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/.test(change.retiredSince)
  )
    return 'a date is like 2026-03-14';
  return undefined;
}

/** The fields of the log sheet in their order, for a preview. */
export function sheetOrder({ fields }: LoggingSchema): string {
  return fields.map(({ label, required }) => (required ? `${label}*` : label)).join(' · ');
}
