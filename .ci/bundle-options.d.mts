import type { BuildOptions, Metafile } from 'esbuild';

export function bundleOptions(outdir: string): BuildOptions;
export function bundle(outdir: string, absWorkingDir?: string): Promise<Metafile>;
