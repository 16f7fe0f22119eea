import { headerOf, planOf } from '../../hole/hole.ts';
import { formatAzimuth } from '../../quantity/azimuth.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { formatDip } from '../../quantity/dip.ts';
import { formatMinutes, localTime, type Stamp } from '../../quantity/stamp.ts';
import type { Document } from '../../record/document.ts';
import type { Span } from '../../shift/current.ts';
import { activityNamed } from '../../shift/shift-rules.ts';
import { activityNow } from '../../standing/activity.ts';
import { nextShot } from '../../standing/shots.ts';
import type { State } from '../state.ts';
import { endToEnd, type Line, lineWidth, spans } from '../widgets/line.ts';

/** Minutes of a day: an activity that lasts longer was most likely left running, so its start says more than its length. */
const DAY_MIN = 24 * 60;

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/**
 * The top line of every screen: the hole and its plan, what the rig does, the next shot, whether all is saved, the time. Where
 * not all fits, the project's name goes first, then the planned direction; the rest always stands.
 */
export function headerLine(state: State, hole: Document | undefined, width: number): Line {
  const right = savedWords(state);
  if (hole === undefined) return endToEnd(spans([` ${state.project.settings.name}`, 'strong']), right, width);
  const middle: Line = [...middleWords(state, hole), { text: '  ' }];
  const room = width - lineWidth(right) - lineWidth(middle) - 2;
  const left = holeWords(state, hole, room);
  return endToEnd([...endToEnd(left, middle, Math.max(0, width - lineWidth(right)))], right, width);
}

/** The hole in as many words as fit: its name and its state always. */
function holeWords(state: State, hole: Document, room: number): Line {
  const header = headerOf(hole);
  const plan = planOf(hole);
  const direction =
    plan === undefined
      ? 'no plan'
      : `${formatAzimuth({ deg: plan.azimuthDeg, north: plan.azimuthNorth })} / ${formatDip(plan.dipDeg)}`;
  const name = spans(
    [` ${header.name}`, 'strong'],
    [header.state === 'drilling' ? '' : ` · ${header.state.toUpperCase()}`, 'warn'],
  );
  const extras = [` · ${direction} · ${state.project.settings.name}`, ` · ${direction}`];
  const fitting = extras.find((extra) => lineWidth(name) + extra.length <= room);
  return fitting === undefined ? name : [...name, ...spans(fitting)];
}

function middleWords(state: State, hole: Document): Line {
  const doing = activityNow(state.project, state.documents.values(), state.rig, state.now);
  return [
    ...spans([
      doing === undefined ? 'no activity' : activityWords(state, doing),
      doing === undefined ? 'faint' : 'plain',
    ]),
    ...shotWords(state, hole),
  ];
}

/** The shot that is due next; nothing of a hole that is over. */
function shotWords(state: State, hole: Document): Line {
  const { state: holeState } = headerOf(hole);
  if (holeState === 'complete' || holeState === 'abandoned') return [];
  const { atMm, overdue } = nextShot(hole, state.project.survey);
  const words = `shot ${overdue ? 'OVERDUE' : 'due'} ${formatDepth(atMm)} m`;
  return spans(' · ', [words, overdue ? 'alert' : 'plain']);
}

/** `drilling 0:42`; past a day `drilling since 14 Mar 08:33`. */
function activityWords(state: State, doing: Span): string {
  const label = (activityNamed(state.project.shift, doing.activity)?.label ?? doing.activity).toLowerCase();
  return doing.minutes < DAY_MIN
    ? `${label} ${formatMinutes(doing.minutes)}`
    : `${label} since ${dayAndTime(doing.startedAt)}`;
}

function dayAndTime(at: Stamp): string {
  const [, month = 1, day = 1] = at.slice(0, 10).split('-').map(Number);
  return `${day} ${MONTHS[month - 1] ?? ''} ${localTime(at)}`;
}

function savedWords(state: State): Line {
  const { health } = state;
  const time = ` ${localTime(state.now)} `;
  if (state.readOnly !== undefined) return spans(['READ ONLY', 'alert'], time);
  if (health.unsafe !== undefined) return spans([`NOT SAVED: ${health.pending}`, 'alert'], time);
  if (health.pending > 0) return spans(['saving', 'warn'], time);
  return spans(
    [health.savedAt === undefined ? '' : `saved ${localTime(health.savedAt, true)} `, 'good'],
    time,
  );
}
