import { headerOf, planOf } from '../../hole/hole.ts';
import { formatAzimuth } from '../../quantity/azimuth.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { formatDip } from '../../quantity/dip.ts';
import { formatMinutes, localTime } from '../../quantity/stamp.ts';
import type { Document } from '../../record/document.ts';
import { activityNamed } from '../../shift/shift-rules.ts';
import { activityNow } from '../../standing/activity.ts';
import { nextShot } from '../../standing/shots.ts';
import type { State } from '../state.ts';
import { endToEnd, type Line, lineWidth, spans } from '../widgets/line.ts';

/** The top line of every screen: the hole and its plan, what the rig does, the next shot, whether all is saved, the time. */
export function headerLine(state: State, hole: Document | undefined, width: number): Line {
  const left =
    hole === undefined ? spans([state.project.settings.name, 'strong']) : holeWords(state, hole, width);
  const right = savedWords(state);
  const middle = hole === undefined ? [] : middleWords(state, hole);
  const room = width - lineWidth(right) - lineWidth(middle) - 2;
  return endToEnd(
    [...endToEnd(left, middle, Math.max(0, room + lineWidth(middle))), { text: '  ' }],
    right,
    width,
  );
}

function holeWords(state: State, hole: Document, width: number): Line {
  const header = headerOf(hole);
  const plan = planOf(hole);
  const direction =
    plan === undefined
      ? 'no plan'
      : `${formatAzimuth({ deg: plan.azimuthDeg, north: plan.azimuthNorth })} / ${formatDip(plan.dipDeg)}`;
  const project = width >= 100 ? ` · ${state.project.settings.name}` : '';
  const closed = header.state === 'drilling' ? '' : ` · ${header.state.toUpperCase()}`;
  return spans([` ${header.name}`, 'strong'], ` · ${direction}${project}`, [closed, 'warn']);
}

function middleWords(state: State, hole: Document): Line {
  const doing = activityNow(state.documents.values(), state.rig, state.now);
  const label =
    doing === undefined
      ? 'no activity'
      : (activityNamed(state.project.shift, doing.activity)?.label ?? doing.activity);
  const shot = nextShot(hole, state.project.survey);
  const words = doing === undefined ? label : `${label.toLowerCase()} ${formatMinutes(doing.minutes)}`;
  return spans([words, doing === undefined ? 'faint' : 'plain'], ' · ', [
    `shot ${shot.overdue ? 'OVERDUE' : 'due'} ${formatDepth(shot.atMm)} m`,
    shot.overdue ? 'alert' : 'plain',
  ]);
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
