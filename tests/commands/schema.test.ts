import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { enter } from '../../src/commands/enter.ts';
import { checkSchemaFile } from '../../src/commands/schema.ts';
import { type ImportAsked, importCodeLibrary } from '../../src/commands/schema-import.ts';
import { exportSchema, type KeysAsked, schemaKeys } from '../../src/commands/schema-print.ts';
import { termination } from '../../src/commands/termination.ts';
import type { Outside } from '../../src/desk/outside.ts';
import { copyOfSample, freshFolder, hear, SAMPLE } from './support/outside.ts';

async function run(command: (outside: Outside) => Promise<number>) {
  const heard = hear();
  const code = await command(heard.outside);
  return { code, out: heard.out(), err: heard.err() };
}

const check = (file: string, against?: string) =>
  run((outside) => checkSchemaFile(outside, { folder: '.', file, against, json: false }));

/** A copy of the sample with its logging.json or project.json changed. */
function changed(file: 'logging.json' | 'project.json', change: (value: never) => void): string {
  const folder = copyOfSample();
  const path = join(folder, file);
  const value = JSON.parse(readFileSync(path, 'utf8'));
  change(value as never);
  writeFileSync(path, `${JSON.stringify(value, null, 2)}\n`);
  return folder;
}

type Logging = { extendsHash?: string; extends: string; lists: { rocks: { codes: object[] } } };
const withRocks = (...codes: readonly object[]): string =>
  changed('logging.json', (value: Logging) => value.lists.rocks.codes.push(...codes));

describe('schema check', () => {
  it('finds nothing in the sample', async () => {
    expect(await check(join(SAMPLE, 'logging.json'))).toEqual({ code: 0, out: 'Nothing found.\n', err: '' });
  });

  it('accepts the warnings of the project where it is asked to, and says them no more', async () => {
    const folder = withRocks({ code: 'NEW', label: 'new rock', look: '', provisional: true });
    const own = () => check(join(folder, 'logging.json'));
    expect((await own()).out).toContain('NEW (new rock) was added on the rig');
    const accept = { folder, file: undefined, accept: true, json: false };
    expect((await run((outside) => checkSchemaFile(outside, accept))).out).toMatch(/^\d+ accepted/);
    expect((await own()).out).toBe('Nothing found.\n');
    expect((await run((outside) => checkSchemaFile(outside, accept))).out).toMatch(/^0 accepted/);
  });

  it('gives 2 for a file that is not there', async () => {
    const { code, err } = await check('/nowhere/logging.json');
    expect(code).toBe(2);
    expect(err).toContain("it can't be read");
  });

  it('gives file, line, column, excerpt and remedy of a fault', async () => {
    const { code, out } = await check(join(withRocks({ code: 'DOL', pair: 'ba' }), 'logging.json'));
    expect(code).toBe(1);
    expect(out).toMatch(
      /fault: \S*logging\.json:\d+:\d+, list rocks, code DOL: .*\n {2}\| "pair": "ba"\n {2}\S.*\.\n/,
    );
  });

  it('finds bag numbers of the project beside it that could be a line of the log', async () => {
    const folder = changed('project.json', (value: { sampling: { numbers: { prefixes: string[] } } }) => {
      value.sampling.numbers.prefixes = ['zq'];
    });
    const { code, out } = await check(join(folder, 'logging.json'));
    expect(code).toBe(1);
    expect(out).toContain('project.json, field sampling.numbers.prefixes: bag numbers that begin with "zq"');
  });

  it('says what it changes for the rows of the holes beside it, and how many they are', async () => {
    const folder = withRocks({ code: 'BAS', label: 'andesite' });
    const { out } = await check(join(folder, 'logging.json'));
    expect(out).toMatch(
      /fault: MBRC003, list rocks, code BAS: BAS was basalt and is now andesite: \d+ rows, the first \S+, would read andesite/,
    );
    expect(out).toContain('fault: MBRC001, list rocks, code BAS');
  });

  it('says what it changes of another one, and what is new', async () => {
    const folder = withRocks(
      { code: 'TLC', label: 'soapstone', look: 'soapy' },
      { code: 'DOL', label: 'diabase' },
    );
    const { out } = await check(join(folder, 'logging.json'), join(SAMPLE, 'logging.json'));
    expect(out).toContain('note: ');
    expect(out).toContain('soapstone is new');
    expect(out).toContain('dolerite and is now diabase');
  });

  it('finds a style that changed underneath: a file edited by hand, and a starter style', async () => {
    const folder = freshFolder();
    const camp = join(folder, 'camp.json');
    const own = join(folder, 'logging.json');
    const style = { format: 1, name: 'camp', extends: 'orogenic-gold' };
    writeFileSync(camp, JSON.stringify(style));
    writeFileSync(
      own,
      `${JSON.stringify({ format: 1, name: 'own', extends: './camp.json', extendsHash: '0'.repeat(64) }, null, 2)}\n`,
    );
    const first = await check(own);
    expect(first.out).toMatch(/warning: \S*logging\.json:5:3: \S*camp\.json is not as it was/);
    const hash = /"extendsHash": "([0-9a-f]{64})" here/.exec(first.out)?.[1] ?? '';
    const agreed = { format: 1, name: 'own', extends: './camp.json', extendsHash: hash };
    writeFileSync(own, JSON.stringify(agreed));
    expect((await check(own)).out).toBe('Nothing found.\n');
    const rock = { codes: [{ code: 'TLC', label: 'soapstone', look: '' }] };
    writeFileSync(camp, JSON.stringify({ ...style, lists: { rocks: rock } }));
    expect((await check(own)).out).toContain('camp.json is not as it was');
    writeFileSync(own, JSON.stringify({ ...style, name: 'own', extendsHash: '0'.repeat(64) }));
    expect((await check(own)).out).toContain('style orogenic-gold is not as it was');
  });
});

