import { archives, drafts, mails } from './arriving.ts';
import { fileTargets } from './files.ts';
import { tableTargets } from './tables.ts';
import type { Target } from './target.ts';
import { keys, lines } from './typed.ts';

/** Everything that takes what may come from anywhere, with how many of 100,000 cases it is worth. */
export const TARGETS: readonly (readonly [target: Target, cases: number])[] = [
  [lines, 30_000],
  [keys, 30_000],
  ...fileTargets.map((target) => [target, 8000] as const),
  ...tableTargets.map((target) => [target, 4000] as const),
  [archives, 8000],
  [mails, 8000],
  [drafts, 4000],
];
