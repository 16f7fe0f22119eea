import { planReadings, type ReadingsFile, type ReadingsPlan } from '../acts/readings/plan-readings.ts';
import { readingWords } from '../acts/readings/typed-reading.ts';
import type { Outside } from '../desk/outside.ts';
import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import type { Project } from '../project/project.ts';
import { formatInterval } from '../quantity/interval.ts';
import type { NumberField, ReadingColumns } from '../schema/logging-schema.ts';
import { projectForHole } from '../standing/hole-schema.ts';
import { columnFields } from '../standing/reading-rows.ts';
import { atProject, holeNamed, type Shared } from './at-project.ts';
import { sayFindings } from './check.ts';
import { readCsvFile } from './csv-file.ts';
import { wrongUse } from './findings.ts';
import { EXIT, refuse, say, sayAside, sayJson, sayTrouble } from './say.ts';
import { submitOn } from './submit.ts';
import { tableText } from './table-text.ts';

/** What `offsider readings` is given. */
export interface ReadingsAsked extends Shared {
  readonly hole: string;
  readonly file: string;
  /** The column of the log; the only one of the project if none is given. */
  readonly field?: string | undefined;
  /** Headings said here come before those of the field in logging.json. */
  readonly columns: { readonly [Name in keyof ReadingColumns]?: string | undefined };
  readonly choices: ReadingsFile['choices'];
  /** Show what would be written, and write nothing. */
  readonly preview: boolean;
  readonly json: boolean;
}

/**
 * Takes the readings of an instrument from its CSV into the rows of a hole, as one edit. Gives 1 where a line can't be taken: then
 * nothing of the file is.
 */
export function readings(outside: Outside, asked: ReadingsAsked): Promise<number> {
  const { preview, json } = asked;
  return atProject(outside, { ...asked, write: !preview }, async (at) => {
    const hole = holeNamed(at, asked.hole);
    const field = fieldAsked(at.project, asked.field);
    const csv = await readCsvFile(asked.file);
    const wrong = [hole, field, csv].flatMap((each) => (each.ok ? [] : each.findings));
    if (!hole.ok || !field.ok || !csv.ok) return refuse(outside, ...wrong);
    const { file, records } = csv.value;
    const columns = columnsOf(field.value, asked.columns);
    const { schema } = projectForHole(at.project, hole.value);
    const plan = planReadings(schema, hole.value, field.value, {
      file,
      records,
      columns,
      choices: asked.choices,
    });
    if (!plan.ok) return nothingTaken(outside, plan.findings, json);
    const { made } = plan.value;
    if (!preview && made.changes.length > 0) {
      const { kind, id } = hole.value;
      const unsaved = await submitOn(at, { document: { kind, id }, made });
      if (unsaved !== undefined) return unsaved;
    }
    if (json) sayJson(outside, { field: field.value.name, written: !preview, ...data(plan.value) });
    else say(outside, planText(field.value, plan.value, preview));
    return EXIT.fine;
  });
}

/** Says every line that can't be taken; gives the exit code of findings. */
function nothingTaken(outside: Outside, findings: readonly Finding[], json: boolean): number {
  if (json) return sayFindings(outside, findings, true);
  sayTrouble(outside, { findings });
  sayAside(outside, 'Nothing of the file was taken.');
  return EXIT.findings;
}

function fieldAsked({ schema }: Project, name: string | undefined): Result<NumberField> {
  const fields = columnFields(schema);
  const found = name === undefined ? fields[0] : fields.find((field) => field.name === name);
  if (found !== undefined && (name !== undefined || fields.length === 1)) return ok(found);
  const names = fields.map((field) => field.name).join(', ');
  return refused(
    wrongUse.at(
      { file: 'logging.json', field: name ?? 'fields' },
      {
        problem: name === undefined ? 'the column is missing' : `no column of readings is called ${name}`,
        remedy:
          names === '' ? 'Mark a number with "column": true there.' : `Give --field with one of ${names}.`,
      },
    ),
  );
}

/** Headings as said on the command line, else as the field keeps them; a depth said one way replaces the other. */
function columnsOf(field: NumberField, said: ReadingsAsked['columns']): ReadingColumns {
  const { from, to, depth, ...kept } = field.csv ?? {};
  const saysDepth = said.from !== undefined || said.to !== undefined || said.depth !== undefined;
  const places = saysDepth ? {} : { from, to, depth };
  const all = Object.entries({ ...kept, ...places }).filter(([, heading]) => heading !== undefined);
  const over = Object.entries(said).filter(([, heading]) => heading !== undefined);
  return Object.fromEntries([...all, ...over]);
}

function data({ taken, unchanged, blank, otherHoles }: ReadingsPlan) {
  return { taken, unchanged, blank, otherHoles };
}

function planText(field: NumberField, plan: ReadingsPlan, preview: boolean): string {
  const { taken, unchanged, blank, otherHoles } = plan;
  const rows = taken.map(({ was, now, ...interval }) => [
    formatInterval(interval),
    readingWords(field, now),
    was === undefined || 'absent' in was ? '' : `was ${readingWords(field, was)}`,
  ]);
  const counts = [
    `${taken.length} ${taken.length === 1 ? 'reading' : 'readings'} of ${field.label}${preview ? ' would be taken; nothing was written' : ' taken'}`,
    ...(unchanged === 0 ? [] : [`${unchanged} there already`]),
    ...(blank === 0 ? [] : [`without a reading: ${blank}`]),
    ...(otherHoles === 0 ? [] : [`of other holes: ${otherHoles}`]),
  ];
  const table = preview && rows.length > 0 ? [tableText([['metre', 'reading', ''], ...rows])] : [];
  return [...table, `${counts.join(', ')}.`].join('\n');
}
