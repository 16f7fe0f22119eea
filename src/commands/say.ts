import type { Outside } from '../desk/outside.ts';
import { type Finding, formatFinding } from '../finding/finding.ts';
import { safeJson, safeLines } from '../finding/safe-text.ts';

/** Exit codes of every command. */
export const EXIT = { fine: 0, findings: 1, wrongUse: 2, bug: 70 } as const;

type Says = Pick<Outside, 'stdout' | 'stderr'>;

/** Prints text on stdout, made safe: nothing that a file holds reaches the terminal as a command. */
export function say(outside: Says, text: string): void {
  outside.stdout.write(`${safeLines(text)}\n`);
}

/** Prints a file's text on stdout (CSV, HTML), its line ends as they are; what a terminal would obey is made visible. */
export function sayFile(outside: Says, text: string): void {
  outside.stdout.write(
    text
      .split('\r\n')
      .map((each) => safeLines(each))
      .join('\r\n'),
  );
}

/** Says something beside the answer, on stderr, made safe. */
export function sayAside(outside: Says, text: string): void {
  outside.stderr.write(`${safeLines(text)}\n`);
}

/** Prints data on stdout as JSON; what a terminal would obey or hide is escaped in it. */
export function sayJson(outside: Says, value: unknown): void {
  outside.stdout.write(`${safeJson(JSON.stringify(value, null, 2))}\n`);
}

/** What is in the way, on stderr: findings that were expected (what, where, what to do), or a fault of ours with its stack. */
export type Trouble = { readonly findings: readonly Finding[] } | { readonly bug: unknown };

/** The one renderer of errors: text for stderr. */
export function troubleText(trouble: Trouble): string {
  if ('findings' in trouble) return trouble.findings.map(formatFinding).join('\n');
  const { bug } = trouble;
  const detail = bug instanceof Error ? (bug.stack ?? bug.message) : String(bug);
  return `offsider stopped on a fault of its own. Rows shown as saved are safe.\n${detail}`;
}

/** Prints trouble on stderr. */
export function sayTrouble(outside: Says, trouble: Trouble): void {
  outside.stderr.write(`${safeLines(troubleText(trouble))}\n`);
}

/** Prints what is in the way and gives the exit code of a wrong use. */
export function refuse(outside: Says, ...findings: readonly Finding[]): number {
  sayTrouble(outside, { findings });
  return EXIT.wrongUse;
}
