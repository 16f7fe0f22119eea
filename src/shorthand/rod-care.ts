/** What was seen at a rod of cyclone, splitter, hole and water, and the driller's word on it; what is left out was not looked at. */
export interface RodCare {
  readonly cycloneClean?: boolean;
  readonly splitterClean?: boolean;
  readonly splitterLevel?: boolean;
  readonly holeBlownClean?: boolean;
  readonly water?: 'injected' | 'groundwater';
  /** The driller's word: nothing dropped, no cavity felt. */
  readonly felt?: 'solid';
}

/** A letter of the line of care: what it says, and what it says with a 0 behind it. */
const LETTERS = [
  {
    letter: 'c',
    is: { cycloneClean: true },
    isNot: { cycloneClean: false },
    says: 'cyclone cleaned',
    not: 'cyclone NOT clean',
  },
  {
    letter: 's',
    is: { splitterClean: true },
    isNot: { splitterClean: false },
    says: 'splitter cleaned',
    not: 'splitter NOT clean',
  },
  {
    letter: 'l',
    is: { splitterLevel: true },
    isNot: { splitterLevel: false },
    says: 'splitter level',
    not: 'splitter NOT level',
  },
  {
    letter: 'h',
    is: { holeBlownClean: true },
    isNot: { holeBlownClean: false },
    says: 'hole blown clean',
    not: 'hole NOT blown clean',
  },
  { letter: 'i', is: { water: 'injected' }, says: 'water injected' },
  { letter: 'g', is: { water: 'groundwater' }, says: 'groundwater' },
  { letter: 'n', is: { felt: 'solid' }, says: 'driller: no cavity felt' },
] as const;

/** The letters with their words, for prompts and the help. */
export const CARE_HELP = `${LETTERS.map(({ letter, says }) => `${letter} ${says}`).join(', ')}; c0 = cyclone not clean (same for s, l, h)`;

/** Reads `cslh`, `c0s`; undefined where a letter is none of them, is said twice, or takes no 0. */
export function readCare(text: string): RodCare | undefined {
  if (!/^(?:[cslh]0?|[ign])+$/.test(text)) return undefined;
  const said = text.match(/[a-z]0?/g) ?? [];
  const parts = said.map((each) => partOf(each));
  const fields = parts.flatMap((each) => Object.keys(each));
  return new Set(fields).size === fields.length ? Object.assign({}, ...parts) : undefined;
}

function partOf(said: string): RodCare {
  const found = LETTERS.find(({ letter }) => letter === said[0]);
  if (found === undefined) return {};
  return said.endsWith('0') && 'isNot' in found ? found.isNot : found.is;
}

/** What a care says, in words, the driller's word first: a line of the history may be cut short. */
export function careWords(care: RodCare): string {
  const holds = (part: RodCare): boolean =>
    Object.entries(part).every(([field, value]) =>
      Object.entries(care).some(([f, v]) => f === field && v === value),
    );
  return [...LETTERS]
    .sort((a, b) => Number('felt' in b.is) - Number('felt' in a.is))
    .flatMap((each) => {
      if (holds(each.is)) return [each.says];
      return 'isNot' in each && holds(each.isNot) ? [each.not] : [];
    })
    .join(', ');
}
