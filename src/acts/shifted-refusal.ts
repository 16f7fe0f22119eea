import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import { shiftedStrokes } from '../schema/change/frozen-strokes.ts';
import type { Refusal } from '../shorthand/said.ts';
import { legendOf } from '../standing/hole-schema.ts';

/**
 * Why a line is refused, where it is refused for a pair or key that typed one thing in the hole's rows and that the schema now
 * gives to another: both are named. Any other refusal as it is. `project` is as it is, not as the hole is logged with it.
 */
export function refusalUnderRows(project: Project, hole: Document, line: string, refusal: Refusal): Refusal {
  const typed = line.slice(refusal.position, refusal.position + refusal.length);
  const shifted = shiftedStrokes(legendOf(hole), project.schema).find(({ now }) =>
    typed.startsWith(now.strokes),
  );
  if (shifted === undefined) return refusal;
  const { strokes, label, code, field } = shifted.now;
  const byField = code === undefined ? `${field.name}'` : `${field.name}'${code.code}`;
  return {
    ...refusal,
    problem: `${strokes} typed ${shifted.label} in this hole, and logging.json now gives it to ${label}`,
    remedy: `Say ${label} by its field: ${byField}. ;found says how to give ${strokes} back.`,
    suggestions: [],
  };
}
