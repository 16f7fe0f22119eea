import { endedElsewhere } from '../../acts/elsewhere.ts';
import type { Desk, Submitted } from '../../desk/desk.ts';
import { remedyUnsaved, untilSaved } from '../../desk/until-saved.ts';
import type { Result } from '../../finding/finding.ts';
import type { Made, Maker } from '../../hole/commands/made.ts';
import type { Project } from '../../project/project.ts';
import type { Document, DocumentName } from '../../record/document.ts';

/** Where lines go: a hole of a project at the desk. */
export interface LinesAt {
  readonly desk: Desk;
  readonly project: Project;
  readonly hole: DocumentName;
  /** Record a rod whose bags do not agree as the count expects it, with the mismatch noted, instead of refusing it. */
  readonly noteMismatches: boolean;
}

/** What came of one line. `asked` is saved, marked, and wants a look; `refused` left everything as it was. */
export type Taken =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'leave' }
  | { readonly kind: 'done'; readonly said: string }
  | {
      readonly kind: 'asked';
      readonly said: string;
      readonly reasons: readonly string[];
      /** False where the reasons are about what was recorded before, and the line itself is right. */
      readonly marked?: boolean;
      /** How to settle it, where that is not as for a row. */
      readonly remedy?: string;
    }
  | {
      readonly kind: 'refused';
      readonly problem: string;
      readonly remedy: string;
      readonly position?: number;
    }
  /** Made in memory, and the disk does not take it: what came of it is known when the project is closed. */
  | { readonly kind: 'unsaved'; readonly problem: string; readonly remedy: string; readonly said: string };

/** The hole as it is. Throws where it is not there: the caller has looked. */
export function holeOf(at: LinesAt): Document {
  const hole = at.desk.get(at.hole);
  if (hole === undefined) throw new Error(`no hole ${at.hole.id} at the desk`);
  return hole;
}

/** Ids, the time and the person of the desk. */
export function makerOf(desk: Desk): Maker {
  return { newId: desk.newId, at: desk.now(), by: desk.person };
}

/** Saves an edit of the hole; `said` stands for its own words. Returns when it is durable. */
export async function submitMade(at: LinesAt, made: Result<Made>, said?: string): Promise<Taken> {
  if (!made.ok) {
    const [first] = made.findings;
    return { kind: 'refused', problem: first?.problem ?? 'refused', remedy: first?.remedy ?? '' };
  }
  const { what, changes } = made.value;
  if (changes.length === 0) return { kind: 'done', said: 'nothing changed' };
  const part = { document: at.hole, changes };
  const beside = endedElsewhere(at.project, at.desk.documents().values(), at.hole, changes);
  if (beside === undefined) return settled(at, at.desk.submit({ what, parts: [part] }), said ?? what);
  const { what: words, ...more } = beside;
  const submitted = at.desk.submit({
    what: `${what}; ${words}`,
    parts: [part, more],
  });
  return settled(at, submitted, `${said ?? what}; ${words}`);
}

/** What came of an edit sent to the desk, once it is durable. */
export async function settled(at: LinesAt, submitted: Submitted, said: string): Promise<Taken> {
  const saved = await untilSaved(at.desk, submitted);
  if (saved.ok) return { kind: 'done', said };
  const kind = 'waiting' in saved ? 'unsaved' : 'refused';
  return { kind, problem: saved.problem, remedy: remedyUnsaved(saved, 'the line'), said };
}
