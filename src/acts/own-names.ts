import { headerOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import type { OwnNames } from '../shorthand/own-names.ts';

/** Names of a project for examples: its bag numbers, the hole after its last one, someone who is called. */
export function ownNames({ settings, sampling }: Project, holes: Iterable<Document>): OwnNames {
  const { people } = settings;
  const called =
    people.find(({ role }) => role === 'camp') ?? people.find(({ role }) => role === 'geologist');
  const { numbers, blocks } = sampling;
  return {
    bagPrefix: blocks[0]?.first.prefix ?? numbers.prefixes[0] ?? '',
    bagDigits: numbers.digits,
    hole: nextName([...holes].filter(({ kind }) => kind === 'hole').map((hole) => headerOf(hole).name)),
    person: called?.name ?? people[0]?.name ?? '',
    driller: people.find(({ role }) => role === 'driller')?.name ?? 'the driller',
  };
}

/** The name with the next number behind the last of these that ends in one: ABRC008 behind ABRC007. */
function nextName(names: readonly string[]): string {
  const last = [...names]
    .sort((a, b) => a.localeCompare(b, 'en', { numeric: true }))
    .findLast((name) => /\d$/.test(name));
  const [, stem = 'RC', number = '000'] = /^(.*?)(\d+)$/.exec(last ?? '') ?? [];
  return `${stem}${String(Number(number) + 1).padStart(number.length, '0')}`;
}
