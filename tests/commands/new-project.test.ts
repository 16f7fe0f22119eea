import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { check } from '../../src/commands/check.ts';
import { holes } from '../../src/commands/holes.ts';
import { listStyles, newProject } from '../../src/commands/new-project.ts';
import { schemasForEditor } from '../../src/commands/schema-editor.ts';
import { termination } from '../../src/commands/termination.ts';
import { makeFiles } from '../../src/files/make-files.ts';
import { realDisk } from '../../src/files/real-disk.ts';
import { USUAL_CAUTIONS } from '../../src/project/cautions.ts';
import { styleHash } from '../../src/schema/read/chain.ts';
import { STYLES } from '../../src/schema/styles/index.ts';
import { OROGENIC_GOLD_RULES } from '../../src/termination/rules/starter/orogenic-gold.ts';
import { starterRules } from '../../src/termination/rules/starter-rules.ts';
import { afterPowerCut, newMedium } from '../faults/medium.ts';
import { recordingDisk } from '../faults/recording-disk.ts';
import { cutsFor, seededNumbers } from '../faults/runs.ts';
import { freshFolder, hear, SAMPLE } from './support/outside.ts';

const PROGRAM = join(SAMPLE, 'program.csv');

async function start(
  more: Partial<Parameters<typeof newProject>[1]> = {},
  folder = join(freshFolder(), 'flat'),
) {
  const heard = hear();
  const code = await newProject(heard.outside, { folder, style: 'orogenic-gold', keepGoing: false, ...more });
  return { code, folder, out: heard.out(), err: heard.err() };
}

