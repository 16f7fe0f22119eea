import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkSchemaFile } from '../../src/commands/schema.ts';
import { type ProposeAsked, proposeForSchema } from '../../src/commands/schema-propose.ts';
import { copyOfSample, freshFolder, hear } from './support/outside.ts';

async function propose(asked: Partial<ProposeAsked>) {
  const heard = hear();
  const none = { folder: '.', again: false, keys: false, write: false, print: false, json: false };
  const code = await proposeForSchema(heard.outside, { ...none, ...asked });
  return { code, out: heard.out(), err: heard.err() };
}

/** A copy of the sample with two rocks that nothing types yet. */
function withRocks(): string {
  const folder = copyOfSample();
  const path = join(folder, 'logging.json');
  const value = JSON.parse(readFileSync(path, 'utf8'));
  value.lists.rocks.codes.push(
    { code: 'PYX', label: 'pyroxenite', look: 'dark' },
    { code: 'DUN', label: 'dunite', look: 'green' },
  );
  writeFileSync(path, `${JSON.stringify(value, null, 2)}\n`);
  return folder;
}

describe('a project with lists of two styles', () => {
  /** Porphyry that takes the sulphides of the massive sulphide style and the vein textures of the epithermal one. */
  function ofTwoStyles(): string {
    const file = join(freshFolder(), 'mixed.json');
    const veinTextures = { name: 'veintexture', label: 'vein textures', kind: 'codes', list: 'veinTextures' };
    const said = { required: false, carry: true, unsaid: 'not observed', canBeNone: true };
    const value = {
      format: 1,
      name: 'mixed',
      extends: 'porphyry-copper-gold',
      fields: [{ ...veinTextures, ...said }],
      lists: {
        sulphides: { from: 'volcanic-massive-sulphide' },
        veinTextures: { from: 'epithermal-gold-silver' },
      },
    };
    writeFileSync(file, JSON.stringify(value, null, 2));
    return file;
  }
  async function checked(file: string): Promise<string> {
    const heard = hear();
    await checkSchemaFile(heard.outside, { folder: '.', file, json: false });
    return heard.out();
  }

  it('has each clash named with the style that it came from, at the line that takes the list', async () => {
    const out = await checked(ofTwoStyles());
    expect(out).toMatch(
      /fault: \S*mixed\.json:\d+:\d+, list sulphides: ch types chalcopyrite \(sulphides of volcanic-massive-sulphide\), and chlorite too\n {2}\| "from": "volcanic-massive-sulphide"\n {2}Let offsider schema propose choose other strokes for the codes of sulphides that clash/,
    );
    expect(out).toContain('cockade (veinTextures of epithermal-gold-silver)');
  });

  it('is whole after a proposal: only what was taken moves', async () => {
    const file = ofTwoStyles();
    const { out } = await propose({ file, print: true });
    const strokes = JSON.parse(out) as { lists: object; fields: readonly object[] };
    expect(Object.keys(strokes.lists)).toEqual(['sulphides', 'veinTextures']);
    expect(strokes.fields).toHaveLength(1);
    writeFileSync(file, out);
    expect(await checked(file)).toContain('0 faults');
    expect((await propose({ file, again: true, apart: true, lists: ['sulphides'] })).code).toBe(0);
  });
});

describe('schema propose', () => {
  it('gives what has no pair one, with why, and changes nothing unasked', async () => {
    const folder = withRocks();
    const before = readFileSync(join(folder, 'logging.json'), 'utf8');
    const { code, out } = await propose({ folder });
    expect(code).toBe(0);
    expect(out).toMatch(/^\w\w {2}pyroxenite: /m);
    expect(out).toMatch(/^\w\w {2}dunite: /m);
    expect(out).toMatch(/Of \d+ pairs \d+ begin with the first letter of their term/);
    expect(out).toContain('Nothing was changed: --write puts them into logging.json.');
    expect(readFileSync(join(folder, 'logging.json'), 'utf8')).toBe(before);
  });

  it('writes them into logging.json where it is asked to', async () => {
    const folder = withRocks();
    expect((await propose({ folder, write: true })).code).toBe(0);
    const { lists } = JSON.parse(readFileSync(join(folder, 'logging.json'), 'utf8'));
    for (const code of ['PYX', 'DUN'])
      expect(lists.rocks.codes.find((each: { code: string }) => each.code === code).pair).toMatch(
        /^[a-z]{2}$/,
      );
    expect((await propose({ folder })).out).toContain('Nothing to propose');
  });

  it('never moves what the holes of the project were logged with', async () => {
    const { out } = await propose({ folder: copyOfSample(), again: true, json: true });
    const { chosen } = JSON.parse(out) as { chosen: readonly { was?: string; part: { code?: string } }[] };
    expect(chosen.length).toBeGreaterThan(10);
    // Basalt and pyrite are in the rows of the sample.
    expect(chosen.map(({ part }) => part.code)).not.toContain('BAS');
    expect(chosen.map(({ part }) => part.code)).not.toContain('PYR');
  });

  it('prints a style with better pairs in it, or of one list alone', async () => {
    const { out } = await propose({ file: 'orogenic-gold', again: true, lists: ['colours'], print: true });
    expect(JSON.parse(out).name).toBe('orogenic-gold');
    expect((await propose({ file: 'orogenic-gold', lists: ['stones'] })).err).toContain(
      'no list is called stones',
    );
    expect((await propose({ file: 'orogenic-gold', write: true })).code).toBe(2);
  });
});
