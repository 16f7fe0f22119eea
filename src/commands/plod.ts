import { createInterface } from 'node:readline';
import { plodContext, plodDeed, plodGap, queriesOf, receivePlod } from '../acts/plod.ts';
import type { Outside } from '../desk/outside.ts';
import type { Finding, Result } from '../finding/finding.ts';
import { formatMinutes, localTime } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { openQueries } from '../shift/answers.ts';
import { plodFromCsv } from '../shift/plod-csv.ts';
import { notInOrder, type RecordsOfShift, recordsByShift } from '../shift/plod-csv-shifts.ts';
import {
  type NewPlodLine,
  type PlodContext,
  parsePlodLine,
  parseSheetPart,
  type SheetPart,
} from '../shift/plod-line.ts';
import { type Plod, shiftHeaderOf, shiftThings } from '../shift/shift.ts';
import { signersOf } from '../shift/signed.ts';
import { latestShift } from '../standing/activity.ts';
import { shiftNamed } from './activity.ts';
import { type AtProject, atProject, type Shared } from './at-project.ts';
import { readCsvFile } from './csv-file.ts';
import { wrongUse } from './findings.ts';
import { makerOf } from './lines/submit-made.ts';
import { EXIT, refuse, say, sayJson, sayTrouble } from './say.ts';
import { submitAll, submitOn } from './submit.ts';
import { tableText } from './table-text.ts';

/** What is given of the shift that a plod is for. */
interface OfShift extends Shared {
  readonly shift?: string | undefined;
}

/** What `offsider plod new` is given. */
export interface NewPlodAsked extends OfShift {
  readonly sheet: string;
  readonly from?: string | undefined;
  readonly csv?: string | undefined;
  readonly crew?: string | undefined;
  readonly remark?: string | undefined;
  /** A second sheet of a shift that has one. */
  readonly second: boolean;
  /** Overlaps, and metres that the hole hasn't got, are taken as the sheet has them. */
  readonly asWritten: boolean;
}

/** A sheet that is read, and not recorded yet: its shift, its lines, what the lines say of the whole. */
interface ReadSheet {
  readonly shift: Document;
  readonly sheet: string;
  readonly context: PlodContext;
  readonly lines: readonly NewPlodLine[];
  readonly part: SheetPart;
}

/**
 * Records a driller's sheet: lines from stdin, or a CSV, which may hold a sheet of each of several shifts. All of it or nothing: every
 * line that can't be taken is named.
 */
export function newPlod(outside: Outside, asked: NewPlodAsked): Promise<number> {
  return onShift(outside, asked, async (at, shift) => {
    const sheets =
      asked.csv === undefined ? await typedSheet(at, shift, asked) : await csvSheets(at, shift, asked);
    if (!sheets.ok) return refuseLines(at, sheets.findings);
    const given = wholeSheet(asked);
    if (!given.ok) return refuseLines(at, given.findings);
    const made = sheets.value.map(({ shift, sheet, lines, part }) => {
      const plod: Plod = {
        sheet,
        receivedAt: at.desk.now(),
        ...(asked.from === undefined ? {} : { from: asked.from }),
        ...part,
        ...given.value,
      };
      return receivePlod(shift, plod, lines, asked, makerOf(at.desk));
    });
    const findings = made.flatMap((each) => (each.ok ? [] : each.findings));
    if (findings.length > 0) return refuseLines(at, findings);
    const edits = made.flatMap((each, index) => {
      const id = sheets.value[index]?.shift.id;
      return each.ok && id !== undefined
        ? [{ document: { kind: 'shift' as const, id }, made: each.value }]
        : [];
    });
    const failed = await submitAll(at, edits);
    if (failed !== undefined) return failed;
    const gaps = sheets.value.map(({ lines, context }) => plodGap(lines, context));
    for (const [index, { document, made: each }] of edits.entries())
      say(at.outside, `${document.id}: ${each.what}${gaps[index] === undefined ? '' : `; ${gaps[index]}`}`);
    return gaps.every((gap) => gap === undefined) ? EXIT.fine : EXIT.findings;
  });
}

