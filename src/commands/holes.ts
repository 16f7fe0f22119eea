import type { Outside } from '../desk/outside.ts';
import { headerOf, planOf } from '../hole/hole.ts';
import { azimuth, formatAzimuth } from '../quantity/azimuth.ts';
import { formatDepth, metres } from '../quantity/depth.ts';
import { localDate, localTime, parseStamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { headsOf } from '../standing/heads.ts';
import { atProject, holeNamed, holesOf } from './at-project.ts';
import { EXIT, refuse, say, sayJson } from './say.ts';
import { tableText } from './table-text.ts';

/** What `offsider holes` is given. */
export interface HolesAsked {
  readonly folder: string;
  readonly json: boolean;
  /** Name of a hole whose history is wanted instead of the list. */
  readonly history?: string | undefined;
}

/** Lists the holes of a project with their states, or the history of one: who did what, when. */
export function holes(outside: Outside, asked: HolesAsked): Promise<number> {
  return atProject(outside, { folder: asked.folder }, async (at) => {
    if (asked.history === undefined) {
      const found = holesOf(at.desk);
      if (asked.json) sayJson(outside, found.map(holeFacts));
      else say(outside, holesText(found));
      return EXIT.fine;
    }
    const hole = holeNamed(at, asked.history);
    if (!hole.ok) return refuse(outside, ...hole.findings);
    const deeds = hole.value.history.map(({ at: when, by, what, edit, undoes, redoes, outside: byHand }) => ({
      at: when,
      by,
      what,
      edit,
      undoes,
      redoes,
      outside: byHand,
    }));
    if (asked.json) sayJson(outside, deeds);
    else say(outside, tableText([['date', 'time', 'by', 'what'], ...deeds.map(deedCells)]));
    return EXIT.fine;
  });
}

/** A hole as data for other programs: metres, with the unit in the name. */
function holeFacts(hole: Document) {
  const { name, state, stateReason, parent, plannedName } = headerOf(hole);
  const { drilledMm, loggedMm } = headsOf(hole);
  const plan = planOf(hole);
  return {
    id: hole.id,
    name,
    plannedName,
    state,
    stateReason,
    parent,
    drilledM: metres(drilledMm),
    loggedM: metres(loggedMm),
    plannedM: plan === undefined ? undefined : metres(plan.depthMm),
    azimuthDeg: plan?.azimuthDeg,
    azimuthNorth: plan?.azimuthNorth,
    dipDeg: plan?.dipDeg,
    target: plan?.target,
  };
}

/** The list of holes as text. */
export function holesText(found: readonly Document[]): string {
  if (found.length === 0) return 'No holes yet.';
  const head = ['hole', 'state', 'drilled m', 'logged m', 'planned m', 'azimuth', 'dip', 'for'];
  return tableText([head, ...found.map(holeCells)]);
}

function holeCells(hole: Document): readonly string[] {
  const { name, state, stateReason, parent } = headerOf(hole);
  const { drilledMm, loggedMm } = headsOf(hole);
  const plan = planOf(hole);
  const because = stateReason ?? (parent === undefined ? plan?.target : `${parent.reason} of ${parent.hole}`);
  return [
    name,
    state,
    formatDepth(drilledMm),
    formatDepth(loggedMm),
    plan === undefined ? '' : formatDepth(plan.depthMm),
    plan === undefined ? '' : formatAzimuth(azimuth(plan.azimuthDeg, plan.azimuthNorth)),
    plan === undefined ? '' : String(plan.dipDeg),
    because ?? '',
  ];
}

function deedCells(deed: {
  readonly at: string;
  readonly by: string;
  readonly what: string;
  readonly outside?: true | undefined;
}) {
  const when = parseStamp(deed.at);
  const day = when === undefined ? deed.at : localDate(when);
  const time = when === undefined ? '' : localTime(when, true);
  return [day, time, deed.by, deed.outside === true ? `${deed.what} (edited outside)` : deed.what];
}
