import {
  type DispatchSaid,
  dispatchNamed,
  makeDispatch,
  passOn,
  proposeDispatch,
  type TransferSaid,
  takeReceipt,
} from '../acts/dispatch.ts';
import type { Outside } from '../desk/outside.ts';
import { formatFinding } from '../finding/finding.ts';
import { sackRange } from '../sampling/dispatch/dispatch.ts';
import { checkDispatches, checkReceipt, checkTransfers } from '../sampling/dispatch/dispatch-check.ts';
import { type Dispatch, dispatchOf, sentNumbers } from '../sampling/dispatch/dispatch-noun.ts';
import {
  custodyLines,
  type SheetReader,
  sheetCsv,
  sheetHead,
  sheetHtml,
  sheetTable,
} from '../sampling/dispatch/dispatch-sheet.ts';
import { readReceipt } from '../sampling/dispatch/receipt-read.ts';
import { bagsOfHoles, dispatchesOf, toSend } from '../standing/dispatches.ts';
import { type AtProject, atProject, type Shared } from './at-project.ts';
import { readCsvFile } from './csv-file.ts';
import { makerOf } from './lines/submit-made.ts';
import { EXIT, refuse, say, sayFile, sayJson } from './say.ts';
import { submitOn } from './submit.ts';
import { tableText } from './table-text.ts';

/** Lists the dispatches of a project with their chains of custody, what is wrong with them, and what waits to be sent. */
export function dispatches(outside: Outside, asked: Shared & { readonly json: boolean }): Promise<number> {
  return atProject(outside, asked, async ({ desk, project }) => {
    const documents = [...desk.documents().values()];
    const waiting = toSend(project.sampling, documents);
    const all = dispatchesOf(documents);
    const findings = checkDispatches(all, bagsOfHoles(documents));
    if (asked.json) sayJson(outside, { dispatches: all, waiting, findings });
    else
      say(
        outside,
        [...all.flatMap(dispatchLines), waitingLine(waiting), ...findings.map(formatFinding)].join('\n'),
      );
    return findings.length > 0 ? EXIT.findings : EXIT.fine;
  });
}

function dispatchLines(dispatch: Dispatch): readonly string[] {
  const where =
    dispatch.receipts.length > 0
      ? 'received'
      : dispatch.transfers.length > 0
        ? `with ${dispatch.transfers.at(-1)?.to}`
        : 'on site';
  return [
    `${dispatch.name} to ${dispatch.laboratory}, ${where}`,
    ...custodyLines(dispatch).map((each) => `  ${each}`),
  ];
}

function waitingLine(waiting: readonly string[]): string {
  if (waiting.length === 0) return 'No bag waits to be sent.';
  return `${waiting.length} bags wait to be sent, ${waiting[0]} to ${waiting.at(-1)}: offsider dispatch new`;
}

/** Makes a dispatch up: everything that waits, or the bags said. `dryRun` only shows the sacks. */
export function newDispatch(
  outside: Outside,
  asked: Shared & DispatchSaid & { readonly dryRun: boolean },
): Promise<number> {
  return atProject(outside, { ...asked, write: !asked.dryRun }, async (at) => {
    const { desk, project } = at;
    const proposed = proposeDispatch(project, desk.documents().values(), asked, makerOf(desk));
    if (!proposed.ok) return refuse(outside, ...proposed.findings);
    const { name, laboratory, sacks } = proposed.value;
    if (!asked.dryRun) {
      const failed = await submitOn(at, makeDispatch(proposed.value, makerOf(desk)));
      if (failed !== undefined) return failed;
    }
    const bags = sacks.reduce((sum, sack) => sum + sack.bags.length, 0);
    say(
      outside,
      [
        `${asked.dryRun ? 'Would be: ' : ''}dispatch ${name} to ${laboratory}: ${bags} bags in ${sacks.length} sacks`,
        tableText([
          ['sack', 'bags', 'seal'],
          ...sacks.map((sack) => [
            String(sack.sack),
            sackRange(project.sampling.numbers, sack),
            sack.seal ?? '',
          ]),
        ]),
        ...(asked.dryRun ? [] : [`Its sheets: offsider dispatch sheet ${name} (--camp for camp's).`]),
      ].join('\n'),
    );
    return EXIT.fine;
  });
}

