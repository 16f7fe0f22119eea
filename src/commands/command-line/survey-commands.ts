import { type Command, Option } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import { type Done, oneHole, withProject, withWho } from './options.ts';

/** Adds the commands about directions: line-up, survey, collars. */
export function addSurveyCommands(program: Command, outside: Outside, done: Done): void {
  addSurvey(program, outside, done);
  addLineUp(program, outside, done);
  addCollars(program, outside, done);
}

function addSurvey(program: Command, outside: Outside, done: Done): void {
  withWho(
    oneHole(
      program,
      'survey',
      'where the hole goes, how it comes out at the target, what is wrong with the shots; takes shots in from CSV',
    ),
  )
    .option('--csv', 'positions by metre as CSV')
    .addOption(new Option('--svg <view>', 'the hole drawn, as SVG').choices(['plan', 'section']))
    .option('--html', 'both pictures and the words, as one page for a browser')
    .option('--shots <file>', 'take the shots of a CSV file in, as one run')
    .option('--run <words>', 'with --shots: the run, as behind ;run', '')
    .option('--columns <names>', 'with --shots: its columns, like depth=MD,dip=Dip,azimuth=Azi,hole=Hole', '')
    .option('--bit-depths', 'with --shots: depths are the bit’s, the tool offset is taken off')
    .option('--inclinations', 'with --shots: its dips are counted from vertical')
    .option('--keep-going', 'with --shots: leave rows out that can be no shot')
    .option('--insist', 'with --shots: record what is doubtful too')
    .addHelpText(
      'after',
      '\nThe run: north-seeking, aligned or magnetic, then what is not as usual, the name of the tool last:\n  --run "north-seeking in open offset 1.5 on 2026-03-12 by JPE tool gyro 2"\nNothing is recorded while a row is wrong or doubtful, unless --keep-going or --insist says so.',
    )
    .action(async (hole, options) => {
      const { project: folder, json, csv, shots, run, columns, by } = options;
      if (shots === undefined) {
        const { survey } = await import('../survey.ts');
        done(
          await survey(outside, {
            folder,
            hole,
            json: json === true,
            csv: csv === true,
            svg: options.svg,
            html: options.html === true,
          }),
        );
        return;
      }
      const { surveyShots } = await import('../survey-shots.ts');
      done(
        await surveyShots(outside, {
          folder,
          hole,
          shots,
          run,
          columns,
          bitDepths: options.bitDepths === true,
          inclinations: options.inclinations === true,
          keepGoing: options.keepGoing === true,
          insist: options.insist === true,
          by,
        }),
      );
    });
}

function addLineUp(program: Command, outside: Outside, done: Done): void {
  oneHole(program, 'line-up', 'the planned direction in every north, and the line-up beside it').action(
    async (hole, options) => {
      const { lineUp } = await import('../line-up.ts');
      done(await lineUp(outside, { folder: options.project, hole, json: options.json === true }));
    },
  );
}

function addCollars(program: Command, outside: Outside, done: Done): void {
  withWho(withProject(program.command('collars')))
    .description(
      'take surveyed collars in from CSV: each beside the positions its hole has, nothing overwritten',
    )
    .argument('<file>', 'CSV of hole, easting, northing, elevation, in metres')
    .option('--columns <names>', 'its columns, like hole=HoleID,easting=E,northing=N,elevation=RL', '')
    .option('--source <words>', 'who surveyed them, when')
    .option('--mine-grid', 'positions are in the local mine grid of project.json')
    .option('--keep-going', 'take the sound rows though others are not')
    .action(async (file, options) => {
      const { collars } = await import('../collars.ts');
      done(
        await collars(outside, {
          folder: options.project,
          file,
          columns: options.columns,
          source: options.source,
          mineGrid: options.mineGrid === true,
          keepGoing: options.keepGoing === true,
          by: options.by,
        }),
      );
    });
}
