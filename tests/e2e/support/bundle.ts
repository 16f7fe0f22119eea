import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { consolePlugins, withoutDevtools } from '../../../.ci/bundle-plugins.mjs';

/**
 * Bundles a program of the tests the way the console is shipped (one minified ESM file), into a temporary folder that goes when this process does.
 * `entry` is the path of its source; the path of the bundle comes back.
 */
export async function bundleProgram(
  entry: string,
  { stockInk = false }: { readonly stockInk?: boolean } = {},
): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'offsider-bundle-'));
  process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
  const outfile = join(folder, 'program.mjs');
  await build({
    entryPoints: [entry],
    outfile,
    bundle: true,
    minify: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    define: { 'process.env.NODE_ENV': '"production"' },
    banner: {
      js: "import { createRequire as makeRequire } from 'node:module';\nconst require = makeRequire(import.meta.url);",
    },
    plugins: stockInk ? [withoutDevtools] : consolePlugins,
    logLevel: 'error',
  });
  return outfile;
}