describe('a new project', () => {
  it('starts from a style with the holes of a program, and opens at once', async () => {
    const { code, folder, err } = await start({ program: PROGRAM, epsg: 7851 });
    expect([code, err]).toEqual([0, '']);
    const heard = hear();
    expect(await holes(heard.outside, { folder, json: true })).toBe(0);
    const listed = JSON.parse(heard.out());
    expect(listed).toHaveLength(7);
    expect(listed[0]).toMatchObject({
      name: 'MBRC001',
      state: 'planned',
      plannedM: 150,
      azimuthNorth: 'grid',
    });
    const logging = JSON.parse(readFileSync(join(folder, 'logging.json'), 'utf8'));
    expect(logging).toMatchObject({ extends: 'orogenic-gold', extendsHash: styleHash('orogenic-gold') });
  });

  it('of a style has its termination rules and the controls that its log asks for', async () => {
    const { code, folder } = await start({ style: 'porphyry-copper-gold' });
    expect(code).toBe(0);
    const project = JSON.parse(readFileSync(join(folder, 'project.json'), 'utf8'));
    expect(project.termination.rules).toEqual(starterRules('porphyry-copper-gold'));
    expect(project.sampling.controls.onDemand).toMatchObject([{ kind: 'blank' }]);
    const gold = await start();
    const first = JSON.parse(readFileSync(join(gold.folder, 'project.json'), 'utf8'));
    expect(first.termination.rules).toEqual(OROGENIC_GOLD_RULES);
    expect(first.sampling.controls.onDemand).toEqual([]);
  });

  it('can be chosen from the styles, each set apart in a line', async () => {
    const heard = hear();
    expect(await listStyles(heard.outside)).toBe(0);
    const lines = heard.out().trimEnd().split('\n');
    expect(lines.filter((line) => !line.startsWith(' '))).toEqual(Object.keys(STYLES));
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(80);
    expect(heard.out()).toContain('veins by generation');
  });

  it('starts with the usual cautions, and is told to add the site’s own', async () => {
    const { folder, out } = await start();
    const project = JSON.parse(readFileSync(join(folder, 'project.json'), 'utf8'));
    expect(project.hazards.cautions).toEqual(USUAL_CAUTIONS);
    expect(out).toContain("add the site's own cautions (hazards.cautions)");
  });

  it('is told that its void rule names no one to call, by new, by the check and by the check of the rules', async () => {
    const { folder, out } = await start();
    expect(out).toContain('Say whom to call: the rule void (termination.rules) names no one yet');
    const said = '"void" says to call and names no person, number or channel';
    const whole = hear();
    await check(whole.outside, { folder, json: false });
    expect(whole.out()).toContain(said);
    const asked = { holes: [], asThen: false, check: true, replay: false, json: false };
    const rules = hear();
    await termination(rules.outside, { folder, ...asked });
    expect(rules.out()).toContain(said);
    const path = join(folder, 'project.json');
    const project = JSON.parse(readFileSync(path, 'utf8'));
    for (const rule of project.termination.rules)
      if (rule.name === 'void') rule.call = 'the site manager, channel 4';
    writeFileSync(path, JSON.stringify(project));
    const named = hear();
    await termination(named.outside, { folder, ...asked });
    expect(named.out()).not.toContain(said);
  });

  it('has files whose $schema is in its own folder, so that an editor checks them with no network', async () => {
    const { folder } = await start({ program: PROGRAM, epsg: 7851 });
    const files = ['project.json', 'logging.json', 'holes/MBRC001.json'];
    for (const file of files) {
      const path = join(folder, file);
      const value = JSON.parse(readFileSync(path, 'utf8'));
      const schema = join(dirname(path), value.$schema);
      expect(relative(folder, schema)).toMatch(/^schemas\/\w+\.schema\.json$/);
      const isValid = new Ajv2020({ strict: false, validateFormats: false }).compile(
        JSON.parse(readFileSync(schema, 'utf8')),
      );
      expect([file, isValid(value), isValid.errors]).toEqual([file, true, null]);
      expect(isValid({ ...value, format: 'none' })).toBe(false);
    }
    const heard = hear();
    expect(await check(heard.outside, { folder, json: false })).not.toBe(2);
    expect(heard.out() + heard.err()).not.toContain('schemas/');
    for (const kind of ['hole', 'shift', 'dispatch', 'results', 'project', 'logging'])
      expect(existsSync(join(folder, `schemas/${kind}.schema.json`))).toBe(true);
  });

  it('needs no program, and takes an empty folder that is there', async () => {
    const folder = freshFolder();
    expect((await start({}, folder)).code).toBe(0);
    expect(readdirSync(folder).sort()).toEqual(expect.arrayContaining(['logging.json', 'project.json']));
  });

  it('is not made where a line of the program is bad: every bad line is named', async () => {
    const file = join(freshFolder(), 'program.csv');
    writeFileSync(
      file,
      readFileSync(PROGRAM, 'utf8')
        .replace('MBRC002,', 'MBRC001,')
        .replace('MBRC004,412460,6002160', 'MBRC004,6002160,412460'),
    );
    const { code, folder, err } = await start({ program: file, epsg: 7851 });
    expect(code).toBe(2);
    expect(err).toContain('program.csv:3, field hole: this hole is already in line 2');
    expect(err).toContain('program.csv:5, field easting: no place on');
    expect(err).toContain('Nothing was made.');
    expect(existsSync(folder)).toBe(false);
  });

  it('takes the sound lines in when told to go on, and gives 1', async () => {
    const file = join(freshFolder(), 'program.csv');
    writeFileSync(file, readFileSync(PROGRAM, 'utf8').replace('MBRC002,412440', 'MBRC002,x'));
    const { code, folder } = await start({ program: file, epsg: 7851, keepGoing: true });
    expect(code).toBe(1);
    expect(readdirSync(join(folder, 'holes'))).toHaveLength(6);
  });

  it.each([
    [
      'without the grid of its program',
      { program: PROGRAM },
      'the grid of its eastings and northings is missing',
    ],
    ['with a grid that no one knows', { program: PROGRAM, epsg: 1 }, 'EPSG 1'],
    ['with a style that is not there', { style: 'porphyry' }, 'no style is called porphyry'],
    ['with a program that is not there', { program: '/nowhere.csv', epsg: 7851 }, "it can't be read"],
  ])('is not made %s', async (_what, more, problem) => {
    const { code, folder, err } = await start(more);
    expect(code).toBe(2);
    expect(err).toContain(problem);
    expect(existsSync(folder)).toBe(false);
  });

  it('is not laid over another project or over other files', async () => {
    const folder = join(freshFolder(), 'flat');
    await start({}, folder);
    const again = await start({}, folder);
    expect([again.code, again.err]).toEqual([2, expect.stringContaining('it holds a project already')]);
    const other = freshFolder();
    mkdirSync(join(other, 'photos'));
    expect((await start({}, other)).err).toContain('it is not empty');
    expect(readdirSync(other)).toEqual(['photos']);
  });

  it.each([
    ['no name', '', 'no name is given'],
    ['a line end in it', 'a\nb', 'hard to name again'],
    ['a dash before it', '-dash', 'hard to name again'],
  ])('is not made under a name that no one could type again: %s', async (_what, name, problem) => {
    const before = readdirSync('.');
    const { code, err } = await start({}, name);
    expect([code, err]).toEqual([2, expect.stringContaining(problem)]);
    expect(readdirSync('.')).toEqual(before);
  });

  it('made twice at the same moment is made once: one says done, the other takes nothing away', async () => {
    for (let round = 0; round < 8; round += 1) {
      const folder = join(freshFolder(), 'deep', 'flat');
      const both = await Promise.all([
        start({ program: PROGRAM, epsg: 7851 }, folder),
        start({ program: PROGRAM, epsg: 7851 }, folder),
      ]);
      expect(both.map(({ code }) => code).sort()).toEqual([0, 2]);
      const heard = hear();
      expect(await holes(heard.outside, { folder, json: true })).toBe(0);
      expect(JSON.parse(heard.out())).toHaveLength(7);
    }
  });

  it('that fails takes back what it made and leaves what others put there', async () => {
    const folder = freshFolder();
    const made = { folders: [], files: [] };
    writeFileSync(join(folder, 'project.json'), 'of another');
    const files = [
      { file: 'logging.json', text: '{}' },
      { file: 'project.json', text: '{}' },
    ];
    await expect(makeFiles(realDisk, folder, files, made)).rejects.toMatchObject({ code: 'EEXIST' });
    expect(made).toEqual({ folders: [], files: [join(folder, 'logging.json')] });
    expect(readFileSync(join(folder, 'project.json'), 'utf8')).toBe('of another');
  });

  it('said to be made is whole after any power cut', async () => {
    const medium = newMedium();
    const files = [
      { file: 'logging.json', text: '{ "of": "logging" }' },
      { file: 'project.json', text: '{ "of": "project" }' },
    ];
    await makeFiles(recordingDisk(medium), '/deep/flat', files, { folders: [], files: [] });
    for (const cut of cutsFor(medium, 20, seededNumbers(5))) {
      const after = recordingDisk(afterPowerCut(medium, cut));
      for (const { file, text } of files)
        expect(new TextDecoder().decode(await after.readFile(`/deep/flat/${file}`))).toBe(text);
    }
  });
});

