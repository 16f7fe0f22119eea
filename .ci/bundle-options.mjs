// How the console is bundled: used by the build and by the tests that run the bundle.
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { consolePlugins, yogaWithoutAwait } from './bundle-plugins.mjs';

/** What both files of the bundle are built with. CommonJS, for V8 keeps compiled code of a script and not of an ES module. */
const common = {
  bundle: true,
  format: 'cjs',
  platform: 'node',
  target: 'node20',
  mainFields: ['module', 'main'],
  minify: true,
  legalComments: 'none',
  logLevel: 'warning',
  supported: { 'dynamic-import': false },
  define: {
    'process.env.NODE_ENV': '"production"',
    'import.meta.url': '__filename',
    'import.meta.dirname': '__dirname',
    // Nothing fetches. Yoga would, from a data URL, its WebAssembly: for that Node loads its whole HTTP client (30 ms).
    fetch: 'undefined',
  },
};

/** esbuild's options for program.js: all of offsider, no node_modules needed. What `import()` loads runs only when it is called for. */
export function bundleOptions(outdir) {
  return {
    ...common,
    entryPoints: { program: 'src/cli.ts' },
    outdir,
    plugins: [...consolePlugins, yogaWithoutAwait],
  };
}

/** Builds program.js, and offsider.js, which starts it. Returns esbuild's account of what is in the program. */
export async function bundle(outdir, absWorkingDir = process.cwd()) {
  const { metafile } = await build({ ...bundleOptions(outdir), absWorkingDir, metafile: true });
  const digest = createHash('sha256')
    .update(readFileSync(join(outdir, 'program.js')))
    .digest('hex');
  await build({
    ...common,
    absWorkingDir,
    entryPoints: { offsider: 'src/launch.ts' },
    outdir,
    define: { ...common.define, PROGRAM_DIGEST: JSON.stringify(digest.slice(0, 16)) },
  });
  // The sources around it are ES modules.
  writeFileSync(join(outdir, 'package.json'), '{ "type": "commonjs" }\n');
  return metafile;
}
