import type { Command } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import type { Shared } from '../at-project.ts';
import type { TerminationAsked } from '../termination.ts';
import { type Done, inLines, shared } from './options.ts';

/** Adds the commands that are about one hole, or about a few named. */
export function addHoleCommands(program: Command, outside: Outside, done: Done): void {
  addEnter(program, outside, done);
  addBags(program, outside, done);
  addTermination(program, outside, done);
}

function addEnter(program: Command, outside: Outside, done: Done): void {
  program
    .command('enter')
    .description('log from a file or a pipe: one entry line a line, # starts a comment')
    .argument('<hole>', 'hole to log')
    .option(
      '--keep-going',
      'go on after a line that is not taken; record a rod whose bags don’t match, with the mismatch noted',
    )
    .addHelpText(
      'after',
      '\nWith --rig drilling begins with that rig, where the hole is planned or suspended.\nNobody is there to be asked: a line that would be asked about is saved marked, and reported; = at its end insists.\nA change of several rows needs = at its end in the place of its preview. ;rod with digits that don’t match is refused.',
    )
    .action(async (hole, options, command: Command) => {
      const { enter } = await import('../enter.ts');
      const keepGoing = options.keepGoing === true;
      done(
        await inLines(outside, command, (printing) =>
          enter(printing, { ...shared(command), hole, keepGoing }),
        ),
      );
    });
}

function addBags(program: Command, outside: Outside, done: Done): void {
  program
    .command('bags')
    .description('the bags to label for tomorrow with metre, kind and tray place, ready to tick off')
    .argument('[holes...]', 'the holes; every one with numbered bags left if none is named')
    .option('--to <depth>', 'down to this depth, in metres; the planned one if left out')
    .option('--csv', 'for a label printer: no label tells a control')
    .option('--html', 'a sheet to print for the splitter')
    .option('--issued', 'the bags issued so far')
    .action(async (holes, { to, ...options }, command: Command) => {
      const { bags } = await import('../bags.ts');
      const given = shared(command);
      const as = (['csv', 'html', 'issued'] as const).find((each) => options[each] === true) ?? 'text';
      done(await bags(outside, { ...given, holes, to, as: given.json ? 'json' : as }));
    });
}

function addTermination(program: Command, outside: Outside, done: Done): void {
  program
    .command('termination')
    .description('advice on ending a hole')
    .argument('[holes...]', 'the hole; several with --replay')
    .option('--at <depth>', 'as if the hole had come to this depth, in metres')
    .option('--as-then', 'with --at: by what was recorded when the rig was there')
    .option('--what-if <lines>', 'with rows that might come below the log: lines parted by ; like "p1;.;."')
    .option('--why <rule>', 'why one rule is where it is')
    .option('--check', 'check the rules of the project')
    .option('--replay', 'where the rules would have ended finished holes')
    .action(async (holes, options, command: Command) => {
      const { termination } = await import('../termination.ts');
      done(await termination(outside, { ...shared(command), ...terminationAsked(holes, options) }));
    });
}

function terminationAsked(
  holes: readonly string[],
  options: Readonly<Record<string, string | true | undefined>>,
): Omit<TerminationAsked, keyof Shared | 'json'> {
  const text = (name: string) => (typeof options[name] === 'string' ? options[name] : undefined);
  return {
    holes,
    at: text('at'),
    asThen: options.asThen === true,
    whatIf: text('whatIf'),
    why: text('why'),
    check: options.check === true,
    replay: options.replay === true,
  };
}