describe('schemas for an editor', () => {
  it('are put beside the files of a project that has none; the line that names them is said, and no file kept by hand is written', async () => {
    const folder = freshFolder();
    cpSync(SAMPLE, folder, { recursive: true });
    rmSync(join(folder, 'schemas'), { recursive: true });
    const bare = readFileSync(join(folder, 'project.json'), 'utf8').replace(/\n {2}"\$schema".*/, '');
    writeFileSync(join(folder, 'project.json'), bare);
    const heard = hear();
    expect(await schemasForEditor(heard.outside, { folder })).toBe(0);
    expect(heard.out()).toBe(
      [
        'schemas/ has the 6 schemas of this version.',
        'project.json does not name its own: put this line after its first brace. Nothing else of it changes.',
        '  "$schema": "./schemas/project.schema.json",',
        '',
      ].join('\n'),
    );
    expect(readFileSync(join(folder, 'project.json'), 'utf8')).toBe(bare);
    expect(existsSync(join(folder, 'schemas/logging.schema.json'))).toBe(true);
    writeFileSync(join(folder, 'schemas/hole.schema.json'), 'of another version');
    expect(await schemasForEditor(hear().outside, { folder })).toBe(0);
    expect(JSON.parse(readFileSync(join(folder, 'schemas/hole.schema.json'), 'utf8'))).toBeTypeOf('object');
  });
});
