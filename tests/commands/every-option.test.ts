import { rmSync } from 'node:fs';
import type { Command } from 'commander';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { commandLine } from '../../src/commands/command-line/run.ts';
import {
  type Came,
  COMMANDS,
  type CommandCase,
  makeStarts,
  type OptionCase,
  type Start,
  THEIRS,
  trying,
} from './support/every-command.ts';
import { hear } from './support/outside.ts';

let home = '';
let run: ReturnType<typeof trying>;
/** What a start holds while no command has touched it, looked at once. */
const starts = new Map<Start, Promise<Came>>();
const untouched = (start: Start): Promise<Came> => {
  const looked = starts.get(start) ?? run(start, []);
  starts.set(start, looked);
  return looked;
};
beforeAll(async () => {
  const made = await makeStarts();
  home = made.home;
  run = trying(made.starts, made.files);
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

const SHARED = ['--project', '--by', '--rig', '--json'];

/** Every command with options of its own, by its whole name, as the program has them. */
function inProgram(): ReadonlyMap<string, readonly string[]> {
  const program = commandLine({ outside: hear().outside, openConsole: async () => 0 }, () => {});
  const found = new Map<string, readonly string[]>();
  const walk = (command: Command, name: readonly string[]) => {
    const own = command.options.flatMap(({ long }) => (long === undefined || long === null ? [] : [long]));
    found.set(
      name.join(' '),
      own.filter((each) => each !== '--version' && !SHARED.includes(each)),
    );
    for (const each of command.commands) walk(each, [...name, each.name()]);
  };
  walk(program, []);
  return found;
}

const title = ({ name, always = [] }: CommandCase) => ['offsider', ...name, ...always.slice(0, 1)].join(' ');
const projectOf = ({ ownProject }: CommandCase) =>
  ownProject === undefined ? ['--project', '{project}'] : [];

/** The command line with these words before the name, between its parts, and behind everything. */
function line(
  one: CommandCase,
  where: 'before' | 'between' | 'inside' | 'behind',
  words: readonly string[],
): readonly string[] {
  const [first, ...rest] = one.name;
  const put = (here: typeof where) => (here === where ? words : []);
  const named = first === undefined ? [] : [first];
  return [
    ...put('before'),
    ...named,
    ...put('between'),
    ...rest,
    ...put('inside'),
    ...(one.args ?? []),
    ...(one.always ?? []),
    ...put('behind'),
  ];
}

/** Everyone who signed something in these files that was not there before. */
function signers(before: Came['files'], after: Came['files']): readonly string[] {
  const old = new Set(signed(before).map(({ what }) => what));
  const added = signed(after).filter(({ what }) => !old.has(what));
  return [...new Set(added.flatMap(({ by }) => by))].filter((by) => by !== THEIRS).sort();
}

/** Every entry of every history, and everything that was let go, with everyone whom it names as the one who did it. */
function signed(files: Came['files']): readonly { readonly what: string; readonly by: readonly string[] }[] {
  const parsed = Object.entries(files).flatMap(([name, text]): readonly unknown[] =>
    name.endsWith('.jsonl')
      ? text
          .split('\n')
          .flatMap((each) =>
            each.includes('letGo')
              ? [JSON.parse(each.slice(each.indexOf('{'), each.lastIndexOf('}') + 1))]
              : [],
          )
      : name.endsWith('.json')
        ? (JSON.parse(text).history ?? [])
        : [],
  );
  return parsed.map((each) => ({
    what: JSON.stringify(each),
    by: [...JSON.stringify(each).matchAll(/"by":"([^"]*)"/g)].map(([, by]) => by ?? ''),
  }));
}

it('the table holds every command and every option that the program has', () => {
  const table = new Map<string, Set<string>>();
  for (const { name, options = {} } of COMMANDS) {
    const key = name.join(' ');
    table.set(key, new Set([...(table.get(key) ?? []), ...Object.keys(options)]));
  }
  const sorted = (map: ReadonlyMap<string, Iterable<string>>) =>
    Object.fromEntries(
      [...map].filter(([key]) => key !== 'schema').map(([key, of]) => [key, [...of].sort()]),
    );
  expect(sorted(table)).toEqual(sorted(inProgram()));
});

describe('an option', () => {
  const cases = COMMANDS.flatMap((one) => [
    ...Object.entries(one.options ?? {}).map(([option, given]) => [one, option, given] as const),
    ...SHARED.map((option) => [one, option, option === '--json' ? {} : { value: 'given' }] as const),
  ]).map(([one, option, given]) => [title(one), option, one, given] as const);

  it.each(cases)('of %s, %s, is read the same in every place', async (_title, option, one, given) => {
    const { value, instead } = given as OptionCase;
    const words = [option, ...(value === undefined ? [] : [value])];
    const without = {
      ...one,
      args: instead ?? one.args ?? [],
      always: withoutOption(one.always ?? [], option),
    };
    const isShared = SHARED.includes(option);
    const places = isShared
      ? (['before', 'between', 'inside', 'behind'] as const)
      : (['inside', 'behind'] as const);
    const read = [];
    for (const place of places) read.push(await parsed(line(without, place, words)));
    expect(read[0]?.options).toMatchObject({ [camelCase(option)]: expect.anything() });
    for (const each of read) expect(each).toEqual(read[0]);
  });
});

describe.each(COMMANDS.map((one) => [title(one), one] as const))('%s', (_title, one) => {
  const { start = 'sample', stdin } = one;
  const go = (argv: readonly string[]) => run(start, argv, stdin);

  it('runs with a person, a rig and --json, which gives data', async () => {
    const { code, out } = await go(
      line(one, 'behind', [...projectOf(one), '--by', 'jpe', '--rig', 'rc7', '--json']),
    );
    expect([0, 1]).toContain(code);
    expect(() => JSON.parse(out)).not.toThrow();
  });

  if (one.signs === true)
    it.each(['before', 'behind'] as const)(
      'signs as the person named %s it, and as no one else',
      async (where) => {
        const { signer = 'JPE' } = one;
        const before = await untouched(start);
        const after = await go(line(one, where, [...projectOf(one), '--by', signer]));
        expect(signers(before.files, after.files)).toEqual([signer]);
      },
    );

  if (one.name.length > 0 && one.ownProject === undefined)
    it.each(['before', 'behind'] as const)(
      'refuses an unknown person and rig %s it, and changes nothing',
      async (where) => {
        const before = await untouched(start);
        const { code, err, files } = await go(
          line(one, where, [...projectOf(one), '--by', 'XYZ', '--rig', 'RC99']),
        );
        expect(code).toBe(2);
        expect(err).toContain('XYZ is not one of the people in project.json');
        expect(err).toContain('no rig is called RC99');
        expect(files).toEqual(before.files);
      },
    );

  for (const [option, { value, needs = [], instead }] of Object.entries(one.options ?? {}))
    it(`runs with ${option}`, async () => {
      const words = [option, ...(value === undefined ? [] : [value])];
      const always = withoutOption(one.always ?? [], option);
      const args = instead ?? one.args ?? [];
      const { code, err } = await go([
        ...one.name,
        ...args,
        ...needs,
        ...always,
        ...words,
        ...projectOf(one),
      ]);
      expect(err).not.toMatch(/^error: /m);
      expect([0, 1, 2]).toContain(code);
    });
});

/** The command that would run, with its arguments and all options as it gets them. */
async function parsed(argv: readonly string[]) {
  const heard = hear();
  let read: { readonly command: string; readonly args: unknown; readonly options: object } | undefined;
  const program = commandLine({ outside: heard.outside, openConsole: async () => 0 }, () => {});
  const record = (command: Command) => {
    if (command.commands.length === 0 || command.name() !== 'schema')
      command.action((..._given) => {
        read = { command: command.name(), args: command.processedArgs, options: command.optsWithGlobals() };
      });
    command.commands.forEach(record);
  };
  record(program);
  await program.parseAsync([...argv], { from: 'user' });
  return read;
}

const camelCase = (option: string) =>
  option.slice(2).replaceAll(/-(.)/g, (_, letter: string) => letter.toUpperCase());

/** Options without the one that is tried, which is given elsewhere. */
function withoutOption(words: readonly string[], option: string): readonly string[] {
  const at = words.indexOf(option);
  return at < 0 ? words : words.filter((_, index) => index !== at && index !== at + 1);
}

describe('a slip on the command line', () => {
  it.each([
    [['holes', '--by', 'NOK', '--by', 'JPE'], 'It is given twice, the other time as NOK.'],
    [['--rig', 'RC7', 'holes', '--rig', 'RC8'], 'It is given twice, the other time as RC7.'],
    [['enter', 'MBRC003', '--read-only'], 'only the console takes --read-only'],
    [['--take-over', 'enter', 'MBRC003'], 'only the console takes --take-over'],
    [['elsewhere', '--project', '{project}'], 'two folders are given, elsewhere and '],
    [['bags', '--csv', '--json'], '--json and --csv are two forms: give one of them'],
    [['bags', '--to', '70', '--by'], "option '--by <initials>' argument missing"],
    [['schema', 'keys', '--width', 'wide'], 'It is not a whole number.'],
    [['demo', '--project', '{project}'], 'the demo is its own project'],
    [['new'], 'the folder to make is not given'],
  ])('%j is refused with 2, and changes nothing', async (argv, problem) => {
    const before = await untouched('sample');
    const { code, err, files } = await run('sample', argv);
    expect(code).toBe(2);
    expect(err).toContain(problem);
    expect(files).toEqual(before.files);
  });

  it('a new project starts with the person and the rig named', async () => {
    const made = await run('sample', [
      '--by',
      'abc',
      'new',
      '{out}/flat',
      '--rig',
      'rc9',
      '--epsg',
      '7851',
      '--program',
      '{project}/program.csv',
    ]);
    expect(made.code).toBe(0);
    const settings = JSON.parse(made.files['~/out/flat/project.json'] ?? '');
    expect(settings.people[0].initials).toBe('ABC');
    expect(settings.rigs[0].name).toBe('RC9');
    expect(settings.sampling.numbers.blocks[0].rig).toBe('RC9');
    expect(signers({}, { 'hole.json': made.files['~/out/flat/holes/MBRC001.json'] ?? '' })).toEqual(['ABC']);
  });
});
