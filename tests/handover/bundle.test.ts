import { describe, expect, it } from 'vitest';
import { inflateExactly } from '../../src/files/inflate.ts';
import { makeBundle } from '../../src/handover/bundle/make-bundle.ts';
import type { Manifest } from '../../src/handover/bundle/manifest.ts';
import { bundleName } from '../../src/handover/bundle/names.ts';
import { bundleFaults, openBundle, otherProject } from '../../src/handover/bundle/open-bundle.ts';
import { writeZip } from '../../src/handover/zip/write-zip.ts';
import type { Stamp } from '../../src/quantity/stamp.ts';

const AT = '2026-03-14T16:05:10+08:00' as Stamp;
const SENDER = { project: 'Mulgara Bend', replica: 'k3f9', by: 'NOK', at: AT };
const text = (words: string): Uint8Array => new TextEncoder().encode(words);
const FILES = [
  { file: 'project.json', bytes: text('{}') },
  { file: 'holes/ZQRC001.json', bytes: text('{"kind":"hole"}') },
];

/** What is found in a bundle when its files or its manifest are other than they were packed. */
function found(
  change: (manifest: Manifest) => Manifest,
  files: readonly { readonly file: string; readonly bytes: Uint8Array }[] = FILES,
  at = AT,
): readonly string[] {
  const manifest = change(makeBundle(SENDER, FILES).manifest);
  const entries = files.map(({ file: name, bytes }) => ({ name, bytes }));
  const zip = writeZip([{ name: 'manifest.json', bytes: text(JSON.stringify(manifest)) }, ...entries], at);
  const opened = openBundle(zip, 'in.zip', inflateExactly);
  if (!opened.ok) return opened.findings.map((each) => each.problem);
  return bundleFaults(opened.value, manifest, 'in.zip').map(
    ({ place, problem }) => `${place.thing ?? 'in.zip'}: ${problem}`,
  );
}
const asItIs = (manifest: Manifest): Manifest => manifest;

describe('a bundle', () => {
  it('is the same bytes for the same files, sender and time, on every machine', () => {
    const [first, second] = [makeBundle(SENDER, FILES), makeBundle(SENDER, FILES)];
    expect(Buffer.from(first.bytes).equals(second.bytes)).toBe(true);
    expect(first.sha256).toBe('e3e85927995b6f855218ac642cd2e29f1a3eefcf92283bb62e241b464fe26738');
  });

  it('opens again to the files that were packed, and to no fault', () => {
    const { bytes, manifest } = makeBundle(SENDER, FILES);
    const opened = openBundle(bytes, 'in.zip', inflateExactly);
    if (!opened.ok) return expect.fail('it does not open');
    expect(JSON.parse(new TextDecoder().decode(opened.value.manifest.bytes))).toEqual(manifest);
    expect(opened.value.files.map((each) => [each.name, new TextDecoder().decode(each.bytes)])).toEqual([
      ['project.json', '{}'],
      ['holes/ZQRC001.json', '{"kind":"hole"}'],
    ]);
    expect(bundleFaults(opened.value, manifest, 'in.zip')).toEqual([]);
  });

  it('says of each document how long its history is and which entry is its last', () => {
    const document = { kind: 'hole', id: 'ZQRC001', tables: {}, history: [{ hash: 'ab' }, { hash: 'cd' }] };
    const [, hole] = makeBundle(SENDER, [FILES[0]!, { ...FILES[1]!, document: document as never }]).manifest
      .files;
    expect(hole).toMatchObject({ entries: 2, head: 'cd' });
  });

  it('is named by project, wall clock and the start of its SHA-256, in letters that every mail and disk takes', () => {
    expect(bundleName('Mulgara Bend', AT, 'abcdef0123')).toBe('MULGARA-BEND_2026-03-14_1605_ABCDEF01');
    expect(bundleName('Östra Ån 2/3', AT, 'abcdef0123')).toBe('OSTRA-AN-2-3_2026-03-14_1605_ABCDEF01');
    expect(bundleName('輝石\r\n..', AT, 'abcdef0123')).toBe('PROJECT_2026-03-14_1605_ABCDEF01');
  });
});

describe('a bundle that is not as it was packed', () => {
  it('is told by file: another content, of the same length or not', () => {
    const swapped = [FILES[0]!, { ...FILES[1]!, bytes: text('{"kind":"HOLE"}') }];
    expect(found(asItIs, swapped)).toEqual([
      'holes/ZQRC001.json: it is not what was packed: its SHA-256 differs',
    ]);
    expect(found(asItIs, [{ ...FILES[0]!, bytes: text('{ }') }, FILES[1]!])).toHaveLength(1);
  });

  it('is told where a file is lost, added, renamed or in another order', () => {
    const names = ['in.zip: its files are not those that its manifest names'];
    expect(found(asItIs, FILES.slice(1))).toEqual(names);
    expect(found(asItIs, [...FILES, { file: 'logging.json', bytes: text('{}') }])).toEqual(names);
    expect(found(asItIs, [FILES[0]!, { ...FILES[1]!, file: 'holes/ZQRC002.json' }])).toEqual(names);
    expect(found(asItIs, [...FILES].reverse())).toEqual(names);
    expect(found((manifest) => ({ ...manifest, files: [] }))).toEqual(names);
  });

  it('is told where the archive is of another time than its manifest', () => {
    const late = '2026-03-14T16:05:12+08:00' as Stamp;
    expect(found(asItIs, FILES, late)).toEqual([
      'in.zip: its files are not of the time that its manifest says',
    ]);
  });

  it('is no bundle without a manifest in front', () => {
    const zip = writeZip([{ name: 'project.json', bytes: text('{}') }], AT);
    const opened = openBundle(zip, 'in.zip', inflateExactly);
    expect(opened.ok ? [] : opened.findings[0]?.problem).toContain('its first file is not manifest.json');
    expect(openBundle(writeZip([], AT), 'in.zip', inflateExactly).ok).toBe(false);
  });
});

it('is told when a bundle is of another project, by name', () => {
  const { manifest } = makeBundle(SENDER, FILES);
  expect(otherProject(manifest, 'Mulgara Bend', 'in.zip')).toBeUndefined();
  expect(otherProject(manifest, 'Mulgara West', 'in.zip')?.problem).toBe(
    'it is of the project Mulgara Bend; this one is Mulgara West',
  );
});
