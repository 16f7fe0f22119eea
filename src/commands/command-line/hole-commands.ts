import type { Command } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import type { TerminationAsked } from '../termination.ts';
import { type Done, withProject, withWho } from './options.ts';

/** Adds the commands that are about one hole, or about a few named. */
export function addHoleCommands(program: Command, outside: Outside, done: Done): void {
  addEnter(program, outside, done);
  addBags(program, outside, done);
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

function addBags(program: Command, outside: Outside, done: Done): void {
  withProject(program.command('bags'))
    .description('the bags to label for tomorrow with metre, kind and tray place, ready to tick off')
    .argument('[holes...]', 'the holes; every one with numbered bags left if none is named')
    .option('--to <depth>', 'down to this depth, in metres; the planned one if not said')
    .option('--csv', 'for a label printer: no label tells a control')
    .option('--html', 'a sheet to print for the splitter')
    .option('--issued', 'the bags issued so far')
    .option('--json', 'as data')
    .action(async (holes, { project: folder, to, ...options }) => {
      const { bags } = await import('../bags.ts');
      const as = (['csv', 'html', 'issued', 'json'] as const).find((each) => options[each] === true);
      done(await bags(outside, { folder, holes, to, as: as ?? 'text' }));
    });
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
