import type { Plugin } from 'esbuild';

export const withoutDevtools: Plugin;
export const longLivedInkCaches: Plugin;
