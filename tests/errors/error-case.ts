import type { Finding } from '../../src/finding/finding.ts';

/** An error of the program: the kind it is of, one small input that brings it about, and how to give that input. */
export interface ErrorCase {
  readonly code: string;
  readonly input: string;
  readonly find: () => readonly Finding[] | Promise<readonly Finding[]>;
}

/** A case in one line. */
export function given(code: string, input: string, find: ErrorCase['find']): ErrorCase {
  return { code, input, find };
}

/** The findings of a result; none where it holds. */
export function findingsIn(result: {
  readonly ok: boolean;
  readonly findings?: readonly Finding[];
}): readonly Finding[] {
  return result.findings ?? [];
}
