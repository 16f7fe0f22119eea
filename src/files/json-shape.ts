import { findNodeAtLocation, type Node, parseTree } from 'jsonc-parser';
import type { z } from 'zod';
import { type Finding, ok, type Result } from '../finding/finding.ts';
import { issueInWords, knownParts, pathOf } from '../schema/read/issue-words.ts';
import type { JsonPath } from '../schema/read/places.ts';
import { accepts } from './accepts.ts';
import { wrongShape } from './findings.ts';
import { excerptAt, type JsonText, lineAndColumn } from './read-json.ts';

const MOST_FINDINGS = 20;

/**
 * Holds a JSON text against a shape. Every misfit becomes a finding at the line and column of the value (or of the
 * nearest thing around it that is there), in plain words; at most twenty are told.
 */
export function holdToShape<T>(json: JsonText, shape: z.ZodType<T>): Result<T> {
  if (accepts(shape)(json.value)) return ok(json.value as T);
  const parsed = shape.safeParse(json.value, { reportInput: true });
  if (parsed.success) return ok(json.value as T);
  const root = parseTree(json.text);
  const issues = parsed.error.issues.flatMap(knownParts).slice(0, MOST_FINDINGS);
  return { ok: false, findings: issues.map((issue) => misfit(json, root, issue)) };
}

function misfit(json: JsonText, root: Node | undefined, issue: z.core.$ZodIssue): Finding {
  const path = pathOf(issue);
  const { problem, remedy } = issueInWords(issue);
  const offset = nodeAround(root, path)?.offset ?? 0;
  return wrongShape.at(
    { file: json.file, ...lineAndColumn(json.text, offset), field: path.join('.') || 'the whole file' },
    {
      excerpt: excerptAt(json.text, offset),
      problem,
      remedy: `${remedy} Or put back a copy that is whole. Nothing was changed.`,
    },
  );
}

function nodeAround(root: Node | undefined, path: JsonPath): Node | undefined {
  if (root === undefined) return undefined;
  for (let length = path.length; length >= 0; length -= 1) {
    const node = findNodeAtLocation(root, [...path.slice(0, length)]);
    if (node !== undefined) return node;
  }
  return root;
}
