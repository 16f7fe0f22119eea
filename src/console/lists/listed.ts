import type { Line } from '../widgets/line.ts';

/** What a list screen shows: its title, and sections of items. An item is one thing in one line or several, found and shown whole. */
export interface Listed {
  readonly title: string;
  readonly sections: readonly ListSection[];
}

/** Items under a head, which may be empty. */
export interface ListSection {
  readonly head: readonly Line[];
  readonly items: readonly (readonly Line[])[];
  /** What each item is about, where one can be picked: `rocks BAS`. */
  readonly about?: readonly (string | undefined)[];
}

/** A list of one section. */
export function oneSection(
  title: string,
  items: readonly (readonly Line[])[],
  head: readonly Line[] = [],
): Listed {
  return { title, sections: [{ head, items }] };
}

/**
 * The list with only what holds every word that is typed; a section whose head holds them stays whole, one in which nothing
 * does goes. A hyphen finds the dash that stands between depths.
 */
export function found(list: Listed, typed: string): Listed {
  const words = plain(typed)
    .split(' ')
    .filter((word) => word !== '');
  if (words.length === 0) return list;
  const holds = (lines: readonly Line[]): boolean => {
    const text = plain(lines.map((each) => each.map((span) => span.text).join('')).join(' '));
    return words.every((word) => text.includes(word));
  };
  const sections = list.sections.flatMap((section): readonly ListSection[] => {
    if (section.head.length > 0 && holds(section.head)) return [section];
    const kept = section.items.map(holds);
    const items = section.items.filter((_, index) => kept[index]);
    if (items.length === 0) return [];
    const about = section.about?.filter((_, index) => kept[index]);
    return [{ head: section.head, items, ...(about === undefined ? {} : { about }) }];
  });
  return { ...list, sections };
}

/** Every line of a list, top to bottom. */
export function allLines(list: Listed): readonly Line[] {
  return list.sections.flatMap((section) => [...section.head, ...section.items.flat()]);
}

function plain(text: string): string {
  return text.toLowerCase().replaceAll('–', '-').replace(/\s+/g, ' ');
}
