import type { Edit } from '../record/document.ts';

/** What an edit that takes another back took back, in words: `rod 9 done at 54 m, with its 7 bags`. */
export function undoneWords(edit: Pick<Edit, 'what' | 'parts'>): string {
  const removed = edit.parts
    .flatMap((part) => part.changes)
    .flatMap((change) => ('remove' in change ? [change.remove[0]] : []));
  const bags = removed.filter((table) => table === 'bags').length;
  const rod = removed.includes('rods') && bags > 0 ? `, with its ${bags} bag${bags === 1 ? '' : 's'}` : '';
  return `${otherOf(edit)}${rod}`;
}

/** What an edit that takes another back, or does it again, is about: the words of that other one. */
export function otherOf({ what }: Pick<Edit, 'what'>): string {
  return what.replace(/^(?:undo|redo): /, '');
}
