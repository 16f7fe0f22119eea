// What bundling the console needs beyond esbuild's own options: used by the build and by the tests that bundle a program.
import { readFileSync } from 'node:fs';

/** Ink asks for its developer tools only when DEV is set; they aren't shipped. */
export const withoutDevtools = {
  name: 'without-devtools',
  setup(build) {
    build.onResolve({ filter: /^react-devtools-core$/ }, ({ path }) => ({
      path,
      namespace: 'without-devtools',
    }));
    build.onLoad({ filter: /.*/, namespace: 'without-devtools' }, () => ({ contents: 'export default {};' }));
  },
};

/** The most texts a cache remembers; a full one starts again. A screen of 100×30 has 30 lines, most of them the same for minutes. */
const cacheLimit = 4096;

/**
 * Ink 6.8.0 measures and tokenizes every line of every frame anew, with caches that live for one frame: 5 of the 7 ms a key takes at
 * 100×30 (`npm run bench`). Here the same caches, and one for the width of a text, live as long as the program. What is painted
 * stays the same. Each edit fails the build when Ink no longer has the line it replaces.
 */
export const longLivedInkCaches = {
  name: 'long-lived-ink-caches',
  setup(build) {
    edit(build, /[/\\]ink[/\\]build[/\\]output\.js$/, [
      ['caches = new OutputCaches();', 'caches = longLivedCaches();'],
      [
        'export default class Output {',
        `let longLived = new OutputCaches();
function longLivedCaches() {
  const { widths, blockWidths, styledChars } = longLived;
  if (widths.size + blockWidths.size + styledChars.size > ${cacheLimit}) longLived = new OutputCaches();
  return longLived;
}
export default class Output {`,
      ],
    ]);
    edit(build, /[/\\]widest-line[/\\]index\.js$/, [
      [
        'export default function widestLine(string) {',
        `const known = new Map();
export default function widestLine(string) {
  let width = known.get(string);
  if (width === undefined) {
    if (known.size > ${cacheLimit}) known.clear();
    width = measureWidestLine(string);
    known.set(string, width);
  }
  return width;
}
function measureWidestLine(string) {`,
      ],
    ]);
  },
};

/** Replaces exact text, found once, in the one module whose path matches. */
function edit(build, filter, replacements) {
  build.onLoad({ filter }, ({ path }) => {
    let contents = readFileSync(path, 'utf8');
    for (const [from, to] of replacements) {
      if (contents.split(from).length !== 2)
        return {
          errors: [{ text: `${path}: "${from}" is not there exactly once: look at this plugin again` }],
        };
      contents = contents.replace(from, () => to);
    }
    return { contents, loader: 'js' };
  });
}
