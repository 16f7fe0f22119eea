import { formatMinutes, localTime } from '../../quantity/stamp.ts';
import { spansOf } from '../../shift/current.ts';
import { activityNamed } from '../../shift/shift-rules.ts';
import { openShift } from '../../standing/activity.ts';
import type { State } from '../state.ts';
import { line, spans } from '../widgets/line.ts';
import { type Listed, oneSection } from './listed.ts';

/** What the rig did in the shift that goes on: since when, how long, how it is charged. */
export function shiftList(state: State): Listed {
  const shift = openShift(state.documents.values(), state.rig);
  const hint = [line(''), line('Ctrl-A or ;activity starts what the rig does now.', 'faint')];
  if (shift === undefined)
    return oneSection(`shift record of ${state.rig}`, [[line('No shift goes on.', 'warn')], hint]);
  const lines = spansOf(shift, state.now).map((span) => {
    const label = activityNamed(state.project.shift, span.activity)?.label ?? span.activity;
    return spans(
      `${localTime(span.startedAt)}  ${lasting(span.minutes)}  ${label}`,
      [`  ${span.charge}${span.hole === undefined ? '' : `  ${span.hole}`}`, 'faint'],
      [span.current ? '  now' : '', 'good'],
    );
  });
  return oneSection(`shift record ${shift.id}`, [...lines.map((each) => [each]), hint]);
}

const DAY_MIN = 24 * 60;

/** How long, in six cells. More than a day means that nobody ended the shift: the figure would mean nothing. */
function lasting(minutes: number): string {
  return (minutes < DAY_MIN ? formatMinutes(minutes) : '>24:00').padStart(6);
}