describe('schema keys', () => {
  const keys = (more: Partial<KeysAsked> = {}) =>
    run((outside) => schemaKeys(outside, { folder: SAMPLE, width: 100, html: false, ...more }));

  it('prints what can be typed, in the width that is asked for, on one page', async () => {
    const { code, out } = await keys({ width: 80 });
    const lines = out.trimEnd().split('\n');
    expect(code).toBe(0);
    expect(out).toContain('vx vein breccia');
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(80);
    expect(lines[0]).toMatch(/^CAUTION !void: /);
    expect(lines.length).toBeLessThan(80);
  });

  it('prints a page for the sun visor', async () => {
    const { out } = await keys({ html: true });
    expect(out).toMatch(/^<!doctype html>/);
    expect(out).toContain('<dt>vx</dt><dd>vein breccia</dd>');
  });

  it('prints a blank log sheet of a hole, from the logged metre down', async () => {
    const { out } = await keys({ logSheet: 'MBRC003' });
    expect(out).toContain('<td>46–47</td>');
    expect(out).not.toContain('<td>45–46</td>');
    expect(out).toContain('<th>wet colour</th>');
  });

  it('prints a sheet of the numbered bags of a hole, blank where none are numbered', async () => {
    const { out } = await keys({ bagSheet: 'MBRC003' });
    expect(out).toContain('<td>MB000502</td><td>54–55</td><td></td>');
    const blank = await keys({ bagSheet: 'MBRC004' });
    expect(blank.out.match(/<tr><td><\/td>/g)).toHaveLength(40);
  });

  it('gives 2 for a hole that is not there', async () => {
    expect((await keys({ logSheet: 'MBRC099' })).code).toBe(2);
  });
});

describe('schema import', () => {
  const CSV = 'Code,Description,SG\nMb,mafic basalt,2.9\nUMk,komatiite flow,3\n3x,fault rock,2.6\n';
  async function take(text: string, more: Partial<ImportAsked> = {}) {
    const folder = copyOfSample();
    const file = join(folder, 'library.csv');
    writeFileSync(file, text);
    const columns = { code: 'Code', label: 'Description', densityGcm3: 'SG' } as ImportAsked['columns'];
    const asked = { folder, list: 'library', file, columns, preview: false, json: false, ...more };
    return { folder, ...(await run((outside) => importCodeLibrary(outside, asked))) };
  }
  const logging = (folder: string): string => readFileSync(join(folder, 'logging.json'), 'utf8');

  it('keeps the codes of a library, proposes their pairs, and lets a field take from it', async () => {
    const { code, out, folder } = await take(CSV, { field: 'fabric' });
    expect(code).toBe(0);
    expect(out).toMatch(/^[a-z]{2} {2}Mb {2}mafic basalt$/m);
    const { lists, fields } = JSON.parse(logging(folder));
    expect(lists.library.codes).toMatchObject([
      { code: 'Mb', label: 'mafic basalt', densityGcm3: 2.9, pair: expect.stringMatching(/^[a-z]{2}$/) },
      { code: 'UMk' },
      { code: '3x' },
    ]);
    expect(fields).toEqual([{ name: 'fabric', list: 'library' }]);
    expect((await check(join(folder, 'logging.json'))).out).toContain('field fabric: its list was fabrics');
  });

  it('changes nothing with --preview, nor where a line can’t be taken', async () => {
    const shown = await take(CSV, { preview: true });
    expect(shown.out).toContain('would have 3 codes');
    const bad = await take('Code,Description,SG\nMb,,2.9\n');
    expect([bad.code, bad.err.split('\n')[0]]).toEqual([
      1,
      expect.stringContaining('library.csv:2: Mb has no words'),
    ]);
    for (const { folder } of [shown, bad]) expect(logging(folder)).toBe(logging(SAMPLE));
  });

  it('changes nothing where the check finds a fault in what comes of it', async () => {
    const { code, err, folder } = await take('Code,Description,SG\nbas,basalt again,2.9\n', {
      list: 'rocks',
    });
    expect(code).toBe(1);
    expect(err).toContain('bas and BAS differ only in capitals');
    expect(logging(folder)).toBe(logging(SAMPLE));
  });
});