const contextOf = ({ desk, project }: AtProject, shift: Document): PlodContext =>
  plodContext(project, [...desk.documents().values()], shift, [], desk.now());

async function typedSheet(
  at: AtProject,
  shift: Document,
  asked: NewPlodAsked,
): Promise<Result<readonly ReadSheet[]>> {
  const context = contextOf(at, shift);
  const { lines, part } = await typedLines(at, context, asked);
  return lines.ok
    ? { ok: true, value: [{ shift, sheet: asked.sheet, context, lines: lines.value, part }] }
    : lines;
}

async function typedLines(
  { outside }: AtProject,
  context: PlodContext,
  { asWritten }: NewPlodAsked,
): Promise<{ readonly lines: Result<readonly NewPlodLine[]>; readonly part: SheetPart }> {
  const lines: NewPlodLine[] = [];
  const findings: Finding[] = [];
  let whole: SheetPart = {};
  let number = 0;
  for await (const text of createInterface({ input: outside.stdin, crlfDelay: Number.POSITIVE_INFINITY })) {
    number += 1;
    if (text.trim() === '' || text.trim().startsWith('#')) continue;
    const part = parseSheetPart(text);
    if (part?.ok) {
      whole = { ...whole, ...part.value };
      continue;
    }
    const line = part ?? parsePlodLine(asWritten ? `${text} =` : text, { ...context, above: lines });
    if (line.ok) lines.push(line.value);
    else findings.push(...line.findings.map((each) => ({ ...each, place: { thing: `line ${number}` } })));
  }
  return { lines: findings.length > 0 ? { ok: false, findings } : { ok: true, value: lines }, part: whole };
}

/** What the options say of the sheet as a whole. */
function wholeSheet({ crew, remark }: NewPlodAsked): Result<SheetPart> {
  const names = crew === undefined ? undefined : parseSheetPart(`crew ${crew}`);
  if (names?.ok === false) return names;
  return { ok: true, value: { ...names?.value, ...(remark === undefined ? {} : { remark }) } };
}

/** The sheets of a CSV: one for the shift asked for, or where it has dates one for each shift. */
async function csvSheets(
  at: AtProject,
  asked: Document,
  { csv = '', asWritten, sheet, shift: only }: NewPlodAsked,
): Promise<Result<readonly ReadSheet[]>> {
  const columns = at.project.settings.shift.plodColumns;
  if (columns === undefined)
    return refusedWith(
      'nothing says what its columns are',
      'Name them in project.json, under shift.plodColumns: {"from": "Start", "to": "End", "activity": "Task"}.',
    );
  const file = await readCsvFile(csv);
  if (!file.ok) return file;
  const { records } = file.value;
  const shifts = [...at.desk.documents().values()].filter((each) => each.kind === 'shift');
  const found: Result<readonly RecordsOfShift[]> =
    columns.date === undefined
      ? { ok: true, value: [{ shift: asked, records }] }
      : recordsByShift(records, columns, shifts, { rig: shiftHeaderOf(asked).rig, only });
  if (!found.ok) return found;
  const sheets: ReadSheet[] = [];
  const findings: Finding[] = [];
  for (const { shift, sheet: own = sheet, records: its } of found.value) {
    const context = contextOf(at, shift);
    const lines = plodFromCsv(its, columns, context, asWritten);
    const disorder =
      lines.ok && columns.date !== undefined && !asWritten ? notInOrder(shift, lines.value) : undefined;
    if (disorder !== undefined) findings.push(disorder);
    else if (lines.ok) sheets.push({ shift, sheet: own, context, lines: lines.value, part: {} });
    else findings.push(...lines.findings);
  }
  return findings.length > 0 ? { ok: false, findings } : { ok: true, value: sheets };
}

