// What bundling the console needs beyond esbuild's own options: used by the build and by the tests that bundle a program.
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** Ink gets an output of ours, `rows.ts`, which passes the rows of a frame through. What is painted stays the same, which a test compares. */
export const rowsThrough = {
  name: 'rows-through',
  setup(build) {
    build.onResolve({ filter: /^\.\/output\.js$/ }, ({ importer }) =>
      /[/\\]ink[/\\]build[/\\]renderer\.js$/.test(importer)
        ? { path: join(import.meta.dirname, '../src/console/terminal/rows.ts') }
        : undefined,
    );
  },
};

/**
 * Characters that are one cell wide each, alone and side by side: printable ASCII, Latin, punctuation, arrows, mathematical signs, box
 * drawing, blocks and geometric shapes; as the inside of a character class. `paint/cells.ts` holds the same, and a test compares them.
 */
export const narrowCharacters =
  '\\x20-\\x7e\\xa0-\\xac\\xae-\\u02ff\\u2010-\\u2027\\u2030-\\u205e\\u2070-\\u209c\\u2190-\\u22ff\\u2500-\\u25fc';

/**
 * Start-up: string-width's patterns of Unicode take 20 to 40 ms to make, and what is measured is nearly always narrow text. So it's loaded
 * when a text has another character. The older copy inside wrap-ansi is used only where a text is wrapped.
 */
export const quickStart = {
  name: 'quick-start',
  setup(build) {
    build.onLoad({ filter: /[/\\]string-width[/\\]index\.js$/ }, ({ path, suffix }) => {
      if (suffix === '?whole' || /node_modules.*node_modules/.test(path)) return undefined;
      return {
        resolveDir: dirname(path),
        contents: `
import stripAnsi from 'strip-ansi';
const narrow = /^[${narrowCharacters}]*$/;
export default function stringWidth(text, options) {
  const plain = typeof text === 'string' && !options?.countAnsiEscapeCodes ? stripAnsi(text) : text;
  if (typeof plain === 'string' && narrow.test(plain)) return plain.length;
  return require('./index.js?whole').default(text, options);
}`,
      };
    });
    build.onResolve({ filter: /^\.\/index\.js\?whole$/ }, ({ resolveDir }) => ({
      path: join(resolveDir, 'index.js'),
      suffix: '?whole',
    }));
  },
};

/**
 * What is large or slow to load and needed seldom, by name: a module that loads it at its first call. Grids, the model of the magnetic field, and
 * what Ink wraps and cuts texts with: ours are fitted before it gets them.
 */
const seldom = {
  proj4: `export default (...given) => require('proj4').default(...given);`,
  geomagnetism: `export default { model: (...given) => require('geomagnetism').model(...given) };`,
  'wrap-ansi': `export default (...given) => require('wrap-ansi').default(...given);`,
  'cli-truncate': `export default (...given) => require('cli-truncate').default(...given);`,
};

const loadedWhenCalled = {
  name: 'loaded-when-called',
  setup(build) {
    build.onResolve(
      { filter: /^(proj4|geomagnetism|wrap-ansi|cli-truncate)$/ },
      ({ path, namespace, resolveDir }) =>
        namespace === 'seldom' ? undefined : { path, namespace: 'seldom', pluginData: resolveDir },
    );
    build.onLoad({ filter: /.*/, namespace: 'seldom' }, ({ path, pluginData }) => ({
      contents: seldom[path],
      resolveDir: pluginData,
    }));
  },
};

/** Ink loads its developer tools, which aren't shipped, when DEV is set: it awaits them at top level, which CommonJS can't. */
export const withoutDevtools = {
  name: 'without-devtools',
  setup(build) {
    edit(build, /[/\\]ink[/\\]build[/\\]reconciler\.js$/, [
      ['if (isDev()) {', 'if (false) {'],
      ['const packageJson = isDev()', 'const packageJson = false'],
    ]);
  },
};

/** Yoga, Ink's layout engine, awaits its WebAssembly at top level too: `yoga.ts` gives Ink the engine in another way. */
export const yogaWithoutAwait = {
  name: 'yoga-without-await',
  setup(build) {
    build.onResolve({ filter: /^yoga-layout$/ }, () => ({
      path: join(import.meta.dirname, '../src/console/terminal/yoga.ts'),
    }));
  },
};

/** What every bundle of the console is built with. */
export const consolePlugins = [withoutDevtools, rowsThrough, quickStart, loadedWhenCalled];

/** Replaces exact text, found once, in the one module whose path matches. */
function edit(build, filter, replacements) {
  build.onLoad({ filter }, ({ path }) => {
    if (path.lastIndexOf('node_modules') !== path.indexOf('node_modules')) return undefined;
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
