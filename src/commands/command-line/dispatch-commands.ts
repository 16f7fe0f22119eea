import type { Command } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import { type Done, inLines, shared, wholeNumber } from './options.ts';

/** Adds the commands about dispatches: sacks that go to the laboratory, and who has them. */
export function addDispatchCommands(program: Command, outside: Outside, done: Done): void {
  const dispatch = program
    .command('dispatch')
    .description('sacks that go to the laboratory: who has them, what waits to be sent')
    .action(async (_options, command: Command) => {
      const { dispatches } = await import('../dispatch.ts');
      done(await dispatches(outside, shared(command)));
    });
  addNew(dispatch, outside, done);
  addPass(dispatch, outside, done);
  addReceipt(dispatch, outside, done);
  addSheet(dispatch, outside, done);
}

function addNew(dispatch: Command, outside: Outside, done: Done): void {
  dispatch
    .command('new')
    .description('make a dispatch up: everything issued and not sent, or the bags named')
    .argument(
      '[bags...]',
      'numbers or ranges like MB000001-MB000040 or 301-340, whole or by their last digits',
    )
    .option('--name <name>', 'its name; the day and who makes it up, if left out')
    .option('--laboratory <name>', 'where it goes; as in project.json, if left out')
    .option('--seal <number>', 'seal of the first sack; the others follow it')
    .option('--dry-run', 'show the sacks, make nothing')
    .action(async (bags: readonly string[], options, command: Command) => {
      const { newDispatch } = await import('../dispatch.ts');
      done(
        await inLines(outside, command, (printing) =>
          newDispatch(printing, {
            ...shared(command),
            name: options.name,
            laboratory: options.laboratory,
            firstSeal: options.seal,
            bags: bags.length === 0 ? undefined : bags,
            dryRun: options.dryRun === true,
          }),
        ),
      );
    });
}

function addPass(dispatch: Command, outside: Outside, done: Done): void {
  dispatch
    .command('pass')
    .description('record that its sacks are handed over, as they are counted')
    .argument('<dispatch>', 'its name, or the end of it')
    .argument('<to>', 'who takes them')
    .requiredOption('--sacks <count>', 'sacks counted', wholeNumber)
    .option('--bags <count>', 'calicos counted, where the sacks are opened', wholeNumber)
    .option('--from <who>', 'who gives them; whoever took them last, if left out')
    .option('--seal-broken', 'a seal is broken')
    .action(async (name: string, to: string, options, command: Command) => {
      const { passDispatch } = await import('../dispatch.ts');
      done(
        await inLines(outside, command, (printing) =>
          passDispatch(printing, {
            ...shared(command),
            dispatch: name,
            to,
            sacks: options.sacks,
            sealsWhole: options.sealBroken !== true,
            ...(options.bags === undefined ? {} : { bags: options.bags }),
            ...(options.from === undefined ? {} : { from: options.from }),
          }),
        ),
      );
    });
}

function addReceipt(dispatch: Command, outside: Outside, done: Done): void {
  dispatch
    .command('receipt')
    .description("take the laboratory's receipt in and hold it against what was sent")
    .argument('<dispatch>', 'its name, or the end of it')
    .argument('<file>', 'CSV with the numbers received')
    .action(async (name: string, file: string, _options, command: Command) => {
      const { dispatchReceipt } = await import('../dispatch.ts');
      done(
        await inLines(outside, command, (printing) =>
          dispatchReceipt(printing, { ...shared(command), dispatch: name, file }),
        ),
      );
    });
}

function addSheet(dispatch: Command, outside: Outside, done: Done): void {
  dispatch
    .command('sheet')
    .description("print its sheet: the laboratory's says numbers only; camp's says what they are")
    .argument('[dispatch]', 'its name, or the end of it; the latest if left out')
    .option('--camp', "camp's sheet; it never goes with the sacks")
    .option('--csv', 'as CSV')
    .option('--html', 'as a page to print, with lines to sign')
    .action(async (name: string | undefined, options, command: Command) => {
      const { dispatchSheet } = await import('../dispatch.ts');
      done(
        await inLines(outside, command, (printing) =>
          dispatchSheet(printing, {
            ...shared(command),
            dispatch: name,
            reader: options.camp === true ? 'camp' : 'laboratory',
            as: options.html === true ? 'html' : options.csv === true ? 'csv' : 'text',
          }),
        ),
      );
    });
}
