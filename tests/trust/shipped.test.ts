import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { build } from 'esbuild';
import { beforeAll, describe, expect, it } from 'vitest';
import { bundleOptions } from '../../.ci/bundle-options.mjs';
import { BILL, billOfMaterials, LICENCES, licencesText, packagesIn } from '../../.ci/shipped.mjs';
import { freshFolder } from '../commands/support/outside.ts';

const TOP = join(import.meta.dirname, '../..');
const read = <T>(file: string): T => JSON.parse(readFileSync(join(TOP, file), 'utf8')) as T;

interface Bill {
  readonly components: readonly {
    readonly 'bom-ref': string;
    readonly scope: string;
    readonly purl: string;
    readonly hashes: readonly { readonly content: string }[];
    readonly licenses?: unknown;
  }[];
  readonly dependencies: readonly { readonly ref: string; readonly dependsOn: readonly string[] }[];
}

describe('beside the bundles', () => {
  let places: readonly string[];
  beforeAll(async () => {
    const options = {
      ...bundleOptions('unwritten'),
      absWorkingDir: TOP,
      write: false,
      metafile: true,
    } as const;
    places = packagesIn((await build(options)).metafile);
  });

  it('stands the licence of every package that is in them, with whom it is from', () => {
    const text = licencesText(TOP, places);
    expect(places.length).toBeGreaterThan(40);
    for (const place of places) {
      const { name, version } = read<{ readonly name: string; readonly version: string }>(
        join(place, 'package.json'),
      );
      const from = text.indexOf(`\n${name} ${version} (`);
      expect(from, place).toBeGreaterThan(0);
      const until = text.indexOf('='.repeat(80), from);
      const licence = text.slice(from, until);
      expect(licence, place).toMatch(/Copyright|\(c\)/i);
      expect(licence, place).toMatch(/permission|Apache License|licensed under/i);
    }
    for (const word of ['Apache License', 'Meta Platforms', 'epsg-index']) expect(text).toContain(word);
  });

  it('is refused where a package comes without its licence and none is kept for it', () => {
    const top = freshFolder();
    mkdirSync(join(top, 'node_modules/quiet'), { recursive: true });
    writeFileSync(join(top, 'node_modules/quiet/package.json'), '{ "name": "quiet", "version": "1.0.0" }');
    expect(() => licencesText(top, ['node_modules/quiet'])).toThrow(
      'node_modules/quiet comes without its licence',
    );
  });

  it('stands a bill of materials as CycloneDX 1.6 has it, every package of the lock file in it with its hash', () => {
    const text = billOfMaterials(TOP, places);
    expect(billOfMaterials(TOP, places)).toBe(text);
    const bill = JSON.parse(text) as Bill;
    const ajv = new Ajv({ strict: false, allErrors: true, validateFormats: false });
    const fits = ajv.compile(read<object>('tests/published/cyclonedx-1.6.schema.json'));
    expect(fits(bill), JSON.stringify(fits.errors?.slice(0, 3))).toBe(true);
    expect(fits({ ...bill, specVersion: 16 })).toBe(false);
    expect(fits({ ...bill, components: [{ name: 'x' }] })).toBe(false);
    const { packages } = read<{
      readonly packages: Readonly<Record<string, { readonly integrity?: string; readonly version: string }>>;
    }>('package-lock.json');
    const locked = Object.entries(packages).filter(([place]) => place !== '');
    expect(bill.components.map((each) => each['bom-ref']).sort()).toEqual(
      locked.map(([place]) => place).sort(),
    );
    for (const { 'bom-ref': place, hashes, purl } of bill.components) {
      const { integrity, version } = packages[place] ?? {};
      expect(`sha512-${Buffer.from(hashes[0]?.content ?? '', 'hex').toString('base64')}`).toBe(integrity);
      expect(purl).toMatch(/^pkg:npm\/(%40[\w.-]+\/)?[\w.-]+@[\w.+-]+$/);
      expect(purl.endsWith(`@${version}`)).toBe(true);
    }
  });

  it('the bill says which packages are in the bundles, and names what each uses by a package that it lists', () => {
    const bill = JSON.parse(billOfMaterials(TOP, places)) as Bill;
    const required = bill.components.filter((each) => each.scope === 'required');
    expect(required.map((each) => each['bom-ref'])).toEqual(places);
    expect(required.filter((each) => each.licenses === undefined)).toEqual([]);
    const listed = new Set(['offsider', ...bill.components.map((each) => each['bom-ref'])]);
    for (const { ref, dependsOn } of bill.dependencies)
      for (const each of [ref, ...dependsOn]) expect(listed.has(each), each).toBe(true);
    const wrap = bill.dependencies.find(({ ref }) => ref === 'node_modules/wrap-ansi');
    // The nearest copy counts, as Node finds it.
    expect(wrap?.dependsOn).toContain('node_modules/wrap-ansi/node_modules/string-width');
  });

  it('both go with the tarball, for they lie in a folder that it takes', () => {
    expect(read<{ readonly files: readonly string[] }>('package.json').files).toContain('dist');
    const config = readFileSync(join(TOP, 'esbuild.config.mjs'), 'utf8');
    expect(config).toContain("join('dist', LICENCES)");
    expect(config).toContain("join('dist', BILL)");
    expect([LICENCES, BILL]).toEqual(['THIRD-PARTY-LICENCES.txt', 'bom.cdx.json']);
  });
});
