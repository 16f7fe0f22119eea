import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import type { Maker } from '../hole/commands/made.ts';
import type { Project } from '../project/project.ts';
import { localDate } from '../quantity/stamp.ts';
import type { Change, Document, Thing } from '../record/document.ts';
import { identifierFault } from '../record/identifiers.ts';
import { makeUpSacks } from '../sampling/dispatch/dispatch.ts';
import { dispatchOf, type Receipt, type Sack, type Transfer } from '../sampling/dispatch/dispatch-noun.ts';
import { saidNumbers, sealed } from '../sampling/dispatch/dispatch-said.ts';
import { dispatchRefused } from '../sampling/findings.ts';
import { bagsOfHoles, dispatchesOf, sentIn, toSend } from '../standing/dispatches.ts';
import type { MadeOn } from './shift.ts';

/** What is said of a dispatch that is made up; what is left out is settled by the project. */
export interface DispatchSaid {
  readonly name?: string | undefined;
  readonly laboratory?: string | undefined;
  /** Numbers to send, and ranges as `MB000001-MB000040`; everything that waits where none are said. */
  readonly bags?: readonly string[] | undefined;
  /** Seal of the first sack; the others follow it by number. */
  readonly firstSeal?: string | undefined;
}

/** A dispatch that would be made, looked at before it is. */
export interface Proposed {
  readonly name: string;
  readonly laboratory: string;
  readonly sacks: readonly Sack[];
}

/** The dispatch that comes of what is said: refused, with every reason, where a bag can't go, a name is taken, or there is nothing to send. */
export function proposeDispatch(
  project: Project,
  documents: Iterable<Document>,
  said: DispatchSaid,
  maker: Pick<Maker, 'at' | 'by'>,
): Result<Proposed> {
  const all = [...documents];
  const { sampling } = project;
  const name = said.name?.toUpperCase() ?? freeName(all, maker);
  const laboratory = said.laboratory ?? sampling.laboratory;
  const fault = identifierFault(name);
  if (fault !== undefined) return refused(cannot(name, fault, 'Give another name: --name D1.'));
  if (all.some((each) => each.kind === 'dispatch' && each.id === name))
    return refused(cannot(name, 'there is a dispatch of this name already', 'Give another name.'));
  if (laboratory === undefined)
    return refused(
      cannot(
        name,
        'no laboratory is given',
        'Say where it goes, or write it once in project.json: sampling.laboratory.',
      ),
    );
  const waiting = toSend(sampling, all);
  const numbers =
    said.bags === undefined
      ? ok(waiting)
      : saidNumbers(sampling, { issued: bagsOfHoles(all), waiting }, said.bags, name);
  if (!numbers.ok) return numbers;
  if (numbers.value.length === 0)
    return refused(
      cannot(
        name,
        'no bag waits for it',
        'Bags come with the rods done; spoiled ones and those sent are left out.',
      ),
    );
  const send = { name, numbers: numbers.value, issued: bagsOfHoles(all), sentBefore: sentIn(all) };
  const sacks = makeUpSacks(sampling, send);
  if (!sacks.ok) return sacks;
  return ok({ name, laboratory, sacks: sealed(sacks.value, said.firstSeal) });
}

/** Makes a dispatch up as one edit. */
export function makeDispatch(proposed: Proposed, maker: Maker): MadeOn {
  const { name, laboratory, sacks } = proposed;
  const header: Thing = { laboratory, madeAt: maker.at, madeBy: maker.by };
  const bags = sacks.reduce((sum, sack) => sum + sack.bags.length, 0);
  return {
    document: { kind: 'dispatch', id: name },
    made: {
      what: `dispatch ${name} made up: ${bags} bags in ${sacks.length} sacks`,
      changes: [
        { put: ['dispatch', 'dispatch'], thing: header },
        ...sacks.map((sack): Change => ({ put: ['sacks', maker.newId()], thing: sack as unknown as Thing })),
      ],
    },
  };
}

/** What is said of sacks that change hands. The giver is who took them last, where no one else is said. */
export type TransferSaid = Pick<Transfer, 'to' | 'sacks' | 'sealsWhole'> &
  Partial<Pick<Transfer, 'from' | 'bags'>>;

/** Records that the sacks of a dispatch changed hands, as they were counted; a count that is off is recorded too, and found by the check. */
export function passOn(document: Document, said: TransferSaid, maker: Maker): MadeOn {
  const dispatch = dispatchOf(document);
  const { to, sacks, sealsWhole, bags } = said;
  const from = said.from ?? dispatch.transfers.at(-1)?.to ?? dispatch.madeBy;
  const counted = { sacks, ...(bags === undefined ? {} : { bags }), sealsWhole };
  const thing: Thing = { at: maker.at, from, to, ...counted, recordedBy: maker.by };
  return {
    document: { kind: 'dispatch', id: dispatch.name },
    made: {
      what: `dispatch ${dispatch.name} from ${from} to ${to}: ${sacks} sacks, ${sealsWhole ? 'seals intact' : 'a seal broken'}`,
      changes: [{ put: ['transfers', maker.newId()], thing }],
    },
  };
}

/** Takes a laboratory's receipt in. Refused where the same file was taken in before. */
export function takeReceipt(
  document: Document,
  said: Pick<Receipt, 'file' | 'sha256' | 'numbers'>,
  maker: Maker,
): Result<MadeOn> {
  const dispatch = dispatchOf(document);
  if (dispatch.receipts.some((each) => each.sha256 === said.sha256))
    return refused(
      cannot(dispatch.name, `${said.file} was taken in before`, 'Nothing to do: it is compared already.'),
    );
  const thing: Thing = { at: maker.at, takenInBy: maker.by, ...said, numbers: [...said.numbers] };
  return ok({
    document: { kind: 'dispatch', id: dispatch.name },
    made: {
      what: `receipt ${said.file} of dispatch ${dispatch.name}: ${said.numbers.length} numbers`,
      changes: [{ put: ['receipts', maker.newId()], thing }],
    },
  });
}

/** The dispatch of that name, or whose name ends so; the latest one if none is given. Refused where there is none. */
export function dispatchNamed(documents: Iterable<Document>, name: string | undefined): Result<Document> {
  const all = [...documents].filter((each) => each.kind === 'dispatch');
  const names = dispatchesOf(all).map((each) => each.name);
  const wanted =
    name === undefined
      ? names.at(-1)
      : (names.find((each) => each === name.toUpperCase()) ??
        only(names.filter((each) => each.endsWith(name.toUpperCase()))));
  const found = all.find((each) => each.id === wanted);
  if (found !== undefined) return ok(found);
  const there = names.length === 0 ? 'None is made up yet.' : `There are ${names.join(', ')}.`;
  return refused(cannot(name ?? '', 'there is no such dispatch', there));
}

function only(names: readonly string[]): string | undefined {
  return names.length === 1 ? names[0] : undefined;
}

/** The day and who makes it up, so that two computers do not give one name: `D2026-03-14-NOK`, then `…-2`. */
function freeName(documents: readonly Document[], { at, by }: Pick<Maker, 'at' | 'by'>): string {
  const taken = new Set(documents.filter((each) => each.kind === 'dispatch').map((each) => each.id));
  const first = `D${localDate(at)}-${by}`;
  for (let count = 1; ; count += 1) {
    const name = count === 1 ? first : `${first}-${count}`;
    if (!taken.has(name)) return name;
  }
}

function cannot(name: string, problem: string, remedy: string): Finding {
  return dispatchRefused.at({ thing: `dispatch ${name}`.trim() }, { problem, remedy });
}
