import { applyEdits, modify } from 'jsonc-parser';
import type { Finding } from '../../finding/finding.ts';
import type { Accepted, LoggingSchema } from '../logging-schema.ts';
import type { TextFile } from '../read/places.ts';
import { FORMATTING } from './changed-file.ts';

/** The file with every warning and note of a check accepted: they are not said again until their words change. Faults stay. */
export function withAccepted(
  { text }: TextFile,
  { accepted = [] }: LoggingSchema,
  findings: readonly Finding[],
): { readonly text: string; readonly count: number } {
  const more = findings
    .filter(({ severity }) => severity !== 'fault')
    .map(({ code, problem }): Accepted => ({ finding: code, problem }));
  if (more.length === 0) return { text, count: 0 };
  const all = [...accepted, ...more];
  return { text: applyEdits(text, modify(text, ['accepted'], all, FORMATTING)), count: more.length };
}
