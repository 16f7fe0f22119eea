import { isOpen, type Judged, judgedAll } from '../check/accepted.ts';
import { checkHole } from '../check/check-hole.ts';
import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { formatPlace } from '../finding/place.ts';
import { acceptedIn, sealOf, signedOff } from '../hole/acceptance.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { ACCEPTANCE_FINDINGS } from '../hole/findings.ts';
import { isOver } from '../hole/header.ts';
import { headerOf, holeNouns } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document, Thing } from '../record/document.ts';

/** Accepts a finding as it is, with the reason: one edit of the document that it is of. */
export function acceptFinding(
  { finding, facts, document, accepted, key }: Judged,
  reason: string,
  maker: Maker,
): Result<Made & { readonly document: Document }> {
  const place = formatPlace(finding.place);
  if (document === undefined)
    return refusal(
      { thing: key },
      'it is of no hole, shift, dispatch or certificate, so there is no file to keep that in',
      'Mend it where it says.',
    );
  if (accepted !== undefined)
    return refusal(
      { thing: key },
      `${accepted.by} accepted it on ${accepted.at.slice(0, 10)}: ${accepted.reason}`,
      'To say something else of it take that back first.',
    );
  if (reason.trim() === '')
    return refusal({ thing: key }, 'no reason is given', 'Say why it is right as it is: camp reads it.');
  const thing = {
    code: finding.code,
    place,
    problem: finding.problem,
    facts,
    reason: reason.trim(),
    by: maker.by,
    at: maker.at,
  };
  return ok({
    document,
    what: `accepted ${place}: ${finding.problem} (${thing.reason})`,
    changes: [{ put: ['accepted', maker.newId()], thing }],
  });
}

/** Takes the acceptance of a finding back: it is open again. */
export function openFinding({
  document,
  accepted,
  facts,
  key,
  finding,
}: Judged): Result<Made & { readonly document: Document }> {
  const there = document === undefined ? [] : acceptedIn(document).filter(([, one]) => one.facts === facts);
  if (document === undefined || accepted === undefined || there.length === 0)
    return refusal({ thing: key }, 'it is not accepted', 'It is open as it is.');
  return ok({
    document,
    what: `no longer accepted: ${formatPlace(finding.place)}: ${finding.problem}`,
    changes: there.map(([id]) => ({ remove: ['accepted', id] as const })),
  });
}

/**
 * Camp signs a hole off: it is checked, and nothing of it is changed any more. Refused while it may still be logged, while a fault or a
 * warning of it is open, and where it is signed off already.
 */
export function signHoleOff(
  project: Project,
  hole: Document,
  documents: Iterable<Document>,
  remark: string,
  maker: Maker,
): Result<Made> {
  const { name, state } = headerOf(hole);
  const place = { hole: name };
  const by = signedOff(hole);
  if (by !== undefined && by.seal === sealOf(hole))
    return refusal(
      place,
      `${by.by} signed it off on ${by.at.slice(0, 10)}, and it is as it was`,
      'Nothing is to be done.',
    );
  if (!isOver(state))
    return refusal(place, `it is ${state}`, 'End it first (F12): a hole that goes on can’t be final.');
  const role = project.settings.people.find(({ initials }) => initials === maker.by)?.role;
  if (role !== undefined && role !== 'geologist' && role !== 'camp')
    return refusal(
      place,
      `${maker.by} is ${role}`,
      'A geologist or the camp signs off; give who does with --by.',
    );
  const all = [...documents];
  const judged = judgedAll(checkHole(project, hole, all), all).filter(
    ({ finding }) => finding.code !== ACCEPTANCE_FINDINGS.changedSince.code,
  );
  const open = judged.filter((each) => isOpen(each, 'warning'));
  if (open.length > 0)
    return refusal(
      place,
      `${open.length === 1 ? 'one finding is' : `${open.length} findings are`} open: ${open
        .slice(0, 3)
        .map(({ key, finding }) => `${key} ${finding.problem}`)
        .join('; ')}${open.length > 3 ? '; …' : ''}`,
      'Mend each, or accept it with the reason: ;check, or offsider check.',
    );
  const accepted = judged.filter((each) => each.accepted !== undefined).length;
  const thing: Thing = {
    state: 'signed off',
    seal: sealOf(hole),
    accepted,
    ...(remark.trim() === '' ? {} : { reason: remark.trim() }),
    by: maker.by,
    at: maker.at,
  };
  const rows = holeNouns(hole, 'rows').length;
  return ok({
    what: `signed off ${name}: ${rows} rows, ${holeNouns(hole, 'bags').length} bags, ${holeNouns(hole, 'shots').length} shots${accepted === 0 ? '' : `, ${accepted} accepted`}`,
    changes: [{ put: ['signOffs', maker.newId()], thing }],
  });
}

/** A hole that was signed off is opened again, with the reason. */
export function openHoleAgain(hole: Document, reason: string, maker: Maker): Result<Made> {
  const place = { hole: headerOf(hole).name };
  if (signedOff(hole) === undefined)
    return refusal(place, 'it is not signed off', 'It takes changes as it is.');
  if (reason.trim() === '')
    return refusal(
      place,
      'no reason is given',
      'Say why it is opened again: ;open-again bags 40 to 46 wrong.',
    );
  return ok({
    what: `opened again: ${reason.trim()}`,
    changes: [
      {
        put: ['signOffs', maker.newId()],
        thing: { state: 'opened again', reason: reason.trim(), by: maker.by, at: maker.at },
      },
    ],
  });
}

function refusal<T>(place: Finding['place'], problem: string, remedy: string): Result<T> {
  return refused<T>(ACCEPTANCE_FINDINGS.refused.at(place, { problem, remedy }));
}
