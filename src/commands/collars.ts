import { type CollarGiven, takeCollars } from '../acts/take-collars.ts';
import type { Outside } from '../desk/outside.ts';
import { type Finding, ok, type Result } from '../finding/finding.ts';
import { headerOf } from '../hole/hole.ts';
import { siteOfProject } from '../standing/survey.ts';
import { columnsSaid, type TextTable } from '../survey/table.ts';
import { type AtProject, atProject, holesOf, type Shared } from './at-project.ts';
import { readCsvFile } from './csv-file.ts';
import { wrongUse } from './findings.ts';
import { makerOf, submitMade } from './lines/submit-made.ts';
import { EXIT, refuse, say, sayAside, sayTrouble } from './say.ts';

/** What `offsider collars` is given. */
export interface CollarsAsked extends Shared {
  /** CSV file of surveyed collars. */
  readonly file: string;
  /** Names of its columns, `hole=HoleID,easting=E`. */
  readonly columns: string;
  readonly source: string | undefined;
  readonly mineGrid: boolean;
  /** Take the sound rows though others are not. */
  readonly keepGoing: boolean;
}

const KEYS = ['hole', 'easting', 'northing', 'elevation'] as const;

/** Takes surveyed collars from a CSV, each beside the positions its hole has; paths are then counted from them. */
export async function collars(outside: Outside, asked: CollarsAsked): Promise<number> {
  const read = await readCsvFile(asked.file);
  if (!read.ok) return refuse(outside, ...read.findings);
  const { file, records: table } = read.value;
  return atProject(outside, { ...asked, write: true }, async (at) => {
    if (asked.mineGrid && siteOfProject(at.project).mineGrid === undefined)
      return refuse(outside, noMineGrid());
    const columns = columnsOf(table, asked.columns);
    if (!columns.ok) return refuse(outside, ...columns.findings);
    const {
      collars: given,
      refused: bad,
      doubts,
    } = takeCollars(
      at.project,
      holesOf(at.desk),
      {
        table,
        columns: columns.value,
        source: asked.source ?? `surveyed, ${file}`,
        inMineGrid: asked.mineGrid,
      },
      { file },
      makerOf(at.desk),
    );
    const told = [...bad, ...doubts];
    if (told.length > 0) sayTrouble(outside, { findings: told });
    if (bad.length > 0 && !asked.keepGoing) {
      sayAside(outside, 'Nothing is recorded. Mend the rows, or give --keep-going to leave them out.');
      return EXIT.findings;
    }
    return recordAll(at, given, told.length > 0);
  });
}

async function recordAll(at: AtProject, given: readonly CollarGiven[], told: boolean): Promise<number> {
  for (const one of given) {
    const { kind, id } = one.hole;
    const lines = { desk: at.desk, project: at.project, hole: { kind, id }, noteMismatches: false };
    const done = await submitMade(lines, ok(one.made));
    if (done.kind === 'refused')
      return refuse(at.outside, wrongUse.at({ hole: id }, { problem: done.problem, remedy: done.remedy }));
    say(at.outside, wordsOf(one));
  }
  if (given.length === 0) say(at.outside, 'Nothing new: every position is there already.');
  return told ? EXIT.findings : EXIT.fine;
}

function wordsOf({ hole, collar, from }: CollarGiven): string {
  const { name } = headerOf(hole);
  const place = `${(collar.eastingMm / 1000).toFixed(3)} E ${(collar.northingMm / 1000).toFixed(3)} N ${(collar.elevationMm / 1000).toFixed(3)} m`;
  const moved =
    from === undefined
      ? ''
      : `, ${from.metres.toFixed(2)} m from the ${from.rank} one and ${Math.abs(from.upM).toFixed(2)} m ${from.upM < 0 ? 'lower' : 'higher'}`;
  return `${name}: surveyed collar ${place}${moved}. The others are kept.`;
}

function columnsOf(table: TextTable, said: string): Result<Record<(typeof KEYS)[number], string>> {
  const columns = columnsSaid(table, KEYS, said, { file: '--columns' });
  if (!columns.ok) return columns;
  const {
    hole = 'hole',
    easting = 'easting',
    northing = 'northing',
    elevation = 'elevation',
  } = columns.value;
  return ok({ hole, easting, northing, elevation });
}

function noMineGrid(): Finding {
  return wrongUse.at(
    { file: 'project.json', field: 'survey.mineGrid' },
    {
      problem: 'the project has no mine grid',
      remedy: 'Describe it there first, or give positions on the map grid.',
    },
  );
}