const refusedWith = (problem: string, remedy: string): Result<never> => ({
  ok: false,
  findings: [wrongUse.at({ file: 'project.json', field: 'shift.plodColumns' }, { problem, remedy })],
});

function refuseLines({ outside }: AtProject, findings: readonly Finding[]): number {
  sayTrouble(outside, { findings });
  return EXIT.findings;
}

/** Agrees, corrects, leaves open, signs or withdraws, as the same line in the console does. */
export function plodLine(outside: Outside, asked: OfShift & { readonly line: string }): Promise<number> {
  return onShift(outside, asked, async (at, shift) => {
    const documents = [...at.desk.documents().values()];
    const made = plodDeed(at.project, documents, shift, asked.line, makerOf(at.desk));
    if (made === undefined) throw new Error(`not a deed: ${asked.line}`);
    if (!made.ok) return refuseLines(at, made.findings);
    const failed = await submitOn(at, { document: { kind: 'shift', id: shift.id }, made: made.value });
    if (failed !== undefined) return failed;
    say(at.outside, `${shift.id}: ${made.value.what}`);
    return EXIT.fine;
  });
}

/** Every sheet: its shift, when it came, what it claims, whether it is signed, how many queries are open. */
export function listPlods(outside: Outside, asked: Shared & { readonly json: boolean }): Promise<number> {
  return atProject(outside, asked, async ({ desk, project }) => {
    const documents = [...desk.documents().values()];
    const shifts = documents
      .filter((each) => each.kind === 'shift')
      .sort((a, b) => (shiftHeaderOf(a).startsAt < shiftHeaderOf(b).startsAt ? -1 : 1));
    const sheets = shifts.flatMap((shift) => {
      const open = openQueries(shift, queriesOf(project, documents, shift, desk.now()).queries).length;
      return shiftThings(shift, 'plods').map(([id, plod]) => {
        const lines = shiftThings(shift, 'plodLines').filter(([, line]) => line.plod === id);
        const minutes = lines.reduce((sum, [, line]) => sum + line.minutes, 0);
        return {
          shift: shift.id,
          ...plod,
          lines: lines.length,
          minutes,
          open,
          signedBy: signersOf(shift, id),
        };
      });
    });
    const without = shifts.filter((shift) => shiftThings(shift, 'plods').length === 0).map(({ id }) => id);
    if (asked.json) sayJson(outside, { sheets, without });
    else
      say(
        outside,
        [
          tableText([
            ['shift', 'sheet', 'received', 'lines', 'hours', 'open queries', 'signed'],
            ...sheets.map((each) => [
              each.shift,
              each.sheet,
              `${each.receivedAt.slice(0, 10)} ${localTime(each.receivedAt)}`,
              String(each.lines),
              formatMinutes(each.minutes),
              String(each.open),
              each.signedBy.join(', '),
            ]),
          ]),
          ...(without.length === 0 ? [] : [`No plod yet: ${without.join(', ')}`]),
        ].join('\n'),
      );
    return EXIT.fine;
  });
}

/** Opens the project for writing at the shift named, else the latest of the rig. */
function onShift(
  outside: Outside,
  asked: OfShift,
  work: (at: AtProject, shift: Document) => Promise<number>,
): Promise<number> {
  return atProject(outside, { ...asked, write: true }, async (at) => {
    const named = shiftNamed(at, asked.shift);
    if (!named.ok) return refuse(outside, ...named.findings);
    const rig = at.project.settings.rigs[0]?.name ?? '';
    const latest = latestShift(at.project, at.desk.documents().values(), rig, at.desk.now());
    const id = named.value?.id ?? latest?.id;
    const shift = id === undefined ? undefined : at.desk.get({ kind: 'shift', id });
    if (shift === undefined)
      return refuse(
        outside,
        wrongUse.at(
          { thing: `rig ${rig}` },
          { problem: 'no shift is recorded', remedy: 'Begin one: offsider activity begin 06:00.' },
        ),
      );
    return work(at, shift);
  });
}
