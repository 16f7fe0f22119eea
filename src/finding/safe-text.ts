/**
 * Text of which every character is one cell wide and a character by itself: printable ASCII, Latin, punctuation, arrows, mathematical
 * signs, box drawing, blocks, geometric shapes. Counting it needs no Unicode tables, whose first use costs 20 to 40 ms.
 */
export const narrowText =
  /^[\x20-\x7e\xa0-\xac\xae-\u02ff\u2010-\u2027\u2030-\u205e\u2070-\u209c\u2190-\u22ff\u2500-\u25fc]*$/;

/**
 * What a terminal would obey, or an eye would not see: controls, format characters (bidi, zero-width, soft hyphen, tags), line and
 * paragraph separators, lone surrogates, and the rest of Unicode's default-ignorables.
 */
const unsafeCharacters = () => {
  pattern ??= /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Default_Ignorable_Code_Point}]/gu;
  return pattern;
};
/** Made when first needed: it takes 10 ms, and most texts need none of it. */
let pattern: RegExp | undefined;

/** What an unsafe character is shown as: `␛` for a C0 control, `<202E>` for the others (and, in ASCII, for all). */
function shown(character: string, ascii: boolean): string {
  const code = character.codePointAt(0)!;
  if (!ascii && code < 0x20) return String.fromCharCode(0x2400 + code);
  if (!ascii && code === 0x7f) return '␡';
  return `<${code.toString(16).toUpperCase().padStart(2, '0')}>`;
}

/**
 * Text from outside (files, pastes, the keyboard) made safe to show on one line: nothing in it moves the cursor, changes the
 * terminal, reorders its neighbours or hides. What was there is shown, not dropped, so that a person sees that it is there.
 * Visible text of every script stays as it is. Joiners and selectors inside emoji are shown too: no two terminals measure those alike.
 */
export function safeText(text: string, looks: { readonly ascii: boolean } = { ascii: false }): string {
  // Nothing in it is unsafe, and the Unicode tables of the pattern above aren't needed to see that.
  if (narrowText.test(text)) return text;
  return text.replace(unsafeCharacters(), (character) => shown(character, looks.ascii));
}

/** The same for text of several lines: line ends stay, everything else as in `safeText`. */
export function safeLines(text: string, looks: { readonly ascii: boolean } = { ascii: false }): string {
  return text
    .split('\n')
    .map((line) => safeText(line, looks))
    .join('\n');
}

/** JSON as printed, with every unsafe character in its texts escaped: the same data, and nothing in it that a terminal obeys or hides. */
export function safeJson(json: string): string {
  return json.replace(unsafeCharacters(), (character) =>
    character === '\n' ? character : escaped(character),
  );
}

/** A character as JSON escapes it, one `\u` for each of its UTF-16 units. */
function escaped(character: string): string {
  const units = Array.from({ length: character.length }, (_, at) => character.charCodeAt(at));
  return units.map((unit) => `\\u${unit.toString(16).padStart(4, '0')}`).join('');
}
