import { formatPlace, type Place } from './place.ts';

/** `fault`: data can't be used as it is. `warning`: it can, and probably shouldn't. `note`: worth knowing. */
export type Severity = 'fault' | 'warning' | 'note';

/** A problem found in data: where, what is there, what is wrong, what to do. Plain data, so it prints, counts and compares. */
export interface Finding {
  readonly code: string;
  readonly severity: Severity;
  readonly place: Place;
  /** What is there, as found; undefined where nothing is. */
  readonly excerpt?: string;
  readonly problem: string;
  readonly remedy: string;
}

/** A kind of finding, declared once beside the logic that raises it; check/ collects the kinds and prints their catalogue. */
export interface FindingKind {
  readonly code: string;
  readonly severity: Severity;
  /** One sentence: what it says is wrong. */
  readonly title: string;
  /** Why it matters to the person on the rig. */
  readonly rationale: string;
  readonly at: (
    place: Place,
    said: { readonly problem: string; readonly remedy: string; readonly excerpt?: string },
  ) => Finding;
}

/** Declares a kind of finding. `code` is lower case words joined by hyphens, unique in the program. */
export function defineFinding(kind: Omit<FindingKind, 'at'>): FindingKind {
  return {
    ...kind,
    at: (place, said) => ({
      code: kind.code,
      severity: kind.severity,
      place,
      ...(said.excerpt === undefined ? {} : { excerpt: said.excerpt }),
      problem: said.problem,
      remedy: said.remedy,
    }),
  };
}

/** A finding as text: `place: problem` with the excerpt and the remedy on lines of their own. */
export function formatFinding(finding: Finding): string {
  const lines = [`${formatPlace(finding.place)}: ${finding.problem}`];
  if (finding.excerpt !== undefined) lines.push(`  | ${finding.excerpt}`);
  lines.push(`  ${finding.remedy}`);
  return lines.join('\n');
}

/** Either a value or the findings that are in its way (at least one of them a fault). */
export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** A result that holds. */
export function ok<T>(value: T): Result<T> {
  return { ok: true, value };
}

/** A result that doesn't hold, with its reasons. */
export function refused<T = never>(...findings: readonly Finding[]): Result<T> {
  return { ok: false, findings };
}
