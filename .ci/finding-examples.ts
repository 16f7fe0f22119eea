import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FindingExample } from '../src/check/registry.ts';

const TEXTS = join(import.meta.dirname, '../tests/errors/texts');

/** Of each kind of finding one input and the exact text, as the error catalogue (tests/errors) reproduces them. */
export function findingExamples(): ReadonlyMap<string, FindingExample> {
  const pages = readdirSync(TEXTS).sort();
  const found = pages.flatMap((page) =>
    readFileSync(join(TEXTS, page), 'utf8')
      .split(/^== /m)
      .flatMap((each): readonly (readonly [string, FindingExample])[] => {
        const [, code, input, text] = /^(\S+) \(\w+\): (.*)\n([\s\S]*)$/.exec(each) ?? [];
        return code === undefined ? [] : [[code, { input: input ?? '', text: (text ?? '').trimEnd() }]];
      }),
  );
  return new Map(found);
}
