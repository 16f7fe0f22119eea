import { type Command, Option } from 'commander';
import type { Outside } from '../../desk/outside.ts';
import { type Done, inLines, oneHole, shared } from './options.ts';

/** Adds the commands about directions: line-up, survey, collars. */
export function addSurveyCommands(program: Command, outside: Outside, done: Done): void {
  addSurvey(program, outside, done);
  addLineUp(program, outside, done);
  addCollars(program, outside, done);
}

function addSurvey(program: Command, outside: Outside, done: Done): void {
  oneHole(
    program,
    'survey',
    'where the hole goes, how it comes out at the target, what is wrong with the shots; takes shots in from CSV',
  )
    .option('--csv', 'positions by metre as CSV')
    .addOption(new Option('--svg <view>', 'the hole drawn, as SVG').choices(['plan', 'section']))
    .option('--html', 'both pictures and the words, as one page for a browser')
    .option('--shots <file>', 'take the shots of a CSV file in, as one run')
    .option('--run <words>', 'with --shots: the run, as after ;run', '')
    .option('--columns <names>', 'with --shots: its columns, like depth=MD,dip=Dip,azimuth=Azi,hole=Hole', '')
    .option('--bit-depths', 'with --shots: depths are the bit’s, the tool offset is taken off')
    .option('--inclinations', 'with --shots: its dips are counted from vertical')
    .option('--keep-going', 'with --shots: leave rows out that can be no shot')
    .option('--insist', 'with --shots: record what is doubtful too')
    .addHelpText(
      'after',
      '\nThe run: north-seeking, aligned or magnetic, then what is not as usual, the name of the tool last:\n  --run "north-seeking in open offset 1.5 on 2026-03-12 by JPE tool gyro 2"\nNothing is recorded while a row is wrong or doubtful, unless --keep-going or --insist says so.',
    )
    .action(async (hole, options, command: Command) => {
      const given = shared(command);
      const { csv, shots, run, columns } = options;
      if (shots === undefined) {
        const { survey } = await import('../survey.ts');
        done(
          await survey(outside, {
            ...given,
            hole,
            csv: csv === true,
            svg: options.svg,
            html: options.html === true,
          }),
        );
        return;
      }
      const { surveyShots } = await import('../survey-shots.ts');
      done(
        await inLines(outside, command, (printing) =>
          surveyShots(printing, {
            ...given,
            hole,
            shots,
            run,
            columns,
            bitDepths: options.bitDepths === true,
            inclinations: options.inclinations === true,
            keepGoing: options.keepGoing === true,
            insist: options.insist === true,
          }),
        ),
      );
    });
}

const gathered = (text: string, before: readonly string[]): readonly string[] => [...before, text];

function addLineUp(program: Command, outside: Outside, done: Done): void {
  oneHole(
    program,
    'line-up',
    'the planned direction in every north and the line-up beside it; with readings: holds them against the plan',
  )
    .option('--cautions <who>', 'who read them, or read: whoever signs; read is not inducted')
    .option('--permission <who>', 'the driller who gave permission, the rig stopped; never who signs')
    .addOption(new Option('--way <way>', 'what the rig is set by').choices(['pegs', 'device', 'compass']))
    .option(
      '--azimuth <degrees>',
      'of the mast, from grid (pegs) or true (device) north; add t, m, g, l for another',
    )
    .option(
      '--compass <readings>',
      'metres from the rig and readings, 22:269.5,270; sighted back 30:89.5b',
      gathered,
      [],
    )
    .option('--crew-dip <degrees>', 'dip of the mast by the crew, down negative')
    .option('--clinometer <degrees>', 'dip of the mast by your own clinometer')
    .option('--collar <position>', 'east, north, height in metres of the grid: "412500.2 6002241 431"')
    .option('--gps <path>', 'collar by NMEA 0183 from a file or a device')
    .option('--record', 'record it: accepted inside tolerance, else refused with the correction to request')
    .option('--because <why>', 'with --record: why it is accepted outside tolerance')
    .addHelpText(
      'after',
      '\nOnly the driller moves the rig; a correction is a request. = after a reading accepts it.',
    )
    .action(async (hole, options, command: Command) => {
      const given = shared(command);
      const { record, because, ...readings } = options;
      const { isRead } = await import('../line-up-readings.ts');
      if (!isRead(readings) && record !== true) {
        const { lineUp } = await import('../line-up.ts');
        done(await lineUp(outside, { ...given, hole }));
        return;
      }
      const { lineUpTake } = await import('../line-up-take.ts');
      done(
        await lineUpTake(outside, {
          ...given,
          hole,
          readings,
          record: record === true,
          because,
        }),
      );
    });
}

function addCollars(program: Command, outside: Outside, done: Done): void {
  program
    .command('collars')
    .description(
      'take surveyed collars in from CSV: each beside the positions its hole has, nothing overwritten',
    )
    .argument('<file>', 'CSV of hole, easting, northing, elevation, in metres')
    .option('--columns <names>', 'its columns, like hole=HoleID,easting=E,northing=N,elevation=RL', '')
    .option('--source <words>', 'who surveyed them, when')
    .option('--mine-grid', 'positions are in the local mine grid of project.json')
    .option('--keep-going', 'take the sound rows though others are not')
    .action(async (file, options, command: Command) => {
      const { collars } = await import('../collars.ts');
      done(
        await inLines(outside, command, (printing) =>
          collars(printing, {
            ...shared(command),
            file,
            columns: options.columns,
            source: options.source,
            mineGrid: options.mineGrid === true,
            keepGoing: options.keepGoing === true,
          }),
        ),
      );
    });
}
