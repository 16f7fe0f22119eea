import type { BuildOptions } from 'esbuild';

export function bundleOptions(outdir: string): BuildOptions;
