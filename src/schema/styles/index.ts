import orogenicGold from '../../../schemas/styles/orogenic-gold.json' with { type: 'json' };
import type { TextFile } from '../read/places.ts';

/** Starter styles by name, built in, so that a project can start without a network or a second file. */
export const STYLES: Readonly<Record<string, unknown>> = {
  'orogenic-gold': orogenicGold,
};

/** A built-in style as a text that can be read like a file, or undefined where there is none of that name. */
export function styleFile(name: string): TextFile | undefined {
  if (!Object.hasOwn(STYLES, name)) return undefined;
  return { file: `style ${name}`, text: JSON.stringify(STYLES[name], null, 2), builtIn: true };
}
