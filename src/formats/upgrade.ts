import type { JsonObject } from '../record/json.ts';

/** One step from a format to the next, for files of one kind: unknown data in, unknown data out, checked by whoever reads it. */
export interface Migration {
  readonly kind: string;
  /** The format that it reads; it gives `from + 1`. */
  readonly from: number;
  readonly upgrade: (file: JsonObject) => JsonObject;
}

/**
 * The steps there are. Format 1 is the first that was ever released, and format 2 only adds to it: a document of format 1 is read as it
 * stands (see OLDEST_FORMAT), so there are none yet.
 */
export const MIGRATIONS: readonly Migration[] = [];

/** What an upgrade came to. */
export type Upgraded =
  | { readonly ok: true; readonly file: JsonObject; readonly steps: number }
  | { readonly ok: false; readonly problem: string };

/**
 * Brings a file of an older format to format `to`, one step after another. Takes no step for a file of that format.
 * `problem` where a step is missing or fails over what the file holds.
 */
export function upgrade(
  file: JsonObject,
  kind: string,
  to: number,
  migrations: readonly Migration[] = MIGRATIONS,
): Upgraded {
  let current = file;
  for (let steps = 0; ; steps += 1) {
    const format = current.format;
    if (typeof format !== 'number' || !Number.isInteger(format)) {
      return { ok: false, problem: 'it says no format' };
    }
    if (format >= to) return { ok: true, file: current, steps };
    const step = migrations.find((migration) => migration.kind === kind && migration.from === format);
    if (step === undefined) return { ok: false, problem: `nothing reads format ${format} of a ${kind} file` };
    try {
      current = { ...step.upgrade(current), format: format + 1 };
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      return {
        ok: false,
        problem: `it could not be brought from format ${format} to ${format + 1}: ${reason}`,
      };
    }
  }
}
