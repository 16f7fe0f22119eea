import type { z } from 'zod';
import type { JsonPath } from './places.ts';

type Issue = z.core.$ZodIssue;
type InWords = { readonly problem: string; readonly remedy: string };

/**
 * An issue, or, where none of several shapes fits, what is wrong with the shape that came nearest: "none of these fits" helps
 * no one. Nearest is the one whose first fault lies deepest, then the one with the fewest faults.
 */
export function knownParts(issue: Issue): readonly Issue[] {
  if (
    issue.code !== 'invalid_union' ||
    issue.input === undefined ||
    issue.errors.length === 0 ||
    saysWhy(issue)
  )
    return [issue];
  const ranked = issue.errors
    .map((each) => each.flatMap(knownParts))
    .filter((each) => each.length > 0)
    .sort((a, b) => deepest(b) - deepest(a) || unknownMembers(a) - unknownMembers(b) || a.length - b.length);
  const best = ranked[0] ?? [issue];
  return best.map((each) => (each === issue ? each : { ...each, path: [...issue.path, ...each.path] }));
}

/** True of an issue whose shape says itself what is wrong with it. */
function saysWhy(issue: Issue): boolean {
  return issue.message !== '' && !LIBRARY_WORDS.test(issue.message);
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

/** Members that are not known; a file can hold thousands, and no one reads past a few. */
const MOST_MEMBERS = 8;
function membersInWords(keys: readonly string[]): string {
  const named = keys.slice(0, MOST_MEMBERS).map((key) => `"${key}"`);
  const more = keys.length - named.length;
  return more > 0 ? `${named.join(', ')} and ${more} more` : named.join(', ');
}

/** What a fault of shape means and what to do, in plain words: what is wrong and what can stand there. */
export function issueInWords(issue: Issue): InWords {
  const name = nameOf(issue.path);
  if (isMissing(issue))
    return {
      problem: `${name} is missing`,
      remedy: issue.code === 'invalid_union' ? 'Add it.' : `Add it (${canStand(issue)}).`,
    };
  switch (issue.code) {
    case 'unrecognized_keys':
      return {
        problem: `${membersInWords(issue.keys)} is not known here`,
        remedy: 'Take it out, or check its spelling.',
      };
    case 'invalid_type':
      return {
        problem: `${name} should be ${typeInWords(issue.expected)}`,
        remedy: 'Change it.',
      };
    case 'invalid_value':
      return {
        problem: `${name} is not one of the words allowed here`,
        remedy: `Use one of: ${canStand(issue)}.`,
      };
    case 'too_small':
      return limitInWords(issue, name, issue.minimum, issue.inclusive !== false);
    case 'too_big':
      return limitInWords(issue, name, issue.maximum, issue.inclusive !== false);
    case 'invalid_union':
      if (saysWhy(issue)) return { problem: `${name} ${issue.message}`, remedy: 'Change it.' };
      return {
        problem: `${name} has none of the forms allowed here`,
        remedy: unionInWords(issue),
      };
    default:
      return { problem: `${name} ${saidOf(issue)}`, remedy: 'Change it.' };
  }
}

function isMissing(issue: Issue): boolean {
  return (
    issue.input === undefined && ['invalid_type', 'invalid_value', 'invalid_union'].includes(issue.code ?? '')
  );
}

/** What can stand where an issue is, in words. */
function canStand(issue: Issue): string {
  if (issue.code === 'invalid_type') return typeInWords(issue.expected);
  if (issue.code !== 'invalid_value') return '';
  return issue.values.map(String).join(', ');
}

/** ` (it is 1.5)`, for what is short enough to be said; nothing for anything else. */
function isThere(input: unknown): string {
  const scalar = input === null || ['string', 'number', 'boolean'].includes(typeof input);
  const text = scalar ? JSON.stringify(input) : '';
  return text === '' || text.length > 40 ? '' : ` (it is ${text})`;
}

/** What the shape itself says is wrong; never the words of the library that checks it, which help no one on a rig. */
function saidOf(issue: Issue): string {
  const said = issue.code === 'invalid_key' ? (issue.issues[0]?.message ?? '') : issue.message;
  if (said !== '' && !LIBRARY_WORDS.test(said)) return said;
  if (issue.code === 'not_multiple_of') return `should be a multiple of ${issue.divisor}`;
  return 'does not have the form allowed here';
}

const LIBRARY_WORDS = /^(Invalid|Too |Unrecognized|Duplicate|Required)/;

function unionInWords(issue: Extract<Issue, { readonly code: 'invalid_union' }>): string {
  const { options } = issue as { readonly options?: readonly unknown[] };
  return options === undefined ? 'See its description.' : `Use one of: ${options.map(String).join(', ')}.`;
}

/** Past a limit, by what is counted: characters of a text, entries of a list, or the number itself. */
function limitInWords(
  issue: Extract<Issue, { readonly code: 'too_small' | 'too_big' }>,
  name: string,
  limit: number | bigint,
  inclusive: boolean,
): InWords {
  const small = issue.code === 'too_small';
  const word = inclusive ? (small ? 'At least' : 'At most') : small ? 'More than' : 'Less than';
  if (issue.origin === 'string')
    return { problem: `${name} is too ${small ? 'short' : 'long'}`, remedy: `${word} ${limit} characters.` };
  if (issue.origin === 'array' || issue.origin === 'set')
    return { problem: `${name} holds too ${small ? 'few' : 'many'}`, remedy: `${word} ${limit}.` };
  return { problem: `${name} is too ${small ? 'small' : 'large'}`, remedy: `${word} ${limit}.` };
}

/** The first fault of shape as one sentence, with where it is: for what is refused before it gets into a file. */
export function faultInWords(error: { readonly issues: readonly Issue[] }): string {
  const [first] = error.issues.flatMap(knownParts);
  if (first === undefined) return 'it has not the form that can be kept';
  const { problem, remedy } = issueInWords(first);
  const around = pathOf(first).slice(0, -1);
  const within = around.length === 0 ? '' : `${around.join('.')}: `;
  return `${within}${problem}${isThere(first.input)}. ${remedy}`.replace(/\.$/, '');
}

function nameOf(path: readonly PropertyKey[]): string {
  const last = path.at(-1);
  if (last === undefined) return 'the whole';
  return typeof last === 'number' ? `entry ${last + 1}` : `"${String(last)}"`;
}

function typeInWords(expected: string): string {
  const words: Readonly<Record<string, string>> = {
    string: 'a text in quotes',
    number: 'a number',
    int: 'a whole number',
    boolean: 'true or false',
    array: 'a list in [ ]',
    tuple: 'a list in [ ]',
    object: 'an object in { }',
    record: 'an object in { }',
    null: 'null',
    never: 'left out',
  };
  return words[expected] ?? expected;
}
