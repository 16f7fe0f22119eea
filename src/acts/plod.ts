import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { holeNouns } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Depth } from '../quantity/depth.ts';
import { formatMinutes, localDate, localTime, type Stamp } from '../quantity/stamp.ts';
import type { Document, Id, Thing } from '../record/document.ts';
import { type Answer, openQueries, queryFigures, queryKey, queryName, queryNamed } from '../shift/answers.ts';
import { SHIFT_REFUSALS } from '../shift/findings.ts';
import { correctLine, recordPlod, signPlod, withdrawPlod } from '../shift/plod-commands.ts';
import {
  doubtOf,
  type NewPlodLine,
  overlapMinutes,
  type PlodContext,
  parsePlodLine,
} from '../shift/plod-line.ts';
import { queryList } from '../shift/query-list.ts';
import type { Reconciliation } from '../shift/reconcile.ts';
import { type Plod, shiftHeaderOf, shiftThings } from '../shift/shift.ts';
import { closed, plannedEnd } from '../shift/shift-end.ts';
import { figuresOf, isChanged, isOurs, sealOf, signaturesOn, timesOf } from '../shift/signed.ts';
import { lineWords } from './shift-line.ts';
import { stampsAround } from './shift-times.ts';

/** What the lines of a plod of a shift are read against. */
export function plodContext(
  project: Project,
  documents: readonly Document[],
  shift: Document,
  above: readonly NewPlodLine[],
  now: Stamp,
): PlodContext {
  const { shifts } = project.shift;
  const { startsAt, endedAt } = shiftHeaderOf(closed(shift, { documents, shifts, now }));
  const holes = documents.filter((each) => each.kind === 'hole');
  const depthOf = (hole: Document): readonly (readonly [Id, Depth])[] => {
    const rods = holeNouns(hole, 'rods').map((rod) => rod.depthMm);
    return rods.length === 0 ? [] : [[hole.id, rods.reduce((a, b) => Math.max(a, b) as Depth)]];
  };
  return {
    ...lineWords(project, documents),
    written: project.settings.shift.plodColumns?.activities ?? [],
    startsAt,
    endsAt: endedAt ?? plannedEnd(shift, shifts, now),
    now,
    stamps: stampsAround(documents, shift),
    above,
    drilledMm: new Map(holes.flatMap(depthOf)),
  };
}

/** How the lines of a plod make the shift: minutes claimed, and what is missing or too much, in words; undefined where they make it. */
export function plodGap(
  lines: readonly NewPlodLine[],
  { startsAt, endsAt }: PlodContext,
): string | undefined {
  const length = Math.round((Date.parse(endsAt) - Date.parse(startsAt)) / 60_000);
  const overlap = lines.reduce(
    (sum, line, index) =>
      sum + lines.slice(0, index).reduce((all, each) => all + overlapMinutes(each, line), 0),
    0,
  );
  const claimed = lines.reduce((sum, line) => sum + line.minutes, 0) - overlap;
  const off = claimed - length;
  if (off === 0) return undefined;
  const hours = `${localTime(startsAt)}–${localTime(endsAt)}, ${formatMinutes(length)} h`;
  return off < 0
    ? `${formatMinutes(-off)} h of the shift (${hours}) are not on any line`
    : `the lines claim ${formatMinutes(off)} h more than the shift (${hours})`;
}

/** Records a sheet on its shift. Refused for a shift that has another one, unless it is said to be a second sheet. */
export function receivePlod(
  shift: Document,
  sheet: Plod,
  lines: readonly NewPlodLine[],
  { second }: { readonly second: boolean },
  maker: Maker,
): Result<Made> {
  const [there] = shiftThings(shift, 'plods').filter(([, each]) => each.sheet !== sheet.sheet);
  if (there !== undefined && !second) return refused(another(shift, there[0], there[1].sheet));
  if (lines.length === 0)
    return refused(
      SHIFT_REFUSALS.lineUnsound.at(
        { thing: `plod ${sheet.sheet}` },
        { problem: 'it has no lines', remedy: 'Type them, one an activity.' },
      ),
    );
  return recordPlod(shift, sheet, lines, maker);
}

