// Builds the bundle that goes on the rig's laptop: one ES module that runs with no node_modules.
import { chmodSync, rmSync } from 'node:fs';
import { build } from 'esbuild';
import { bundleOptions } from './.ci/bundle-options.mjs';

rmSync('dist', { recursive: true, force: true });
await build(bundleOptions('dist'));
chmodSync('dist/offsider.js', 0o755);
