import type { Command } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import { type Done, withProject, withWho } from './options.ts';

/** Adds the commands about results that come back. */
export function addResultsCommands(program: Command, outside: Outside, done: Done): void {
  withWho(withProject(program.command('results')))
    .description('what the laboratory returned: standards, blanks, pairs; with a file, takes it in first')
    .argument('[file]', "the laboratory's CSV, read as project.json maps its columns")
    .option('--certificate <number>', "the laboratory's number of it; the name of the file, if not said")
    .option(
      '--supersedes <certificate>',
      'it was issued again in place of this one, which stays and counts no more',
    )
    .option('--keep-going', 'leave lines out that cannot be read')
    .option('--hole <hole>', 'the results of this hole by metre')
    .option('--csv', 'with --hole: as CSV')
    .option('--html', 'charts as a page for the report')
    .option('--json', 'as data')
    .action(async (file: string | undefined, options) => {
      const folder = options.project;
      if (options.hole !== undefined) {
        const { resultsOfHole } = await import('../by-metre.ts');
        done(await resultsOfHole(outside, { folder, hole: options.hole, csv: options.csv === true }));
        return;
      }
      const { results } = await import('../results.ts');
      done(
        await results(outside, {
          folder,
          by: options.by,
          file,
          certificate: options.certificate,
          supersedes: options.supersedes,
          keepGoing: options.keepGoing === true,
          as: options.html === true ? 'html' : options.json === true ? 'json' : 'text',
        }),
      );
    });
}
