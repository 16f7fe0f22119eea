// How the console is bundled: used by the build and by the tests that run the bundle.
import { consolePlugins } from './bundle-plugins.mjs';

/**
 * esbuild's options for the two bundles, with the parts they share: offsider.js goes on the rig's laptop; camp.js (taking in what arrives) is
 * loaded by it only when a command of camp is called. Neither needs node_modules.
 */
export function bundleOptions(outdir) {
  return {
    entryPoints: { offsider: 'src/cli.ts', camp: 'src/commands/camp.ts' },
    outdir,
    bundle: true,
    splitting: true,
    chunkNames: 'parts/[name]-[hash]',
    format: 'esm',
    platform: 'node',
    target: 'node20',
    mainFields: ['module', 'main'],
    minify: true,
    legalComments: 'none',
    define: { 'process.env.NODE_ENV': '"production"' },
    banner: {
      js: "#!/usr/bin/env node\nimport{createRequire as offsiderRequire}from'node:module';const require=offsiderRequire(import.meta.url);",
    },
    plugins: consolePlugins,
    logLevel: 'warning',
  };
}
