import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { localTime } from '../quantity/stamp.ts';
import type { Change, Document, Id, Thing } from '../record/document.ts';
import { own } from '../record/json.ts';
import { SHIFT_REFUSALS } from './findings.ts';
import type { NewPlodLine } from './plod-line.ts';
import { lineText } from './plod-text.ts';
import { type Plod, type PlodLine, type SignOff, shiftThings } from './shift.ts';
import { isOurs, signaturesOn } from './signed.ts';

/**
 * Takes down a plod with its lines, as the driller wrote them: an activity that no one knows is kept, and queried later. Refuses a
 * sheet that is here already and a line that can not be.
 */
export function recordPlod(
  shift: Document,
  plod: Plod,
  lines: readonly Omit<PlodLine, 'plod'>[],
  maker: Maker,
): Result<Made> {
  const faults = [
    ...sheetFaults(shift, plod),
    ...lines.flatMap((line, index) => lineFaults(plod, line, index)),
  ];
  if (faults.length > 0) return refused(...faults);
  const id = maker.newId();
  return ok({
    what: `plod ${plod.sheet} recorded, ${lines.length === 1 ? 'one line' : `${lines.length} lines`}`,
    changes: [
      { put: ['plods', id], thing: plod as Thing },
      ...lines.map(
        (line): Change => ({ put: ['plodLines', maker.newId()], thing: { ...line, plod: id } as Thing }),
      ),
    ],
  });
}

/** Signs a plod, with the queries that stand open said in the same breath. Refuses a plod that is not there. */
export function signPlod(shift: Document, signOff: SignOff, maker: Maker): Result<Made> {
  const plod = own(own(shift.tables, 'plods'), signOff.plod);
  if (plod === undefined) return refused(plodMissing(signOff.plod, 'Record the sheet first, then sign it.'));
  return ok({
    what: `plod ${String(plod.sheet)} signed by ${signOff.by}${signOff.role === 'driller' ? ', the driller,' : ''} with ${signOff.openQueries} open queries`,
    changes: [{ put: ['signOffs', maker.newId()], thing: signOff as Thing }],
  });
}

/** Takes a plod out with its lines, to take it down again. Refuses one that is not there, or that is signed for our side. */
export function withdrawPlod(shift: Document, id: Id): Result<Made> {
  const plod = own(own(shift.tables, 'plods'), id);
  if (plod === undefined) return refused(plodMissing(id, 'Look at the history of the shift.'));
  if (signaturesOn(shift, id).some(isOurs)) {
    return refused(signedAlready(String(plod.sheet)));
  }
  const lines = shiftThings(shift, 'plodLines').filter(([, line]) => line.plod === id);
  return ok({
    what: `plod ${String(plod.sheet)} withdrawn`,
    changes: [...lines.map(([line]): Change => ({ remove: ['plodLines', line] })), { remove: ['plods', id] }],
  });
}

/**
 * Puts one line of a sheet right that was taken down wrong; the line as it was stays with it. Refused on a sheet that is signed for our side: what
 * is agreed after that is a new sheet.
 */
export function correctLine(
  shift: Document,
  id: Id,
  { number, line }: { readonly number: number; readonly line: NewPlodLine },
  maker: Maker,
): Result<Made> {
  const there = own(own(shift.tables, 'plodLines'), id) as unknown as PlodLine | undefined;
  const plod = there === undefined ? undefined : own(own(shift.tables, 'plods'), there.plod);
  if (there === undefined || plod === undefined) return refused(plodMissing(id, 'Look at the sheet again.'));
  if (signaturesOn(shift, there.plod).some(isOurs)) return refused(signedAlready(String(plod.sheet)));
  const { plod: _plod, was = [], ...before } = there;
  const gone = Object.keys(before).filter((key) => !Object.hasOwn(line, key));
  const words = `${lineText(before)}; corrected ${localTime(maker.at)} by ${maker.by}`;
  return ok({
    what: `plod ${String(plod.sheet)}, line ${number} corrected: ${lineText(line)}; it was ${lineText(before)}`,
    changes: [
      {
        patch: ['plodLines', id],
        set: { ...line, was: [...was, words] } as Thing,
        ...(gone.length === 0 ? {} : { unset: gone }),
      },
    ],
  });
}

const signedAlready = (sheet: string): Finding =>
  SHIFT_REFUSALS.plodSigned.at(
    { thing: `plod ${sheet}` },
    { problem: 'it is signed', remedy: 'Agree a new sheet with the driller and record that.' },
  );

function plodMissing(id: Id, remedy: string): Finding {
  return SHIFT_REFUSALS.notThere.at({ thing: `plod ${id}` }, { problem: 'no such plod is recorded', remedy });
}

function sheetFaults(shift: Document, plod: Plod): readonly Finding[] {
  if (!shiftThings(shift, 'plods').some(([, each]) => each.sheet === plod.sheet)) return [];
  return [
    SHIFT_REFUSALS.sheetTwice.at(
      { thing: `plod ${plod.sheet}` },
      { problem: 'this sheet is recorded already', remedy: 'Check the number, or withdraw the first one.' },
    ),
  ];
}

function lineFaults(plod: Plod, line: Omit<PlodLine, 'plod'>, index: number): readonly Finding[] {
  const fault = (problem: string, remedy: string): Finding =>
    SHIFT_REFUSALS.lineUnsound.at({ thing: `plod ${plod.sheet}, line ${index + 1}` }, { problem, remedy });
  const faults: Finding[] = [];
  if ((line.fromMm === undefined) !== (line.toMm === undefined))
    faults.push(fault('only one end of its metres is given', 'Give from and to, or neither.'));
  if (line.fromMm !== undefined && line.toMm !== undefined && line.toMm <= line.fromMm)
    faults.push(fault('its metres end at or above where they start', 'Read the sheet again: from, then to.'));
  if (line.hole === undefined && (line.fromMm !== undefined || (line.shots ?? 0) > 0))
    faults.push(fault('it has metres or shots, but no hole', 'Ask the driller which hole it was.'));
  return faults;
}