/** Records sacks that change hands. 1 where the count or the seal is not what was sent. */
export function passDispatch(
  outside: Outside,
  asked: Shared & TransferSaid & { readonly dispatch: string },
): Promise<number> {
  return changeDispatch(outside, asked, async (at, document) => {
    const failed = await submitOn(at, passOn(document, asked, makerOf(at.desk)));
    if (failed !== undefined) return failed;
    const dispatch = standing(at, document.id);
    return told(
      at,
      dispatch,
      checkTransfers({
        ...dispatch,
        transfers: dispatch.transfers.slice(-1),
        madeBy: dispatch.transfers.at(-2)?.to ?? dispatch.madeBy,
      }),
    );
  });
}

/** Takes the laboratory's receipt in, from a CSV, and holds it against what was sent. */
export function dispatchReceipt(
  outside: Outside,
  asked: Shared & { readonly dispatch: string; readonly file: string },
): Promise<number> {
  return changeDispatch(outside, asked, async (at, document) => {
    const csv = await readCsvFile(asked.file);
    if (!csv.ok) return refuse(outside, ...csv.findings);
    const numbers = readReceipt(at.project.sampling.numbers, csv.value.records, csv.value.file);
    if (!numbers.ok) return refuse(outside, ...numbers.findings);
    const { file, sha256 } = csv.value;
    const taken = takeReceipt(document, { file, sha256, numbers: [...numbers.value] }, makerOf(at.desk));
    if (!taken.ok) return refuse(outside, ...taken.findings);
    const failed = await submitOn(at, taken.value);
    if (failed !== undefined) return failed;
    const dispatch = standing(at, document.id);
    return told(at, dispatch, checkReceipt(dispatch));
  });
}

/** Prints a sheet of a dispatch: the laboratory's, which is blind, or camp's. */
export function dispatchSheet(
  outside: Outside,
  asked: Shared & {
    readonly dispatch: string | undefined;
    readonly reader: SheetReader;
    readonly as: 'text' | 'csv' | 'html';
  },
): Promise<number> {
  return atProject(outside, asked, async ({ desk }) => {
    const documents = [...desk.documents().values()];
    const document = dispatchNamed(documents, asked.dispatch);
    if (!document.ok) return refuse(outside, ...document.findings);
    const dispatch = dispatchOf(document.value);
    const table = sheetTable(dispatch, asked.reader, bagsOfHoles(documents));
    if (asked.as === 'csv') sayFile(outside, sheetCsv(table));
    else if (asked.as === 'html') sayFile(outside, sheetHtml(dispatch, asked.reader, table));
    else {
      const rows = table.map((row) => row.map(String));
      say(outside, [...sheetHead(dispatch, asked.reader), '', tableText(rows)].join('\n'));
    }
    return EXIT.fine;
  });
}

function changeDispatch(
  outside: Outside,
  asked: Shared & { readonly dispatch: string },
  change: (at: AtProject, document: Parameters<typeof dispatchOf>[0]) => Promise<number>,
): Promise<number> {
  return atProject(outside, { ...asked, write: true }, async (at) => {
    const document = dispatchNamed(at.desk.documents().values(), asked.dispatch);
    return document.ok ? change(at, document.value) : refuse(outside, ...document.findings);
  });
}

function standing({ desk }: AtProject, id: string): Dispatch {
  const document = desk.get({ kind: 'dispatch', id });
  if (document === undefined) throw new Error(`no dispatch ${id} at the desk`);
  return dispatchOf(document);
}

/** Says how a dispatch stands, and what the latest change shows. */
function told({ outside }: AtProject, dispatch: Dispatch, findings: ReturnType<typeof checkReceipt>): number {
  const whole = `${sentNumbers(dispatch).length} bags in ${dispatch.sacks.length} sacks: all as sent.`;
  say(
    outside,
    [...dispatchLines(dispatch), ...(findings.length === 0 ? [whole] : findings.map(formatFinding))].join(
      '\n',
    ),
  );
  return findings.length > 0 ? EXIT.findings : EXIT.fine;
}
