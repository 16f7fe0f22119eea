import { type DocumentName, documentKey, type Edit } from '../record/document.ts';

/** What an edit that takes another back took back, in words: `rod 9 done at 54 m, with its 7 bags`. */
export function undoneWords(edit: Pick<Edit, 'what' | 'parts'>, inHand: DocumentName | undefined): string {
  const removed = edit.parts
    .flatMap((part) => part.changes)
    .flatMap((change) => ('remove' in change ? [change.remove[0]] : []));
  const bags = removed.filter((table) => table === 'bags').length;
  const rod = removed.includes('rods') && bags > 0 ? `, with its ${bags} bag${bags === 1 ? '' : 's'}` : '';
  return `${otherOf(edit, inHand)}${rod}`;
}

/** What an edit that takes another back, or does it again, is about: the words of that other one, and of which document where that is not the one in hand. */
export function otherOf(
  { what, parts }: Pick<Edit, 'what' | 'parts'>,
  inHand: DocumentName | undefined,
): string {
  const words = what.replace(/^(?:undo|redo): /, '');
  const [first] = parts;
  const isInHand =
    inHand !== undefined && parts.some((part) => documentKey(part.document) === documentKey(inHand));
  if (first === undefined || isInHand || words.includes(first.document.id)) return words;
  const { kind, id } = first.document;
  return `${kind === 'hole' ? id : `${kind} ${id}`}: ${words}`;
}
