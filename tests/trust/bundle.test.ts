import { readFileSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import { join } from 'node:path';
import { build, type Metafile } from 'esbuild';
import { beforeAll, describe, expect, it } from 'vitest';
import { bundleOptions } from '../../.ci/bundle-options.mjs';

const TOP = join(import.meta.dirname, '../..');

interface Locked {
  readonly version?: string;
  readonly integrity?: string;
  readonly resolved?: string;
  readonly hasInstallScript?: boolean;
}
interface Manifest {
  readonly [section: string]: unknown;
  readonly devDependencies: Readonly<Record<string, string>>;
  readonly scripts: Readonly<Record<string, string>>;
  readonly files: readonly string[];
}

const read = <T>(file: string): T => JSON.parse(readFileSync(join(TOP, file), 'utf8')) as T;
const manifest = read<Manifest>('package.json');
const lock = read<{ readonly packages: Readonly<Record<string, Locked>> }>('package-lock.json').packages;

/** The place in the lock file of the package that a bundled file is of: `node_modules/ink/node_modules/x`. */
const packageOf = (file: string): string | undefined =>
  /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(file)?.[1];

describe('what is shipped', () => {
  let meta: Metafile;
  let bundled: readonly string[];
  beforeAll(async () => {
    const options = {
      ...bundleOptions('unwritten'),
      absWorkingDir: TOP,
      write: false,
      metafile: true,
    } as const;
    meta = (await build(options)).metafile;
    bundled = [...new Set(Object.keys(meta.inputs).flatMap((file) => packageOf(file) ?? []))];
    expect(bundled.length).toBeGreaterThan(10);
  });

  it('asks for nothing to be installed: it imports what Node itself has, and its own parts', () => {
    const imports = Object.values(meta.outputs).flatMap((output) => output.imports);
    const outside = imports.filter((each) => each.external === true).map((each) => each.path);
    expect(outside.length).toBeGreaterThan(3);
    expect(outside.filter((path) => !isBuiltin(path))).toEqual([]);
    for (const section of ['dependencies', 'optionalDependencies', 'peerDependencies', 'bundleDependencies'])
      expect(manifest[section], section).toBeUndefined();
  });

  it('carries no messages in other languages: with `import { z }` all of them came along, 355 kB', () => {
    const languages = Object.values(meta.outputs)
      .flatMap((output) => Object.entries(output.inputs))
      .filter(([file, { bytesInOutput }]) => file.includes('/zod/v4/locales/') && bytesInOutput > 0)
      .map(([file]) => file.slice(file.lastIndexOf('/') + 1))
      // What is left of the list of them, which is empty.
      .filter((file) => file !== 'index.js');
    expect(languages).toEqual(['en.js']);
  });

  it('runs nothing when it is installed, and neither does anything that is bundled in it', () => {
    for (const script of ['preinstall', 'install', 'postinstall', 'prepare'])
      expect(manifest.scripts[script], script).toBeUndefined();
    const running = bundled.filter((place) => lock[place]?.hasInstallScript === true);
    expect(running).toEqual([]);
    for (const place of bundled) {
      const { scripts } = read<{ readonly scripts?: Readonly<Record<string, string>> }>(
        join(place, 'package.json'),
      );
      for (const script of ['preinstall', 'install', 'postinstall'])
        expect(scripts?.[script], `${place}: ${script}`).toBeUndefined();
    }
  });

  it('is made of exactly the packages of the lock file: each pinned, with the hash of what is fetched', () => {
    for (const [name, asked] of Object.entries(manifest.devDependencies)) {
      expect(asked, name).toMatch(/^\d+\.\d+\.\d+(-[\w.]+)?$/);
      expect(lock[`node_modules/${name}`]?.version, name).toBe(asked);
    }
    for (const [place, { version, integrity }] of Object.entries(lock))
      if (place !== '') expect(`${version} ${integrity}`, place).toMatch(/^\S+ sha512-/);
    for (const place of bundled)
      expect(lock[place]?.version, place).toBe(
        read<{ readonly version: string }>(join(place, 'package.json')).version,
      );
  });

  it('runs nothing of mails, archives, grids and the magnetic field with the console: they’re loaded when called for', () => {
    /** The packages of which something runs when this source is imported. */
    const packagesOf = (entry: string): readonly string[] => {
      const loaded = new Set<string>();
      const load = (file: string): void => {
        if (loaded.has(file)) return;
        loaded.add(file);
        for (const { path, kind } of meta.inputs[file]?.imports ?? [])
          if (kind === 'import-statement') load(path);
      };
      load(entry);
      return [...loaded].flatMap((file) => packageOf(file) ?? []);
    };
    const ofMail = ['node_modules/nodemailer', 'node_modules/postal-mime', 'node_modules/fflate'];
    expect(packagesOf('src/desk/packing/pack.ts')).toEqual(
      expect.arrayContaining(['node_modules/nodemailer', 'node_modules/fflate']),
    );
    expect(packagesOf('src/commands/camp.ts')).toContain('node_modules/postal-mime');
    for (const entry of ['src/cli.ts', 'src/console/terminal/start.tsx', 'src/commands/enter.ts']) {
      const packages = packagesOf(entry);
      expect(packages.length, entry).toBeGreaterThan(0);
      const later = [...ofMail, 'node_modules/proj4', 'node_modules/geomagnetism'];
      expect(
        packages.filter((each) => later.includes(each)),
        entry,
      ).toEqual([]);
    }
  });
});
