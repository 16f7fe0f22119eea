import type { Project } from '../../project/project.ts';
import type { Id } from '../../record/document.ts';
import { bagNumberPattern } from '../../sampling/bag-number.ts';
import type { EntryContext } from '../../shorthand/parse.ts';
import { aboveDepth } from '../../standing/above.ts';
import type { Row } from '../../value/row.ts';

/** What an entry line is read against at a depth: the rows above it (from the top down) and what the project says of entry. */
export function lineContext(
  project: Project,
  rows: readonly (readonly [Id, Row])[],
  fromMm: number,
): EntryContext {
  const { above, previous, repeats } = aboveDepth(rows, fromMm);
  return {
    schema: project.schema,
    above,
    previous: previous === above ? undefined : previous,
    repeats,
    gloves: project.settings.log.gloves,
    bagPattern: bagNumberPattern(project.sampling.numbers),
  };
}
