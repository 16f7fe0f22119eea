import { headerOf } from '../../hole/hole.ts';
import type { Document } from '../../record/document.ts';

/** Documents chosen by name, and names of which there is none. */
export interface Chosen {
  readonly documents: readonly Document[];
  readonly unknown: readonly string[];
}

/** Documents by what they are called: a hole by its name or id, a shift by its name or date, others by their id. All where no name is said. */
export function chooseDocuments(documents: Iterable<Document>, names: readonly string[]): Chosen {
  const all = [...documents];
  if (names.length === 0) return { documents: all, unknown: [] };
  const found = names.map((name) => all.filter((each) => isCalled(each, name.toUpperCase())));
  return {
    documents: [...new Set(found.flat())],
    unknown: names.filter((_, index) => found[index]?.length === 0),
  };
}

function isCalled(document: Document, name: string): boolean {
  if (document.id === name) return true;
  if (document.kind === 'shift') return document.id.includes(`_${name}_`);
  return document.kind === 'hole' && headerOf(document).name.toUpperCase() === name;
}
