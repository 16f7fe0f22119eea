const FORM = /^[A-Z0-9][A-Z0-9_-]{0,39}$/;
/** Names that a common platform keeps for devices, with any ending. */
const RESERVED = /^(CON|PRN|AUX|NUL|COM[0-9]|LPT[0-9])$/;

/**
 * Why an id can't be a file's name on every platform, in words; undefined where it can. Capitals, digits, `_` and `-`
 * only: such ids can't climb out of a folder, and no two of them differ by case alone.
 */
export function identifierFault(id: string): string | undefined {
  if (id === '') return 'it is empty';
  if (RESERVED.test(id.toUpperCase())) return `${id} is a name that some computers keep for devices`;
  if (FORM.test(id)) return undefined;
  if (id.length > 40) return 'it is longer than 40 characters';
  if (FORM.test(id.toUpperCase())) return `small letters: write ${id.toUpperCase()}`;
  return 'only capitals, digits, _ and - are allowed, and it starts with a capital or a digit';
}
