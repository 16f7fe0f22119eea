import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommandLine } from '../../src/commands/command-line/run.ts';
import { enter } from '../../src/commands/enter.ts';
import { newProject } from '../../src/commands/new-project.ts';
import { checkSchemaFile } from '../../src/commands/schema.ts';
import { takeDictionaryIn } from '../../src/commands/schema-dictionary.ts';
import { changeSchemaField, type FieldAsked } from '../../src/commands/schema-field.ts';
import { importDictionary } from '../../src/schema/change/import-dictionary.ts';
import { copyOfSample, freshFolder, hear } from './support/outside.ts';

/** A schema as someone writes it for a deposit that no style is for: 14 fields and 60 codes. */
const TIN = join(import.meta.dirname, 'dictionaries/tin.csv');
const PROGRAM =
  'hole,easting,northing,elevation,azimuth,north,dip,depth\nTN01,412400,6778160,410,270,grid,-60,60\n';

const read = (text: string) => importDictionary({ file: 'own.csv', text });
function problems(text: string): readonly string[] {
  const result = read(text);
  return result.ok
    ? []
    : result.findings.map(({ place, problem }) => `${'line' in place ? place.line : 0}: ${problem}`);
}

async function ownProject(): Promise<string> {
  const folder = join(freshFolder(), 'tin');
  const program = join(freshFolder(), 'program.csv');
  writeFileSync(program, PROGRAM);
  const heard = hear();
  const asked = { folder, style: 'orogenic-gold', dictionary: TIN, program, epsg: 7851, keepGoing: false };
  expect([await newProject(heard.outside, asked), heard.err()]).toEqual([0, '']);
  return folder;
}

describe('a project of a schema of one’s own', () => {
  it('starts from one CSV of 14 fields and 60 codes, and the check finds nothing', async () => {
    const folder = await ownProject();
    const heard = hear();
    const file = join(folder, 'logging.json');
    expect(await checkSchemaFile(heard.outside, { folder, file, json: false })).toBe(0);
    expect(heard.out()).toBe('Nothing found.\n');
    const logging = JSON.parse(readFileSync(file, 'utf8'));
    expect(logging.extends).toBeUndefined();
    expect(logging.fields).toHaveLength(14);
    expect(logging.fields.find(({ name }: { name: string }) => name === 'tin').caution.kind).toBe(
      'radiation',
    );
    const codes = Object.values(logging.lists as Record<string, { codes: { pair?: string }[] }>).flatMap(
      (list) => list.codes,
    );
    expect(codes).toHaveLength(60);
    expect(codes.filter(({ pair }) => pair === undefined)).toEqual([]);
  });

  it('logs its first metres with the pairs that were proposed', async () => {
    const folder = await ownProject();
    const heard = hear('gnwr4\n.\nwr3ms\n');
    const code = await enter(heard.outside, { folder, hole: 'TN01', rig: 'RIG1', keepGoing: false });
    expect([code, heard.err()]).toEqual([0, '']);
    const { tables } = JSON.parse(readFileSync(join(folder, 'holes/TN01.json'), 'utf8'));
    const rows = Object.values(tables.rows) as { cells: Record<string, object> }[];
    expect(rows).toHaveLength(3);
    expect(rows.map(({ cells }) => cells.rock)).toContainEqual({ code: 'GRA' });
    expect(rows.map(({ cells }) => cells.texture)).toContainEqual({ codes: { MAS: true } });
  });

  it('is not started from a style too', async () => {
    const heard = hear();
    const argv = ['new', join(freshFolder(), 'two'), '--style', 'orogenic-gold', '--dictionary', TIN];
    const code = await runCommandLine(argv, { outside: heard.outside, openConsole: async () => 0 });
    expect([code, heard.err()]).toEqual([
      2,
      expect.stringContaining('--style and --dictionary are both given: a dictionary is a schema of its own'),
    ]);
  });

  it('has an entry a line, so that it can be read and changed by hand', async () => {
    const text = readFileSync(join(await ownProject(), 'logging.json'), 'utf8');
    expect(text).toMatch(/\n {8}\{ "code": "CAS", "label": "cassiterite", .*"pair": "\w\w".*\},\n/);
  });
});

