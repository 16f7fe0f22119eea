import { findNodeAtLocation, type Node, parseTree } from 'jsonc-parser';
import type { z } from 'zod';
import { type Finding, ok, type Result } from '../finding/finding.ts';
import { wrongShape } from './findings.ts';
import { excerptAt, type JsonText, lineAndColumn } from './read-json.ts';

const MOST_FINDINGS = 20;

/**
 * Holds a JSON text against a shape. Every misfit becomes a finding at the line and column of the value (or of the
 * nearest thing around it that is there); at most twenty are told.
 */
export function holdToShape<T>(json: JsonText, shape: z.ZodType<T>): Result<T> {
  const parsed = shape.safeParse(json.value);
  if (parsed.success) return ok(json.value as T);
  const issues = parsed.error.issues.flatMap((issue) => innermost(issue)).slice(0, MOST_FINDINGS);
  return { ok: false, findings: shapeFindings(json, issues) };
}

/** A misfit: where in the value, and what zod says of it. */
interface Misfit {
  readonly path: readonly PropertyKey[];
  readonly message: string;
}

/** The misfits as findings with line and column. */
function shapeFindings(json: JsonText, misfits: readonly Misfit[]): readonly Finding[] {
  const root = parseTree(json.text);
  return misfits.map((misfit) => {
    const path = misfit.path.map((part) => (typeof part === 'symbol' ? String(part) : part));
    const offset = nodeAround(root, path)?.offset ?? 0;
    return wrongShape.at(
      { file: json.file, ...lineAndColumn(json.text, offset), field: path.join('.') || 'the whole file' },
      {
        excerpt: excerptAt(json.text, offset),
        problem: misfit.message,
        remedy: 'Mend this place in an editor, or put back a copy that is whole. Nothing was changed.',
      },
    );
  });
}

/** Of a union's issue, the branch that came furthest: its complaint is about what was meant. */
function innermost(issue: z.core.$ZodIssue): readonly Misfit[] {
  if (issue.code !== 'invalid_union' || issue.errors.length === 0) return [issue];
  const best = [...issue.errors].sort((a, b) => deepest(b) - deepest(a) || a.length - b.length)[0] ?? [];
  return best.map((inner) => ({ path: [...issue.path, ...inner.path], message: inner.message }));
}

function deepest(issues: readonly z.core.$ZodIssue[]): number {
  return Math.max(0, ...issues.map((issue) => issue.path.length));
}

function nodeAround(root: Node | undefined, path: readonly (string | number)[]): Node | undefined {
  if (root === undefined) return undefined;
  for (let length = path.length; length >= 0; length -= 1) {
    const node = findNodeAtLocation(root, path.slice(0, length));
    if (node !== undefined) return node;
  }
  return root;
}
