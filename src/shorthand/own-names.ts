/** Names of the project in hand that examples are made of. */
export type OwnNames = {
  readonly bagPrefix: string;
  readonly bagDigits: number;
  /** A name that the next hole could have. */
  readonly hole: string;
  /** Someone who could be called. */
  readonly person: string;
  readonly driller: string;
};

/**
 * An example in the names of the project in hand. Texts are written with made-up ones, a bag `ZQ000163`, a hole `ZQRC014`, a person `Ines Falk`, a driller `Mick Tarrant`,
 * and only texts of ours are given here: what a person typed or a file holds is shown as it is.
 */
export function inOwnNames(text: string, own: OwnNames | undefined): string {
  if (own === undefined) return text;
  return text
    .replaceAll(/\bZQRC\d+\b/g, own.hole)
    .replaceAll(/\bZQ0*(\d+)\b/g, (_, serial: string) => own.bagPrefix + serial.padStart(own.bagDigits, '0'))
    .replaceAll('Ines Falk', own.person)
    .replaceAll('Mick Tarrant', own.driller);
}
