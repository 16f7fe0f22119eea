import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { build } from 'esbuild';
import { consolePlugins, withoutDevtools } from '../../../.ci/bundle-plugins.mjs';

/**
 * Bundles a program of the tests the way the console is shipped (one minified ESM file), into a new temporary folder.
 * `entry` is the path of its source; the path of the bundle comes back, for `removeBundle` to take away.
 */
export async function bundleProgram(
  entry: string,
  { stockInk = false }: { readonly stockInk?: boolean } = {},
): Promise<string> {
  const outfile = join(mkdtempSync(join(tmpdir(), 'offsider-bundle-')), 'program.mjs');
  await build({
    entryPoints: [entry],
    outfile,
    bundle: true,
    minify: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    define: { 'process.env.NODE_ENV': '"production"', fetch: 'undefined' },
    banner: {
      js: "import { createRequire as makeRequire } from 'node:module';\nconst require = makeRequire(import.meta.url);",
    },
    plugins: stockInk ? [withoutDevtools] : consolePlugins,
    logLevel: 'error',
  });
  return outfile;
}

/** Takes a bundle and its folder away. */
export function removeBundle(bundle: string): void {
  rmSync(dirname(bundle), { recursive: true, force: true });
}