describe('schema import and dangers', () => {
  const FIELD = { list: 'ktRocks', field: 'rock' };
  async function take(text: string, more: Partial<ImportAsked> & { caution?: string } = {}) {
    const folder = copyOfSample();
    const file = join(folder, 'library.csv');
    writeFileSync(file, text);
    const columns: ImportAsked['columns'] = {
      code: 'Code',
      label: 'Name',
      ...(more.caution === undefined ? {} : { caution: more.caution }),
    } as ImportAsked['columns'];
    const asked = { folder, list: 'rocks', file, columns, preview: false, json: false, ...more };
    return { folder, ...(await run((outside) => importCodeLibrary(outside, asked))) };
  }
  const BARE = 'Code,Name\nGNE,gneiss\nSTP,old stope or void\nFAM,fibrous amphibolite\n';
  const WARNED =
    'Code,Name,Danger\nGNE,gneiss,\nSTP,old stope or void,void: Call Control on channel 6.\nNIL,nothing came up,loss of return\n' +
    'FAM,fibrous amphibolite,fibre\nCHT,chert,silica dust\n';

  it('is refused where a field could no longer say a void, a loss of return or fibre, each named with its codes', async () => {
    const { code, err, folder } = await take(BARE, FIELD);
    expect(code).toBe(1);
    for (const kind of ['void', 'loss of return', 'fibre', 'silica dust'])
      expect(err).toContain(`rock would have no code for ${kind} (it has `);
    expect(err).toContain('VOI void or old workings');
    expect(err).toContain('--caution');
    expect(readFileSync(join(folder, 'logging.json'), 'utf8')).toBe(
      readFileSync(join(SAMPLE, 'logging.json'), 'utf8'),
    );
  });

  it('takes cautions from a column, with words of their own, and a loss of return as one', async () => {
    const { code, out, folder } = await take(WARNED, { ...FIELD, caution: 'Danger' });
    expect([code, out.includes('LOOK')]).toEqual([0, false]);
    const { lists } = JSON.parse(readFileSync(join(folder, 'logging.json'), 'utf8'));
    expect(lists.ktRocks.codes).toMatchObject([
      { code: 'GNE' },
      { code: 'STP', caution: { kind: 'void', words: 'Call Control on channel 6.' } },
      { code: 'NIL', noChips: true, caution: { kind: 'other' } },
      { code: 'FAM', caution: { kind: 'fibre' } },
      { code: 'CHT', caution: { kind: 'silica dust' } },
    ]);
    expect(lists.ktRocks.codes[0]).not.toHaveProperty('caution');
  });

  it('goes on with --drop-cautions, and the check and the rules then say what can’t be logged', async () => {
    const { code, out, folder } = await take(BARE, { ...FIELD, dropCautions: true });
    expect(code).toBe(0);
    expect(out).toContain('LOOK: STP is called old stope or void and has no caution (void)');
    const checked = (await check(join(folder, 'logging.json'))).out;
    expect(checked).toContain('FAM is called fibrous amphibolite and has no caution (fibre)');
    expect(checked).toContain('no code in use has a caution that says void');
    const rules = await run((outside) =>
      termination(outside, { folder, holes: [], asThen: false, check: true, replay: false, json: false }),
    );
    expect(rules.out).toContain('it asks for voids, and no code in use has a caution that says void');
  });

  it('names new codes of the list in use that are called like a danger', async () => {
    const { code, out } = await take('Code,Name\nSTP,old stope\n');
    expect(code).toBe(0);
    expect(out).toContain('LOOK: STP is called old stope and has no caution (void)');
  });

  it('names a danger that it does not know', async () => {
    const { code, err } = await take('Code,Name,Danger\nSTP,old stope,hole\n', { caution: 'Danger' });
    expect([code, err]).toEqual([1, expect.stringContaining('STP has the caution hole; it is void, fibre')]);
  });
});

describe('schema export', () => {
  it('prints the JSON Schema of the rows of this project', async () => {
    const { out } = await run((outside) => exportSchema(outside, { folder: SAMPLE }));
    expect(JSON.parse(out).$schema).toContain('2020-12');
    expect(out).toContain('"VBR"');
  });
});

describe('a pair that logging.json gives to something else', () => {
  it('is refused from a pipe too in a hole that was logged with it, with what to type', async () => {
    const folder = withRocks(
      { code: 'BAS', pair: 'hx' },
      { code: 'TLC', label: 'soapstone', look: '', pair: 'ba' },
    );
    const heard = hear('ba\n');
    const code = await enter(heard.outside, { folder, hole: 'MBRC003', keepGoing: false });
    expect(code).toBe(1);
    expect(heard.err()).toContain('ba typed basalt in this hole, and logging.json now gives it to soapstone');
    expect(heard.err()).toContain("Say soapstone by its field: rock'TLC.");
  });
});
