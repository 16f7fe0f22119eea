// Makes src/survey/norths/epsg-table.ts from the EPSG register as the npm package epsg-index 2.0.0 (ISC) carries it:
//   npm install epsg-index (in a folder outside this one), then
//   node .ci/epsg-table.mjs <that folder>/node_modules/epsg-index/all.json
// Kept: projected systems in metres whose datum shift needs no grid file (a file this program doesn't carry would be left out of
// the sum in silence). Left out: polar and whole-world map sheets, second names of the same system for other uses, and systems
// made for one town, island or survey district (less than SMALLEST square degrees); a proj string serves for those.
// Neighbouring codes that differ only by numbers in steps (zones, meridians) are folded into one line.
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';

const source = process.argv[2];
if (source === undefined) {
  console.error('usage: node .ci/epsg-table.mjs <path of all.json in the package epsg-index>');
  process.exit(2);
}

const PROJECTIONS = new Set([
  'utm',
  'tmerc',
  'lcc',
  'somerc',
  'omerc',
  'krovak',
  'sterea',
  'poly',
  'nzmg',
  'cass',
]);
const LEFT_OUT =
  /Arctic|Antarctic|SCAR|WGS 72|\bIMW\b|NSRS2007|HARN|NAD83\(2011\)|\(PA11\)|\(MA11\)|CORS96|\(CSRS\)v[234678]|\(CSRS96\)|GSK-2011|CS20|CS63|SnakeGrid|ENTEC|\b3-degree Gauss-Kruger CM|Gauss-Kruger CM|\(N-E\)|\(E-N\)|\(zE-N\)|\(zN-E\)|FEH2010|Scoresbysund|West Greenland|DB_REF|GIGS|LCC Europe|NAD83.*(Alaska|California|Hawaii|Texas|Michigan|Wyoming|Idaho|Illinois|Nevada|Arizona|Florida|Georgia|Missouri|Mississippi|Indiana|Maine|New York|New Mexico|Oregon|WISCRS|Kansas|Iowa|North|South|Louisiana|Montana|Minnesota|Ohio|Virginia|Washington|Wisconsin|Utah|Oklahoma|Colorado|Kentucky|Tennessee|Nebraska|Arkansas|Alabama|Vermont|Delaware|Massachusetts|Connecticut|Rhode|Maryland|New Jersey|New Hampshire|Pennsylvania|Puerto|Conus|Great Lakes|BLM|Grid)/;
const SMALLEST = 8;
const NUMBER = /\d+(?:\.\d+)?/g;

const short = (proj) =>
  proj
    .replace(/\+title=\S+ | \+units=m| \+no_defs| \+type=crs| \+wktext/g, '')
    .replace(' +towgs84=0,0,0,0,0,0,0', '')
    // proj4 has this ellipsoid under another name, and takes WGS 84 for a name it does not know.
    .replace('+ellps=WGS72', '+a=6378135 +rf=298.26')
    .replace(/ \+([xy]_0|lat_0)=0(?= |$)/g, (zero) => (proj.startsWith('+proj=tmerc') ? '' : zero));

/** Size of an area of use `[north, west, south, east]`, degrees × degrees; an area may cross the date line. */
const squareDegrees = ([north, west, south, east]) =>
  (north - south) * (east < west ? east - west + 360 : east - west);

const rows = Object.values(JSON.parse(readFileSync(source, 'utf8')))
  .filter((one) => one.kind === 'CRS-PROJCRS' && one.unit === 'metre' && one.proj4 !== null)
  .filter(
    (one) =>
      PROJECTIONS.has(/\+proj=(\w+)/.exec(one.proj4)?.[1]) &&
      !/nadgrids|to_meter|\+units=(?!m )/.test(one.proj4),
  )
  .filter((one) => !LEFT_OUT.test(one.name) && squareDegrees(one.bbox) >= SMALLEST)
  .map((one) => ({ code: Number(one.code), name: one.name, proj: short(one.proj4) }))
  .sort((a, b) => a.code - b.code);

const textOf = (row) => `${row.name}|${row.proj}`;
const skeleton = (row) => textOf(row).replace(NUMBER, '#');
const numbers = (row) => (textOf(row).match(NUMBER) ?? []).map(Number);

/** True where every number that changes is written as a number is (`0`, not `00`), so that it can be counted up and written again. */
function stepsPlainly(row, next) {
  const before = textOf(row).match(NUMBER) ?? [];
  const after = textOf(next).match(NUMBER) ?? [];
  return before.every(
    (text, i) => text === after[i] || [text, after[i]].every((one) => String(Number(one)) === one),
  );
}

/** True where `next` goes on in the steps that the first two rows of a run set. */
function goesOn(run, next) {
  const last = run[run.length - 1];
  if (next.code !== last.code + 1 || skeleton(next) !== skeleton(last)) return false;
  if (!stepsPlainly(last, next)) return false;
  if (run.length === 1) return true;
  const [a, b, c, d] = [run[0], run[1], last, next].map(numbers);
  return a.every((_, i) => Math.abs(b[i] - a[i] - (d[i] - c[i])) < 1e-12);
}

const runs = [];
for (const row of rows) {
  const run = runs[runs.length - 1];
  if (run !== undefined && goesOn(run, row)) run.push(row);
  else runs.push([row]);
}

/** One line: `first code[xcount]|name|proj`, a number that steps written `{first:step}`. */
function line(run) {
  const [first, second] = run;
  if (second === undefined) return `${first.code}|${textOf(first)}`;
  const steps = numbers(first).map((value, i) => numbers(second)[i] - value);
  let index = 0;
  const text = textOf(first).replace(NUMBER, (shown) => {
    const step = steps[index++];
    return step === 0 ? shown : `{${Number(shown)}:${step}}`;
  });
  return `${first.code}x${run.length}|${text}`;
}

/** The ellipsoid and datum shift at the end of a proj string, said once for all systems on them. */
const DATUM = /\+(?:ellps|datum|a)=.*$/;
const whole = runs.map(line);
const datums = [...new Set(whole.map((text) => DATUM.exec(text)?.[0]).filter((text) => text !== undefined))];
const lines = whole.map((text) => text.replace(DATUM, (datum) => `@${datums.indexOf(datum)}`));
const body = lines.join('\n');
const below = `export const EPSG_TABLE = \`${body}\`;

/** Ellipsoids and datum shifts of the systems above, as proj strings. */
export const EPSG_DATUMS = \`${datums.join('\n')}\`;
`;
writeFileSync(
  join(resolve(import.meta.dirname, '..'), 'src', 'survey', 'norths', 'epsg-table.ts'),
  `/**
 * Projected systems of the EPSG register, made by .ci/epsg-table.mjs: not edited by hand. One line a system or a run of them,
 * \`first code[xcount]|name|proj\`; \`{first:step}\` is a number that grows by a step with each code of the run, and \`@n\` the
 * n-th line of the datums, from 0.
 *
 * SHA-256 of all below this comment: ${createHash('sha256').update(below).digest('hex')}
 */
${below}`,
);
console.log(
  `${rows.length} systems in ${lines.length} lines, ${body.length + datums.join('\n').length} bytes`,
);