function another(shift: Document, id: Id, sheet: string): Finding {
  const isSigned = signaturesOn(shift, id).some(isOurs);
  return SHIFT_REFUSALS.plodAnother.at(
    { thing: `shift ${shift.id}` },
    {
      problem: `sheet ${sheet} is recorded for it already${isSigned ? ', and signed' : ''}`,
      remedy: isSigned
        ? 'Check the date on the sheet. If it adds to the signed one, put = after its number (--second).'
        : `Check the date on the sheet. If it adds to the first, put = after its number (--second); else withdraw ${sheet} first.`,
    },
  );
}

/** The query list of a shift, with its presumed end. */
export function queriesOf(
  project: Project,
  documents: readonly Document[],
  shift: Document,
  now: Stamp,
): Reconciliation {
  return queryList(
    closed(shift, { documents, shifts: project.shift.shifts, now }),
    documents,
    project.shift,
    now,
  );
}

/** What can be done with the plod of a shift once it is recorded, as a line: the same in the console and on the command line. */
export const PLOD_DEEDS: readonly (readonly [form: string, does: string])[] = [
  ['agree 15:05 he was at the dam', 'the query called 15:05: the sheet is right, and why'],
  ['correct 15:05 sheet changed', 'the sheet is wrong there, and was corrected'],
  ['open 15:05 ask Dee', 'the query called 15:05 stays open'],
  ['line 3 10:45-11:10 v 2sh', 'line 3 of the sheet was taken down wrong: the first is kept'],
  ['sign 0412', 'sign the sheet, with the queries that are open named'],
  ['withdraw 0412', 'take an unsigned sheet out, to record it again'],
];

/** Does one of {@link PLOD_DEEDS}; undefined where the line is none of them. */
export function plodDeed(
  project: Project,
  documents: readonly Document[],
  shift: Document,
  text: string,
  maker: Maker,
): Result<Made> | undefined {
  const [word = '', object = '', ...rest] = text.trim().split(/ +/);
  const remark = rest.join(' ');
  const after = text.trim().slice(word.length).trim();
  const answer = ({ agree: 'agreed', correct: 'corrected', open: 'open' } as const)[word];
  if (answer !== undefined) return answerQuery(project, documents, shift, { answer, text: after }, maker);
  if (word === 'sign') return sign(project, documents, shift, { sheet: object, remark }, maker);
  if (word === 'line') return correctTyped(project, documents, shift, after, maker);
  if (word !== 'withdraw') return undefined;
  const found = sheetNamed(shift, object);
  return found.ok ? withdrawPlod(shift, found.value) : found;
}

/** `3 10:45-11:10 v 2sh`, or `0413 3 …` where the shift has two sheets: that line read again against the others of its sheet. */
function correctTyped(
  project: Project,
  documents: readonly Document[],
  shift: Document,
  typed: string,
  maker: Maker,
): Result<Made> {
  const isSheet = shiftThings(shift, 'plods').some(([, { sheet }]) => typed.startsWith(`${sheet} `));
  const [, sheet = '', count = '', text = ''] =
    (isSheet ? /^(\S+) +(\d{1,2}) +(.+)$/ : /^()(\d{1,2}) +(.+)$/).exec(typed) ?? [];
  const found = sheetNamed(shift, sheet);
  if (!found.ok) return found;
  const lines = shiftThings(shift, 'plodLines').filter(([, each]) => each.plod === found.value);
  const number = Number(count);
  const [id] = lines[number - 1] ?? [];
  if (id === undefined)
    return refused(
      notThere(
        shift,
        `line ${count}`.trim(),
        count === '' ? 'no line is named' : `the sheet has ${lines.length} lines`,
        'Type the number of the line, then the whole line: line 3 10:45-11:10 v 2sh.',
      ),
    );
  const all = lines.map(([, { plod: _plod, was: _was, ...line }]) => line);
  const context = plodContext(project, documents, shift, all.slice(0, number - 1), maker.at);
  const line = parsePlodLine(text, context);
  if (!line.ok) return line;
  const below = doubtOf(line.value, { ...context, above: all.toSpliced(number - 1, 1) });
  if (below !== undefined && !text.trimEnd().endsWith('='))
    return refused(
      SHIFT_REFUSALS.lineUnread.at(
        { thing: 'plod' },
        {
          excerpt: text,
          problem: below,
          remedy: 'If the sheet says so, type = at the end; it is queried later.',
        },
      ),
    );
  return correctLine(shift, id, { number, line: line.value }, maker);
}

