#!/usr/bin/env node
import { readFileSync } from 'node:fs';
import { createRequire, wrap } from 'node:module';
import { join } from 'node:path';
import { Script } from 'node:vm';
import about from '../package.json' with { type: 'json' };
import { keepCode, keptCode, userCacheFolder } from './code-cache.ts';

/** The beginning of the SHA-256 of program.js; the build puts it in. */
declare const PROGRAM_DIGEST: string;

/**
 * Runs program.js with the code that V8 compiled for it earlier: compiling it again takes a third of a start. That code fits one program on
 * one version of Node. The package brings it for the Node that built it; on another, the first sitting makes it.
 */
function start(): void {
  const path = join(import.meta.dirname, 'program.js');
  const name = `program-${PROGRAM_DIGEST}-${process.version}-${process.arch}.code`;
  const folders = [import.meta.dirname, userCacheFolder(process.platform, process.env) ?? []].flat();

  // The build writes ASCII only, and a string of Latin-1 is half the size in memory.
  const source = readFileSync(path, 'latin1');
  const cachedData = keptCode(folders, name);
  const script = new Script(wrap(source), { filename: path, ...(cachedData && { cachedData }) });
  const program: { exports: { readonly consoleUp?: Promise<void> } } = { exports: {} };
  script.runInThisContext()(program.exports, createRequire(path), program, path, import.meta.dirname);

  if (cachedData === undefined || script.cachedDataRejected === true)
    program.exports.consoleUp?.then(() => {
      // A second later the first screen is painted, and what a start needs is compiled.
      setTimeout(() => keepCode(folders, name, script.createCachedData()), 1000).unref();
    });
}

// The version by itself needs none of the program.
if (process.argv.length === 3 && process.argv[2] === '--version') console.log(about.version);
else start();
