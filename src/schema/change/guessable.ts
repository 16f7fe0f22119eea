/** How well the letters of a term lead to its strokes: whether they begin with its letter, and stand in it in their order. */
export type Guess = { readonly first: boolean; readonly inOrder: boolean };

/** The letters of a term, without spaces and signs. */
export function lettersOf(term: string): string {
  return term
    .toLowerCase()
    .normalize('NFKD')
    .replaceAll(/[^a-z]/g, '');
}

/** Initials of the words of a term behind its first one. */
function laterInitials(term: string): readonly string[] {
  const words = term
    .toLowerCase()
    .normalize('NFKD')
    .split(/[^a-z\p{M}]+/u);
  return words.slice(1).flatMap((word) => word[0] ?? []);
}

/** How well a pair or key can be guessed from its term. */
export function guessOf(term: string, strokes: string): Guess {
  const letters = lettersOf(term);
  let at = -1;
  const inOrder = [...strokes].every((letter) => {
    at = letters.indexOf(letter, at + 1);
    return at !== -1;
  });
  return { first: letters[0] === strokes[0], inOrder };
}

/**
 * How far strokes are from what a person would guess for a term, from 0 up: its first letter, then the initial of a later word or a
 * consonant, the sooner the better; then a vowel; then a letter that it doesn't have; letters in order; last any letters.
 */
export function distanceFromTerm(term: string, strokes: string): number {
  const letters = lettersOf(term);
  const [first = '', second] = strokes;
  const { first: begins, inOrder } = guessOf(term, strokes);
  // A key is learned with what changes every other metre: one that is there is worth more than one that is guessed.
  if (second === undefined) return begins ? 0 : inOrder ? 3 : 6;
  if (!begins) return inOrder ? 20 + letters.indexOf(first) / 10 : 30;
  if (laterInitials(term).includes(second)) return 0.1;
  const place = [...letters.slice(1)].filter((letter) => isVowel(letter) === isVowel(second)).indexOf(second);
  if (place === -1) return 12;
  return (isVowel(second) ? 1 : 0) + 0.2 * (place + 1);
}

function isVowel(letter: string): boolean {
  return 'aeiou'.includes(letter);
}
