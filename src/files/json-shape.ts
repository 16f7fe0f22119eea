import type { z } from 'zod';
import { type Finding, ok, type Result } from '../finding/finding.ts';
import { lineAndColumn, lineExcerpt } from '../finding/place.ts';
import { issueInWords, knownParts, pathOf } from '../schema/read/issue-words.ts';
import { accepts } from './accepts.ts';
import { boundedShape } from './bounded-shape.ts';
import { wrongShape } from './findings.ts';
import { offsetOf } from './json-offset.ts';
import type { JsonText } from './read-json.ts';

const MOST_FINDINGS = 20;

/**
 * Compares a JSON text with a shape. Every misfit becomes a finding at the line and column of the value (or of the
 * nearest thing around it that is there), in plain words; at most twenty are told.
 */
export function holdToShape<T>(json: JsonText, shape: z.ZodType<T>): Result<T> {
  boundedShape(shape);
  if (accepts(shape)(json.value)) return ok(json.value as T);
  const parsed = shape.safeParse(json.value, { reportInput: true });
  if (parsed.success) return ok(json.value as T);
  const issues = parsed.error.issues.flatMap(knownParts).slice(0, MOST_FINDINGS);
  return { ok: false, findings: issues.map((issue) => misfit(json, issue)) };
}

function misfit(json: JsonText, issue: z.core.$ZodIssue): Finding {
  const path = pathOf(issue);
  const { problem, remedy } = issueInWords(issue);
  const offset = offsetOf(json.text, path);
  return wrongShape.at(
    { file: json.file, ...lineAndColumn(json.text, offset), field: path.join('.') || 'the whole file' },
    {
      excerpt: lineExcerpt(json.text, offset),
      problem,
      remedy: `${remedy} Or restore a good copy. Nothing was changed.`,
    },
  );
}
