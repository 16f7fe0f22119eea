import type { Command } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import type { TerminationAsked } from '../termination.ts';
import { type Done, withProject, withWho } from './options.ts';

/** Adds the commands that are about one hole, or about a few named. */
export function addHoleCommands(program: Command, outside: Outside, done: Done): void {
  addEnter(program, outside, done);
  addOneHole(program, outside, done);
  addTermination(program, outside, done);
}

function addEnter(program: Command, outside: Outside, done: Done): void {
  withWho(withProject(program.command('enter')))
    .description('log from a file or a pipe: one entry line a line, # starts a comment')
    .argument('<hole>', 'hole to log')
    .option('--rig <name>', 'start drilling it with this rig, where it is planned or suspended')
    .option(
      '--keep-going',
      'go on behind a line that is not taken; record a rod whose bags do not agree, with the mismatch noted',
    )
    .addHelpText(
      'after',
      '\nNobody is there to be asked: a line that would be asked about is saved marked, and reported; = at its end insists.\nA change of several rows needs = at its end in the place of its preview. ;rod with digits that do not agree is refused.',
    )
    .action(async (hole, options) => {
      const { enter } = await import('../enter.ts');
      done(
        await enter(outside, {
          folder: options.project,
          hole,
          by: options.by,
          rig: options.rig,
          keepGoing: options.keepGoing === true,
        }),
      );
    });
}

/** Commands that are about one hole and print text, or data with --json. */
function addOneHole(program: Command, outside: Outside, done: Done): void {
  const oneHole = (name: string, description: string): Command =>
    withProject(program.command(name))
      .description(description)
      .argument('<hole>', 'the hole')
      .option('--json', 'as data');
  oneHole('bags', 'bags as issued, what comes next, what is put off, controls in stock').action(
    async (hole, options) => {
      const { bags } = await import('../bags.ts');
      done(await bags(outside, { folder: options.project, hole, json: options.json === true }));
    },
  );
  oneHole('survey', 'where the hole goes, how it comes out at the target, what is wrong with the shots')
    .option('--csv', 'positions by metre as CSV')
    .action(async (hole, options) => {
      const { survey } = await import('../survey.ts');
      const { project: folder, json, csv } = options;
      done(await survey(outside, { folder, hole, json: json === true, csv: csv === true }));
    });
  oneHole('line-up', 'the planned direction in every north, and the line-up beside it').action(
    async (hole, options) => {
      const { lineUp } = await import('../line-up.ts');
      done(await lineUp(outside, { folder: options.project, hole, json: options.json === true }));
    },
  );
}

function addTermination(program: Command, outside: Outside, done: Done): void {
  withProject(program.command('termination'))
    .description('advice on ending a hole')
    .argument('[holes...]', 'the hole; several with --replay')
    .option('--at <depth>', 'as if the hole had come to this depth, in metres')
    .option('--as-then', 'with --at: by what was recorded when the rig was there')
    .option('--what-if <lines>', 'with rows that might come below the log: lines parted by ; like "p1;.;."')
    .option('--why <rule>', 'why one rule stands as it does')
    .option('--check', 'check the rules of the project')
    .option('--replay', 'where the rules would have ended finished holes')
    .option('--json', 'as data')
    .action(async (holes, options) => {
      const { termination } = await import('../termination.ts');
      done(await termination(outside, terminationAsked(holes, options)));
    });
}

function terminationAsked(
  holes: readonly string[],
  options: Readonly<Record<string, string | true | undefined>>,
): TerminationAsked {
  const text = (name: string) => (typeof options[name] === 'string' ? options[name] : undefined);
  return {
    folder: text('project') ?? '.',
    holes,
    at: text('at'),
    asThen: options.asThen === true,
    whatIf: text('whatIf'),
    why: text('why'),
    check: options.check === true,
    replay: options.replay === true,
    json: options.json === true,
  };
}
