// Builds the bundle that goes on the rig's laptop: one ES module that runs with no node_modules.
import { chmodSync, rmSync } from 'node:fs';
import { build } from 'esbuild';
import { consolePlugins } from './.ci/bundle-plugins.mjs';

rmSync('dist', { recursive: true, force: true });
await build({
  entryPoints: { offsider: 'src/cli.ts' },
  outdir: 'dist',
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
  banner: { js: "#!/usr/bin/env node\nimport{createRequire as offsiderRequire}from'node:module';const require=offsiderRequire(import.meta.url);" },
  plugins: consolePlugins,
  logLevel: 'warning',
});
chmodSync('dist/offsider.js', 0o755);
