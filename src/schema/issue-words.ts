import type { z } from 'zod';
import type { JsonPath } from './places.ts';

type Issue = z.core.$ZodIssue;
type InWords = { readonly problem: string; readonly remedy: string };

/**
 * An issue, or, where none of several shapes fits, what is wrong with the shape that came nearest: "none of these fits" helps
 * nobody. Nearest is the one whose first fault lies deepest, then the one with the fewest faults.
 */
export function knownParts(issue: Issue): readonly Issue[] {
  if (issue.code !== 'invalid_union' || issue.input === undefined || issue.errors.length === 0)
    return [issue];
  const ranked = issue.errors
    .map((each) => each.flatMap(knownParts))
    .filter((each) => each.length > 0)
    .sort((a, b) => deepest(b) - deepest(a) || unknownMembers(a) - unknownMembers(b) || a.length - b.length);
  const best = ranked[0] ?? [issue];
  return best.map((each) => (each === issue ? each : { ...each, path: [...issue.path, ...each.path] }));
}

function deepest(issues: readonly Issue[]): number {
  return Math.max(...issues.map((each) => each.path.length));
}

function unknownMembers(issues: readonly Issue[]): number {
  return issues.filter((each) => each.code === 'unrecognized_keys').length;
}

/** The path that an issue points at: for a member that is not known, the member itself. */
export function pathOf(issue: Issue): JsonPath {
  const path = issue.path.filter((step): step is string | number => typeof step !== 'symbol');
  return issue.code === 'unrecognized_keys' ? [...path, ...issue.keys.slice(0, 1)] : path;
}

/** What a fault of shape means and what to do, in plain words. */
export function issueInWords(issue: Issue): InWords {
  const name = nameOf(issue.path);
  if (issue.code === 'invalid_union' && issue.input === undefined)
    return { problem: `${name} is missing`, remedy: 'Add it.' };
  if (issue.code === 'unrecognized_keys') {
    const keys = issue.keys.map((key) => `"${key}"`).join(', ');
    return {
      problem: `${keys} is not known here`,
      remedy: 'Take it out, or check its spelling.',
    };
  }
  if (issue.input === undefined && (issue.code === 'invalid_type' || issue.code === 'invalid_value'))
    return {
      problem: `${name} is missing`,
      remedy: `Add it (${issue.code === 'invalid_type' ? typeInWords(issue.expected) : issue.values.map(String).join(' or ')}).`,
    };
  if (issue.code === 'invalid_type')
    return { problem: `${name} should be ${typeInWords(issue.expected)}`, remedy: 'Change it.' };
  if (issue.code === 'invalid_value')
    return {
      problem: `${name} is none of the words that can stand here`,
      remedy: `Use one of: ${issue.values.map((value) => String(value)).join(', ')}.`,
    };
  if (issue.code === 'too_small')
    return { problem: `${name} is too small or too short`, remedy: limitInWords('At least', issue.minimum) };
  if (issue.code === 'too_big')
    return { problem: `${name} is too large or too long`, remedy: limitInWords('At most', issue.maximum) };
  if (issue.code === 'invalid_union')
    return { problem: `${name} has none of the forms that can stand here`, remedy: 'See its description.' };
  const said = issue.code === 'invalid_key' ? (issue.issues[0]?.message ?? issue.message) : issue.message;
  return { problem: `${name} ${said}`, remedy: 'Change it.' };
}

function limitInWords(word: string, limit: number | bigint): string {
  return `${word} ${String(limit)}.`;
}

function nameOf(path: readonly PropertyKey[]): string {
  const last = path.at(-1);
  if (last === undefined) return 'the file';
  return typeof last === 'number' ? `entry ${last + 1}` : `"${String(last)}"`;
}

function typeInWords(expected: string): string {
  const words: Readonly<Record<string, string>> = {
    string: 'a text in quotes',
    number: 'a number',
    int: 'a whole number',
    boolean: 'true or false',
    array: 'a list in [ ]',
    object: 'an object in { }',
    record: 'an object in { }',
  };
  return words[expected] ?? expected;
}
