import type { Desk } from '../desk/desk.ts';
import type { LoadedProject } from '../desk/load-project.ts';
import type { Finding } from '../finding/finding.ts';
import { isOver } from '../hole/header.ts';
import { headerOf } from '../hole/hole.ts';
import { parentChanged } from '../schema/findings.ts';
import { schemaChangesOf } from '../standing/hole-schema.ts';

/**
 * What the console shows of what was found: of the files (now, as the desk says), and as the project was opened: a style that
 * changed underneath, and what the schema changes for the rows of holes that may still be logged. The same list until the
 * desk has another.
 */
export function foundOn(desk: Desk, loaded: LoadedProject): () => readonly Finding[] {
  const ofSchema = [
    ...loaded.warnings.filter(({ code }) => code === parentChanged.code),
    ...[...desk.documents().values()]
      .filter((document) => document.kind === 'hole' && !isOver(headerOf(document).state))
      .flatMap((hole) => schemaChangesOf(loaded.project.schema, hole)),
  ];
  let ofFiles: readonly Finding[] = [];
  let all: readonly Finding[] = ofSchema;
  return () => {
    const now = desk.findings();
    if (now !== ofFiles) {
      ofFiles = now;
      all = [...now, ...ofSchema];
    }
    return all;
  };
}
