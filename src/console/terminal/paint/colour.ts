/** What the terminal can show, decided once at the start. */
export interface Looks {
  /** Colours and bold may be used. Nothing is ever told by colour alone. */
  readonly colour: boolean;
  /** Borders, blocks and marks keep to ASCII. */
  readonly ascii: boolean;
}

type Environment = Record<string, string | undefined>;

const isSet = (value: string | undefined) => value !== undefined && value !== '';

/**
 * Looks from the environment: NO_COLOR (set and not empty) or a dumb terminal takes colour away; OFFSIDER_ASCII (set, not empty,
 * not `0`) or a dumb terminal asks for ASCII. Source: the NO_COLOR convention.
 */
export function looksOf(env: Environment): Looks {
  const dumb = env.TERM === 'dumb';
  return {
    colour: !dumb && !isSet(env.NO_COLOR),
    ascii: dumb || (isSet(env.OFFSIDER_ASCII) && env.OFFSIDER_ASCII !== '0'),
  };
}

/**
 * Decides the looks and tells the colour library, which doesn't know NO_COLOR, through the environment it reads as it loads: call this
 * before anything that imports Ink.
 */
export function setupColour(env: Environment): Looks {
  const looks = looksOf(env);
  if (!looks.colour) env.FORCE_COLOR = '0';
  return looks;
}