describe('a dictionary', () => {
  const HEAD = 'part,name,label,in,kind,list,scale,unit,min,max,none,density,steps\n';

  it('is read in any order, with what is usual of each kind', () => {
    const result = read(
      `${HEAD}code,GRA,granite,rocks\nfield,rock,,,code,rocks\nfield,ore,,,percents,rocks,,,,,,,1 5 10\nlist,rocks,all rocks\n`,
    );
    expect(result.ok && result.value).toEqual({
      fields: [
        expect.objectContaining({
          name: 'rock',
          label: 'rock',
          carry: true,
          unsaid: 'not observed',
          second: false,
        }),
        expect.objectContaining({
          ladder: [1, 5, 10],
          unsaid: 'none',
          canBeNone: true,
          sumLimitPercent: 100,
        }),
      ],
      lists: { rocks: { label: 'all rocks', codes: [{ code: 'GRA', label: 'granite', look: '' }] } },
      scales: {},
    });
  });

  it('names every line that can’t be used, with why', () => {
    expect(
      problems(
        `${HEAD}rock,GRA\ncode,GRA,granite\ncode,GRA,,rocks\nlevel,ten,hard,hardness\nlevel,1,,hardness\nfield,rock,,,colour\nfield,rock,,,code\nfield,hardness,,,level\nfield,tin,,,number,,,ppm\nfield,tin,,,number,,,ppm,low,9\nfield,wet,,,flag,,,,,,maybe\ncode,DIO,diorite,rocks,,,,,,,,90\nfield,ore,,,percents,rocks,,,,,,,much\nfield,,x\ncode,A,a,rocks\ncode,a,b,rocks\n`,
      ),
    ).toEqual([
      '2: the part is "rock"; it is field, list, code, scale or level',
      '3: GRA is a code, and "in" does not say of which list',
      '4: GRA has no words',
      '5: the level ten is not a digit from 1 to 9',
      '6: level 1 of hardness has no label',
      expect.stringMatching(/^7: the kind of rock is "colour"; it is one of code, /),
      '8: rock: the list that it takes codes from is missing (column list)',
      '9: hardness: the scale of its levels is missing (column scale)',
      '10: tin: a number needs min, max',
      '11: tin: min, max or decimals is no number',
      '12: "none" of wet is "maybe"; it is yes, no or empty',
      '13: DIO has the density 90; it goes from 0.5 to 8 g/cm³',
      '14: ore: the steps are "much"; they are percents like 1 2 5 10',
      '15: the name is empty',
      '17: the code a is there twice',
    ]);
  });

  it('names a heading that means nothing and one that is missing', () => {
    expect(problems('part,code\nfield,rock\n')).toEqual([
      '1: no column is called name',
      '1: the column "code" means nothing in a dictionary',
    ]);
  });
});

describe('schema dictionary', () => {
  const CSV =
    'part,name,label,in,kind,list,scale\nfield,hardness,hardness of chips,,level,,hardness\nlevel,1,soft,hardness\nlevel,2,hard,hardness\nfield,stain,stains,,codes,stains\ncode,IST,iron stain,stains\ncode,MST,manganese stain,stains\n';
  async function take(text: string, preview = false) {
    const folder = copyOfSample();
    const file = join(freshFolder(), 'more.csv');
    writeFileSync(file, text);
    const before = readFileSync(join(folder, 'logging.json'), 'utf8');
    const heard = hear();
    const code = await takeDictionaryIn(heard.outside, { folder, file, preview, json: false });
    const after = readFileSync(join(folder, 'logging.json'), 'utf8');
    return { folder, code, before, after, out: heard.out(), err: heard.err() };
  }

  it('adds fields, lists and scales to a project, with pairs, and the check finds no fault', async () => {
    const { folder, code, out, err } = await take(CSV);
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('In logging.json now: 2 fields, 2 codes in 1 list, 1 scale, with the pairs above.');
    expect(out).toMatch(/^\w\w {2}iron stain$/m);
    const heard = hear();
    const file = join(folder, 'logging.json');
    await checkSchemaFile(heard.outside, { folder, file, json: false });
    expect(heard.out()).toBe('Nothing found.\n');
  });

  it('changes nothing in a preview, nor where a fault would come of it', async () => {
    const preview = await take(CSV, true);
    expect(preview.after).toBe(preview.before);
    expect(preview.out).toContain('Nothing was changed.');
    const faulty = await take(CSV.replace('level,2,hard', 'level,4,hard'));
    expect(faulty.code).toBe(1);
    expect(faulty.after).toBe(faulty.before);
    expect(faulty.err).toContain('hardness');
  });
});

describe('schema field', () => {
  async function change(asked: Partial<FieldAsked>, folder = copyOfSample()) {
    const before = readFileSync(join(folder, 'logging.json'), 'utf8');
    const heard = hear();
    const none = { folder, field: 'veins', change: {}, preview: false, json: false };
    const code = await changeSchemaField(heard.outside, { ...none, ...asked });
    const isSame = readFileSync(join(folder, 'logging.json'), 'utf8') === before;
    return { code, isSame, out: heard.out(), err: heard.err() };
  }

  it('moves a field, and says the log sheet that comes of it', async () => {
    const { code, isSame, out } = await change({ change: { after: 'rock' } });
    expect([code, isSame]).toEqual([0, false]);
    expect(out).toMatch(/^The log sheet is: rock\* · veins · weathering\* /);
  });

  it('changes nothing in a preview', async () => {
    const { code, isSame, out } = await change({ change: { after: '' }, preview: true });
    expect([code, isSame]).toEqual([0, true]);
    expect(out).toMatch(/^The log sheet would be: veins · rock\* .*Nothing was changed\.\n$/);
  });

  it('refuses what a condition or a rule still asks, and a field that is not there', async () => {
    const retired = await change({ field: 'sulphides', retire: true });
    expect([retired.code, retired.isSame]).toEqual([1, true]);
    expect(retired.err).toMatch(/rule barren tail, field sulphides: there is no field sulphides/);
    const unknown = await change({ field: 'stones', change: { label: 'stones' } });
    expect(unknown.err).toContain('no field is called stones; there are rock, weathering');
    expect((await change({})).err).toContain('what changes is missing');
  });
});
