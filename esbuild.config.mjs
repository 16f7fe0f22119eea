// Builds the bundles: offsider.js and, beside it, what it loads when called for.
import { chmodSync, rmSync } from 'node:fs';
import { build } from 'esbuild';
import { bundleOptions } from './.ci/bundle-options.mjs';

rmSync('dist', { recursive: true, force: true });
await build(bundleOptions('dist'));
chmodSync('dist/offsider.js', 0o755);
