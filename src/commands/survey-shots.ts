import { type ShotsGiven, takeShots } from '../acts/take-shots.ts';
import type { Outside } from '../desk/outside.ts';
import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { headerOf } from '../hole/hole.ts';
import { RUN_FORM, readRunSaid } from '../survey/shots/run-said.ts';
import type { ShotColumns } from '../survey/shots/shot-table.ts';
import { columnsSaid } from '../survey/table.ts';
import { atProject, holeNamed, type Shared } from './at-project.ts';
import { readCsvFile } from './csv-file.ts';
import { wrongUse } from './findings.ts';
import { makerOf, submitMade } from './lines/submit-made.ts';
import { EXIT, refuse, say, sayAside, sayTrouble } from './say.ts';

/** What `offsider survey <hole> --shots` is given. */
export interface ShotsAsked extends Shared {
  readonly hole: string;
  /** CSV file of shots. */
  readonly shots: string;
  /** The run in words, as behind `;run`. */
  readonly run: string;
  /** Names of its columns, `depth=MD,azimuth=Azi`. */
  readonly columns: string;
  readonly bitDepths: boolean;
  readonly inclinations: boolean;
  /** Leave rows out that can be no shot. */
  readonly keepGoing: boolean;
  /** Record what is doubtful too. */
  readonly insist: boolean;
}

const KEYS = ['hole', 'depth', 'dip', 'azimuth', 'field', 'magneticdip'] as const;

/** Takes the shots of a CSV into a hole as one run. Everything doubtful is told first, and nothing is recorded unasked. */
export async function surveyShots(outside: Outside, asked: ShotsAsked): Promise<number> {
  const given = await givenBy(asked);
  if (!given.ok) return refuse(outside, ...given.findings);
  return atProject(outside, { ...asked, write: true }, async (at) => {
    const hole = holeNamed(at, asked.hole);
    if (!hole.ok) return refuse(outside, ...hole.findings);
    const taken = takeShots(
      at.project,
      hole.value,
      given.value,
      { file: given.value.file },
      makerOf(at.desk),
      at.desk.documents().values(),
    );
    const told = [...taken.impossible, ...taken.doubts];
    if (told.length > 0) sayTrouble(outside, { findings: told });
    const held =
      (taken.impossible.length > 0 && !asked.keepGoing) || (taken.doubts.length > 0 && !asked.insist);
    if (taken.made === undefined || held) {
      sayAside(outside, `Nothing is recorded.${waysOn(taken.impossible, taken.doubts, taken.shots)}`);
      return EXIT.findings;
    }
    const { kind, id } = hole.value;
    const lines = { desk: at.desk, project: at.project, hole: { kind, id }, noteMismatches: false };
    const done = await submitMade(lines, ok(taken.made));
    if (done.kind === 'refused')
      return refuse(outside, wrongUse.at({ hole: id }, { problem: done.problem, remedy: done.remedy }));
    const { tool, toolClass, north } = given.value.run;
    say(
      outside,
      `${headerOf(hole.value).name}: ${taken.shots} shots recorded as one run of ${tool} (${toolClass}, ${north} north).`,
    );
    return told.length > 0 ? EXIT.findings : EXIT.fine;
  });
}

function waysOn(impossible: readonly Finding[], doubts: readonly Finding[], shots: number): string {
  return [
    ...(impossible.length > 0 && shots > 0
      ? [' Mend the rows, or give --keep-going to leave them out.']
      : []),
    ...(doubts.length > 0 ? [' Where the doubtful ones are so, give --insist.'] : []),
  ].join('');
}

async function givenBy(asked: ShotsAsked): Promise<Result<ShotsGiven & { readonly file: string }>> {
  const run = readRunSaid(asked.run);
  if (!run.ok)
    return refused(
      wrongUse.at(
        { file: '--run' },
        { excerpt: asked.run, problem: run.problem, remedy: `Say it as: ${RUN_FORM}.` },
      ),
    );
  const read = await readCsvFile(asked.shots);
  if (!read.ok) return read;
  const { file, records: table } = read.value;
  const said = columnsSaid(table, KEYS, asked.columns, { file: '--columns' });
  if (!said.ok) return said;
  const { depth = 'depth', dip = 'dip', magneticdip, ...others } = said.value;
  const columns: ShotColumns = {
    ...others,
    depth,
    dip,
    ...(magneticdip === undefined ? {} : { magneticDip: magneticdip }),
  };
  return ok({
    file,
    table,
    columns,
    run: run.run,
    on: run.on,
    bitDepths: asked.bitDepths,
    inclinations: asked.inclinations,
  });
}
