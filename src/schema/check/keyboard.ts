/** Letters of a US keyboard, row by row; each row stands half a key further right than the one above it. */
const ROWS = ['qwertyuiop', 'asdfghjkl', 'zxcvbnm'] as const;

/** Letters that no more of can stand on a keyboard without two of them being neighbours. */
export const MOST_KEYS_APART = 9;

/** Letters beside a letter: left, right, and the two each that touch it above and below. None for anything but a to z. */
export function neighboursOnKeyboard(letter: string): readonly string[] {
  const row = ROWS.findIndex((letters) => letters.includes(letter));
  const at = ROWS[row]?.indexOf(letter);
  if (letter.length !== 1 || at === undefined) return [];
  const places = [
    [row, at - 1],
    [row, at + 1],
    [row - 1, at],
    [row - 1, at + 1],
    [row + 1, at - 1],
    [row + 1, at],
  ] as const;
  return places.flatMap(([y, x]) => ROWS[y]?.[x] ?? []);
}

/** Letters that touch a digit above them, or a sign that stands for an amount. */
const BESIDE_AMOUNT: Readonly<Record<string, string>> = {
  '1': 'q',
  '2': 'qw',
  '3': 'we',
  '4': 'er',
  '5': 'rt',
  '6': 'ty',
  '7': 'yu',
  '8': 'ui',
  '9': 'io',
  '0': 'op',
  ',': 'mkl',
  ';': 'lp',
};

/** Letters that a finger lands on when it misses a digit, the comma or the semicolon. None for anything else. */
export function lettersBesideAmount(character: string): readonly string[] {
  return [...(BESIDE_AMOUNT[character] ?? '')];
}

/** What one slip makes of strokes: one letter replaced by a neighbour, or the two letters of a pair the wrong way round. */
export function slipsOf(strokes: string): readonly string[] {
  const replaced = [...strokes].flatMap((letter, index) =>
    neighboursOnKeyboard(letter).map((other) => strokes.slice(0, index) + other + strokes.slice(index + 1)),
  );
  const [first, second] = strokes;
  return strokes.length === 2 ? [...replaced, `${second}${first}`] : replaced;
}

/** True where strokes are a pair: two different lower-case letters. */
export function isPair(strokes: string): boolean {
  return /^[a-z]{2}$/.test(strokes) && strokes[0] !== strokes[1];
}

/** True where strokes are a single key: one lower-case letter. */
export function isKey(strokes: string): boolean {
  return /^[a-z]$/.test(strokes);
}
