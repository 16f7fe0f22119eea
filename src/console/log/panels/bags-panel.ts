import { type HoleState, isOver } from '../../../hole/header.ts';
import { headerOf, holeNouns } from '../../../hole/hole.ts';
import type { Project } from '../../../project/project.ts';
import { formatDepth } from '../../../quantity/depth.ts';
import { formatInterval } from '../../../quantity/interval.ts';
import type { Document } from '../../../record/document.ts';
import { nameOf } from '../../../sampling/rod/unmended.ts';
import type { Upcoming } from '../../../sampling/stream/stream.ts';
import { trayChange } from '../../../sampling/trays/trays.ts';
import { headsOf } from '../../../standing/heads.ts';
import { waitingMismatches } from '../../../standing/mismatches.ts';
import { proposedOf } from '../../../standing/proposed.ts';
import { type Coming, streamAheadOf } from '../../../standing/stream.ts';
import type { Tone } from '../../theme.ts';
import { type Line, line, spans } from '../../widgets/line.ts';

/**
 * The panel of the sample stream at the drilled head: what comes next, controls a rod ahead, numbered bags left; of a hole that is over,
 * what it used. `room` lines at most, `width` wide.
 */
export function bagsPanel(project: Project, hole: Document, room: number, width: number): readonly Line[] {
  const { rodMm, state, logFromMm } = headerOf(hole);
  const ahead = streamAheadOf(project, hole, 40);
  const waiting = [
    ...waitingMismatches(hole).map(([, rod]) => line(`rod ${rod.rod}: ${nameOf(rod)}? ;fix`, 'alert')),
    ...ahead.putOff.map((put) => line(`${put.number}  put off: ${put.reason}`, 'warn')),
  ];
  if (isOver(state)) return [...usedLines(hole, state, ahead.numberedLeft), ...waiting].slice(0, room);
  const asked = proposedOf(project, hole).map((each) =>
    spans([`${each.number}  ${each.kind} wanted: ;choose ${chooseWord(each.kind)}`, 'accent']),
  );
  const tray = trayChange(project.sampling, logFromMm, headsOf(hole).drilledMm, rodMm);
  const change =
    tray === undefined ? [] : [line(`tray ${tray.tray} in ${formatDepth(tray.inMm)} m`, 'accent')];
  const waits = [...waiting, ...asked, ...change];
  const left = leftLine(ahead.numberedLeft, ahead.runsOut, ahead.lastsToMm);
  const rows = Math.max(1, room - waits.length - 1);
  const { coming } = ahead;
  const isAmong = (bags: readonly Coming[], { number }: Coming) =>
    bags.some((each) => each.number === number);
  const controls = coming.filter((each, index) => index >= rows - 1 && isAmong(ahead.announced, each));
  const plain = coming.slice(0, Math.max(0, rows - Math.min(controls.length, rows - 1)));
  const shown = [...plain, ...controls.filter((each) => !isAmong(plain, each)).slice(0, rows - plain.length)];
  return [...shown.map((each) => upcomingLine(each, width)), ...waits, left];
}

function usedLines(hole: Document, state: HoleState, left: number): readonly Line[] {
  const bags = holeNouns(hole, 'bags');
  const last = bags.findLast((bag) => bag.byHand !== true)?.number;
  return [
    line(`the hole is ${state}: no bag comes`),
    line(`${bags.length} bags issued${last === undefined ? '' : `, the last ${last}`}`, 'faint'),
    ...(left === 0 ? [] : [line(`${left} numbered bags are left over`, 'warn')]),
  ];
}

/** The heading of the panel: where the rig is. */
export function bagsTitle(hole: Document): string {
  return `bags · drilled ${formatDepth(headsOf(hole).drilledMm)} m`;
}

/** One bag that comes: its number, its metre, what it is and in how many drilled metres, which is never what is cut. */
export function upcomingLine(bag: Coming, width: number): Line {
  const metre =
    bag.fromMm === undefined || bag.toMm === undefined
      ? ''
      : formatInterval({ fromMm: bag.fromMm, toMm: bag.toMm });
  if (bag.empty === true) {
    const kept = `${bag.number}  ${metre}  kept, no sample`;
    return line(kept.length <= width ? kept : `${bag.number}  ${metre}  kept`, 'faint');
  }
  if (bag.byHand === true)
    return line(`${bag.number}  ${bag.kind === 'primary' ? '' : `${bag.kind} `}${metre}  by hand`, 'accent');
  if (bag.kind === 'primary') return line(`${bag.number}  ${metre}`);
  const when = bag.speared === true ? 'spear' : bag.inMm <= 0 ? 'now' : `in ${formatDepth(bag.inMm)} m`;
  const tone: Tone = bag.inMm <= 0 ? 'alert' : 'accent';
  const [kind, short] =
    bag.kind === 'field duplicate'
      ? [`+ duplicate ${metre}`, `+ dup ${metre}`]
      : [bag.kind.toUpperCase(), bag.kind.toUpperCase()];
  const words = `${kind}  ${when}`;
  const fits = bag.number.length + 2 + words.length <= width;
  return spans(`${bag.number}  `, [fits ? words : `${short} ${when}`, tone]);
}

function leftLine(left: number, runsOut: boolean, lastsToMm: number): Line {
  if (left === 0) return line('NO numbered bags left: ;numbered', 'alert');
  const words = `${left} numbered ${left === 1 ? 'bag' : 'bags'} left`;
  return runsOut ? line(`${words}, to ${formatDepth(lastsToMm)} m only`, 'alert') : line(words, 'faint');
}

/** The word that `;choose` takes for a kind. */
export function chooseWord(kind: Upcoming['kind']): string {
  return kind === 'field duplicate' ? 'duplicate' : kind;
}
