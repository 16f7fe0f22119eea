import type { Project } from '../project/project.ts';

type Person = Project['settings']['people'][number];

/** Whose word is needed: the driller's, that of someone else than the signer, or that of someone who is not paid for what it allows. */
type Wanted = 'driller' | 'another' | 'not the crew';

/** Words that say that no one was there to speak. */
const NO_ONE = /^(?:nobody|no[ -]?one|none|no answer)(?![a-z])/i;

/**
 * Why no one of those named in a text can have given a word that is needed from someone other than the signer (by initials); undefined where one can.
 * Someone who is not in the project's people is taken at their name: crews change, and the list is seldom complete.
 */
export function speakerProblem(
  people: readonly Person[],
  signer: string,
  text: string,
  wanted: Wanted,
): string | undefined {
  const problems = text.split(/,|&|\+|\band\b/).map((each) => problemOf(people, signer, each.trim(), wanted));
  return problems.includes(undefined) ? undefined : problems[0];
}

function problemOf(
  people: readonly Person[],
  signer: string,
  name: string,
  wanted: Wanted,
): string | undefined {
  if (!isName(name)) return `“${name}” names no one`;
  const person = personNamed(people, name);
  if (person === undefined) return undefined;
  if (person.initials === signer && wanted !== 'not the crew') return `${name} is you: it takes someone else`;
  if (wanted === 'driller' && person.role !== 'driller')
    return `${name} is ${roleWords(person)}, not the driller`;
  const isCrew = person.role === 'driller' || person.role === 'offsider';
  return wanted === 'not the crew' && isCrew
    ? `${name} is ${roleWords(person)}, one of the drilling crew`
    : undefined;
}

/** True of what can be a person's name or initials: it begins with a letter, has two at least, and is no answer to a question. */
export function isName(text: string): boolean {
  const letters = text.match(/\p{L}/gu)?.length ?? 0;
  const isAnswer = NO_ONE.test(text) || /^(?:yes|no|ok|okay|done|read)$/i.test(text);
  return letters >= 2 && /^\p{L}/u.test(text) && !isAnswer;
}

/** The person of the project that a name means: by initials, whole name, or one part of it that no one else bears. */
function personNamed(people: readonly Person[], name: string): Person | undefined {
  const typed = name.toLowerCase();
  const whole = people.find((each) => [each.initials, each.name].some((one) => one.toLowerCase() === typed));
  if (whole !== undefined) return whole;
  const parts = people.filter((each) => each.name.toLowerCase().split(/\s+/).includes(typed));
  return parts.length === 1 ? parts[0] : undefined;
}

function roleWords({ role }: Person): string {
  return role === 'camp' ? 'at camp' : `${/^[aeiou]/.test(role) ? 'an' : 'a'} ${role}`;
}
