import type { Plugin } from 'esbuild';

export const fasterInk: Plugin;
export const quickStart: Plugin;
export const consolePlugins: Plugin[];
export const withoutDevtools: Plugin;
export const yogaWithoutAwait: Plugin;
/** The inside of a character class. */
export const narrowCharacters: string;