function answerQuery(
  project: Project,
  documents: readonly Document[],
  shift: Document,
  given: { readonly answer: Answer; readonly text: string },
  maker: Maker,
): Result<Made> {
  const { queries } = queriesOf(project, documents, shift, maker.at);
  const named = queryNamed(queries, given.text);
  if (named === undefined) {
    const names = queries.map(queryName).join('; ');
    const there = queries.length === 0 ? 'There are no queries.' : `Give its name, as in the list: ${names}.`;
    return refused(notThere(shift, `query ${given.text}`, 'there is no such query', there));
  }
  const { query, rest: remark } = named;
  const { answer } = given;
  const thing = {
    query: queryKey(query),
    answer,
    by: maker.by,
    at: maker.at,
    figures: queryFigures(query),
    ...(remark === '' ? {} : { remark }),
  };
  return ok({
    what: `query ${queryName(query)} ${answer}: ${query.problem}`,
    changes: [{ put: ['queryAnswers', maker.newId()], thing: thing as Thing }],
  });
}

function sign(
  project: Project,
  documents: readonly Document[],
  shift: Document,
  { sheet, remark }: { readonly sheet: string; readonly remark: string },
  maker: Maker,
): Result<Made> {
  const found = sheetNamed(shift, sheet);
  if (!found.ok) return found;
  const { queries, ...figures } = queriesOf(project, documents, shift, maker.at);
  const signer = signerOf(project, maker.by, shift);
  if (!signer.ok) return signer;
  const times = timesOf(closed(shift, { documents, shifts: project.shift.shifts, now: maker.at }));
  const before = signaturesOn(shift, found.value).findLast((each) => each.by === maker.by);
  if (before !== undefined && !isChanged(before, figures, times))
    return refused(
      SHIFT_REFUSALS.plodSigned.at(
        { thing: `plod ${sheet}`.trim() },
        {
          problem: `${maker.by} signed it ${localDate(before.at)} ${localTime(before.at)}, and no time or figure has changed since`,
          remedy: 'There is nothing to do.',
        },
      ),
    );
  const open = openQueries(shift, queries);
  return signPlod(
    shift,
    {
      plod: found.value,
      by: maker.by,
      role: signer.value,
      at: maker.at,
      openQueries: open.length,
      ...(remark === '' ? {} : { remark }),
      exceptions: open.map((query) => query.problem),
      ownCents: figures.ownBill.total,
      plodCents: figures.plodBill.total,
      figures: figuresOf(figures),
      times: [...times],
      seal: sealOf(figures, times),
    },
    maker,
  );
}

/** The role of who signs: a geologist or the camp for our side, the driller for the sheet itself. Refused for any other. */
function signerOf(project: Project, by: string, shift: Document): Result<string> {
  const { people } = project.settings;
  const role = people.find((each) => each.initials === by)?.role;
  if (role === 'geologist' || role === 'camp' || role === 'driller') return ok(role);
  const able = people.filter((each) => each.role === 'geologist' || each.role === 'camp');
  return refused(
    notThere(
      shift,
      `signature of ${by}`,
      role === undefined ? `${by} is not in project.json` : `${by} is ${role} in project.json`,
      `A geologist or the camp signs for us: ${able.map((each) => each.initials).join(', ')}. The driller may sign the sheet as its own.`,
    ),
  );
}

/** The sheet of that number; the only one where none is named. */
function sheetNamed(shift: Document, sheet: string): Result<Id> {
  const plods = shiftThings(shift, 'plods');
  const found =
    sheet === '' && plods.length === 1 ? plods[0] : plods.find(([, each]) => each.sheet === sheet);
  if (found !== undefined) return ok(found[0]);
  const there = plods.map(([, each]) => each.sheet).join(', ');
  return refused(
    notThere(
      shift,
      `plod ${sheet}`,
      'this shift has no such sheet',
      there === '' ? 'Record the sheet first: plod 0412.' : `It has ${there}.`,
    ),
  );
}

const notThere = (shift: Document, thing: string, problem: string, remedy: string): Finding =>
  SHIFT_REFUSALS.notThere.at({ file: `shifts/${shift.id}.json`, thing }, { problem, remedy });
