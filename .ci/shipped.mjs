// What is in the bundles: the licence texts of every package, and a bill of materials. Both are written beside the bundles by the build.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Names of the two files, in the folder of the bundles. */
export const LICENCES = 'THIRD-PARTY-LICENCES.txt';
export const BILL = 'bom.cdx.json';

const LICENCE_FILE = /^(licen[cs]e|copying|notice)/i;
const read = (...path) => readFileSync(join(...path), 'utf8');
const json = (...path) => JSON.parse(read(...path));

/** Places in the lock file (`node_modules/ink`) of the packages of which something is in the bundles, in order. */
export function packagesIn(metafile) {
  const files = Object.values(metafile.outputs).flatMap((output) => Object.keys(output.inputs));
  const places = files.flatMap((file) => /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(file)?.[1] ?? []);
  return [...new Set(places)].sort();
}

/** Licence and notice of each package as it came with it; for one that came without, the text in .ci/licences. Throws where there is none. */
export function licencesText(top, places) {
  const parts = places.map((place) => {
    const { name, version, license } = json(top, place, 'package.json');
    const own = readdirSync(join(top, place))
      .filter((file) => LICENCE_FILE.test(file))
      .sort();
    const texts = own.map((file) => read(top, place, file));
    const added = join(top, '.ci', 'licences', `${name}.txt`);
    if (texts.length === 0 && existsSync(added)) texts.push(readFileSync(added, 'utf8'));
    if (texts.length === 0)
      throw new Error(`${place} comes without its licence: add .ci/licences/${name}.txt`);
    return part(`${name} ${version} (${license})`, texts);
  });
  // Its data is in a source file of ours and not in its own package.
  const data = part('Table of grids, from the EPSG register as epsg-index 2.0.0 carries it (ISC)', [
    read(top, '.ci', 'licences', 'epsg-index.txt'),
  ]);
  return `offsider contains the following, each under its own licence.\n\n${[...parts, data].join('\n')}`;
}

function part(heading, texts) {
  const plain = texts.map((text) => text.replaceAll('\r\n', '\n').trim());
  return `${'='.repeat(80)}\n${heading}\n\n${plain.join('\n\n')}\n`;
}

/**
 * The bill of materials in CycloneDX 1.6, from the lock file: every package with its version, licence and hash, what depends on what, and
 * whether it is in the bundles (`required`) or only builds and tests them (`excluded`). No time and no number of its own: the same lock file
 * gives the same bytes.
 */
export function billOfMaterials(top, bundled) {
  const { packages } = json(top, 'package-lock.json');
  const { name, version, license } = json(top, 'package.json');
  const places = Object.keys(packages)
    .filter((place) => place !== '')
    .sort();
  const self = {
    type: 'application',
    'bom-ref': name,
    name,
    version,
    licenses: licencesOf(license),
    purl: `pkg:npm/${name}@${version}`,
  };
  const isIn = new Set(bundled);
  const bill = {
    $schema: 'http://cyclonedx.org/schema/bom-1.6.schema.json',
    bomFormat: 'CycloneDX',
    specVersion: '1.6',
    version: 1,
    metadata: { component: self },
    components: places.map((place) => component(place, packages[place], isIn.has(place))),
    dependencies: [
      { ref: name, dependsOn: needs(packages, '') },
      ...places.map((place) => ({ ref: place, dependsOn: needs(packages, place) })),
    ],
  };
  return `${JSON.stringify(bill, null, 1)}\n`;
}

function component(place, { version, license, integrity, resolved }, isIn) {
  const full = place.slice(place.lastIndexOf('node_modules/') + 'node_modules/'.length);
  const [group, name] = full.startsWith('@') ? full.split('/') : [undefined, full];
  if (!integrity?.startsWith('sha512-')) throw new Error(`${place} is locked without a SHA-512`);
  return {
    type: 'library',
    'bom-ref': place,
    ...(group === undefined ? {} : { group }),
    name,
    version,
    scope: isIn ? 'required' : 'excluded',
    hashes: [
      { alg: 'SHA-512', content: Buffer.from(integrity.slice('sha512-'.length), 'base64').toString('hex') },
    ],
    ...(license === undefined ? {} : { licenses: licencesOf(license) }),
    purl: `pkg:npm/${group === undefined ? '' : `${encodeURIComponent(group)}/`}${name}@${version}`,
    ...(resolved === undefined ? {} : { externalReferences: [{ type: 'distribution', url: resolved }] }),
  };
}

/** A single identifier of SPDX, or an expression of several. */
function licencesOf(text) {
  return /^[\w.+-]+$/.test(text) ? [{ license: { id: text } }] : [{ expression: text }];
}

/** Places of the packages that one uses, found as Node finds them: in its own node_modules, then in those above. */
function needs(packages, place) {
  const {
    dependencies = {},
    devDependencies = {},
    optionalDependencies = {},
    peerDependencies = {},
  } = packages[place];
  const names = Object.keys({
    ...dependencies,
    ...optionalDependencies,
    ...peerDependencies,
    ...(place === '' ? devDependencies : {}),
  });
  return [...new Set(names.flatMap((name) => placeFrom(packages, place, name)))].sort();
}

function placeFrom(packages, from, name) {
  for (let at = from; ; ) {
    const candidate = `${at === '' ? '' : `${at}/`}node_modules/${name}`;
    if (candidate in packages) return [candidate];
    // An optional package for another platform is in no place.
    if (at === '') return [];
    at = at.slice(0, Math.max(0, at.lastIndexOf('/node_modules/')));
  }
}
