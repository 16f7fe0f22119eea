import {
  createScanner,
  getNodeValue,
  type Node,
  type ParseError,
  parseTree,
  printParseErrorCode,
} from 'jsonc-parser';
import type { z } from 'zod';
import { type Finding, ok, type Result, refused } from '../../finding/finding.ts';
import { lineAndColumn, lineExcerpt } from '../../finding/place.ts';
import { memberTwice, notJson, shape } from '../findings.ts';
import { issueInWords, knownParts, pathOf } from './issue-words.ts';
import { excerptAt, type JsonSource, placeInFile, type TextFile } from './places.ts';

/** A value read from a file, with the file that it came from. */
export type ReadFile<T> = { readonly value: T; readonly source: JsonSource };

const LARGEST_TEXT = 4_000_000;
const DEEPEST_NESTING = 60;

/**
 * Reads a file written by hand: JSON with comments, no member twice, of the shape of `schema`.
 * Findings have file, line, column and excerpt; every fault in the file is reported, not only the first.
 */
export function readJsonFile<T>(file: TextFile, schema: z.ZodType<T>): Result<ReadFile<T>> {
  const parsed = parseJsonFile(file);
  if (!parsed.ok) return parsed;
  const source = parsed.value;
  // A hand-written file is read once: zod's compiling of the schema would cost more than it saves.
  const checked = schema.safeParse(getNodeValue(source.root), { reportInput: true, jitless: true });
  if (checked.success) return ok({ value: checked.data, source });
  return refused(
    ...checked.error.issues.flatMap(knownParts).map((issue) => {
      const path = pathOf(issue);
      const { problem, remedy } = issueInWords(issue);
      return shape.at(placeInFile(source, path), { problem, remedy, ...excerptAt(source, path) });
    }),
  );
}

/**
 * A built-in style. That it fits its schema is checked by a test and not at each start, and its tree is made when something points into it.
 */
export function readBuiltIn<T>(file: TextFile): ReadFile<T> {
  let tree: Node | undefined;
  const source = {
    ...file,
    get root(): Node {
      tree ??= parseTree(file.text) as Node;
      return tree;
    },
  };
  return { value: JSON.parse(file.text) as T, source };
}

/** The tree of a JSON text, or what is in its way: size, depth, syntax, a member twice. */
export function parseJsonFile(file: TextFile): Result<JsonSource> {
  const limit = beyondLimits(file.text);
  if (limit !== undefined) return refused(notJson.at({ file: file.file }, limit));
  const errors: ParseError[] = [];
  const root = parseTree(file.text, errors, { allowTrailingComma: false });
  const first = errors[0];
  if (first !== undefined || root === undefined) {
    const offset = first?.offset ?? 0;
    return refused(
      notJson.at(
        { file: file.file, ...lineAndColumn(file.text, offset) },
        {
          problem: `not readable here${first === undefined ? '' : ` (${syntaxInWords(first)})`}`,
          remedy: 'Fix it in an editor: look for a missing comma, quote or bracket just before this place.',
          excerpt: lineExcerpt(file.text, offset),
        },
      ),
    );
  }
  const source = { ...file, root };
  const twice = membersTwice(source, root);
  return twice.length > 0 ? refused(...twice) : ok(source);
}

/** Guards the parser, which calls itself for each bracket: a text too large or too deep is not given to it. */
function beyondLimits(text: string): { readonly problem: string; readonly remedy: string } | undefined {
  const remedy = 'Check that this is the right file.';
  if (text.length > LARGEST_TEXT)
    return { problem: `the file is larger than ${LARGEST_TEXT / 1e6} MB`, remedy };
  const scanner = createScanner(text, true);
  let depth = 0;
  for (scanner.scan(); scanner.getTokenLength() > 0; scanner.scan()) {
    const first = text[scanner.getTokenOffset()];
    if (first === '{' || first === '[') depth += 1;
    if (first === '}' || first === ']') depth -= 1;
    if (depth > DEEPEST_NESTING) return { problem: `brackets are more than ${DEEPEST_NESTING} deep`, remedy };
  }
  return undefined;
}

function syntaxInWords(error: ParseError): string {
  return printParseErrorCode(error.error)
    .replace(/([A-Z])/g, ' $1')
    .trim()
    .toLowerCase();
}

function membersTwice(source: JsonSource, node: Node): readonly Finding[] {
  const children = node.children ?? [];
  const below = children.flatMap((child) => membersTwice(source, child));
  if (node.type !== 'object') return below;
  const names = children.map((property) => String(property.children?.[0]?.value));
  const again = children.filter((_, index) => names.indexOf(names[index] as string) < index);
  const own = again.map((property) =>
    memberTwice.at(
      { file: source.file, ...lineAndColumn(source.text, property.offset) },
      {
        problem: `"${String(property.children?.[0]?.value)}" is written twice in the same place`,
        remedy: 'Take one of the two out.',
        excerpt: lineExcerpt(source.text, property.offset),
      },
    ),
  );
  return [...own, ...below];
}
