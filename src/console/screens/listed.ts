import type { Line } from '../widgets/line.ts';

/** The title and the lines of a list screen. */
export interface Listed {
  readonly title: string;
  readonly lines: readonly Line[];
}
