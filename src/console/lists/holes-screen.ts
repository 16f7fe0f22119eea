import { headerOf, planOf } from '../../hole/hole.ts';
import type { Project } from '../../project/project.ts';
import { formatAzimuth } from '../../quantity/azimuth.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { formatDip } from '../../quantity/dip.ts';
import type { Document } from '../../record/document.ts';
import { headsOf, logged } from '../../standing/heads.ts';
import { numbersLabelled } from '../../standing/stream.ts';
import { isLinedUp } from '../../standing/survey.ts';
import { hintLine, messageFoot, messageLines } from '../screens/bottom.ts';
import { headerLine } from '../screens/header.ts';
import { holesOf, type State } from '../state.ts';
import { fit } from '../terminal/paint/cells.ts';
import type { Size } from '../terminal/paint/painter.ts';
import type { Theme, Tone } from '../theme.ts';
import { box } from '../widgets/box.ts';
import { fitHeight, type Line, line, spans, wrap } from '../widgets/line.ts';

/** `lined`: a line-up is accepted. `bags`: numbers labelled for the hole. */
const TITLES = ['hole', 'state', 'azimuth', 'dip', 'planned', 'drilled', 'logged', 'lined', 'bags'] as const;

/** A note in fewer cells than this says nothing: it is left to the lines below the list. */
const SHORTEST_NOTE = 12;

/** The program: every hole with its state, its plan and where its heads are; the note of the hole under the cursor in full below. */
export function holesScreen(state: State, cursor: number, size: Size, theme: Theme): readonly Line[] {
  const height = size.rows - 4;
  const holes = holesOf(state);
  const room = height - 3;
  const start = Math.max(0, Math.min(cursor - Math.floor(room / 2), holes.length - room));
  const cells = holes.map((hole) => cellsOf(state.project, hole, theme));
  const widths = TITLES.map((title, column) =>
    Math.max(title.length, ...cells.map((each) => each[column]?.length ?? 0)),
  );
  const noteRoom = size.columns - 3 - widths.reduce((sum, width) => sum + width + 1, 0);
  const row = (texts: readonly string[], note: string): string =>
    `${texts.map((text, column) => fit(text, widths[column] ?? 0)).join(' ')} ${noteRoom < SHORTEST_NOTE ? '' : note}`;
  const rows = holes.slice(start, start + room).map((hole, index): Line => {
    const here = start + index === cursor;
    const words = row(cells[start + index] ?? [], noteOf(hole));
    const whole = fit(`${here ? theme.signs.cursor : ' '}${words}`, size.columns - 2, theme.signs.ellipsis);
    return spans([whole, here ? 'picked' : toneOf(hole)]);
  });
  const empty = [line(' No holes yet. n makes one; offsider new takes a program from a CSV.', 'warn')];
  const lines = [line(` ${row(TITLES, 'note')}`, 'faint'), ...(holes.length === 0 ? empty : rows)];
  const isSaid = messageLines(state, size.columns).length > 0;
  const picked = holes[cursor];
  const note = picked === undefined ? '' : noteOf(picked);
  const about = wrap(note, size.columns - 2, 'faint').map((each): Line => [{ text: '  ' }, ...each]);
  return [
    headerLine(state, undefined, size.columns),
    ...box([{ title: `holes · rig ${state.rig}`, lines, height: height - 2 }], size.columns, theme.signs),
    ...(isSaid ? messageFoot(state, size.columns) : fitHeight(about, 2)),
    hintLine('holes', size.columns, theme),
  ];
}

function cellsOf(project: Project, hole: Document, theme: Theme): readonly string[] {
  const header = headerOf(hole);
  const plan = planOf(hole);
  const heads = headsOf(hole);
  const { toMm, missingMm } = logged(hole);
  const { dash } = theme.signs;
  const started = header.state !== 'planned';
  return [
    header.name,
    header.state,
    plan === undefined ? dash : formatAzimuth({ deg: plan.azimuthDeg, north: plan.azimuthNorth }),
    plan === undefined ? dash : formatDip(plan.dipDeg),
    plan === undefined ? dash : `${formatDepth(plan.depthMm)} m`,
    started ? `${formatDepth(heads.drilledMm)} m` : '',
    started ? `${formatDepth(toMm - missingMm)} m` : '',
    isLinedUp(hole) ? 'yes' : dash,
    String(numbersLabelled(project, hole) || dash),
  ];
}

/** Why the hole is in its state, else what it was redrilled for, else its target. */
function noteOf(hole: Document): string {
  const { parent, stateReason } = headerOf(hole);
  if (stateReason !== undefined) return stateReason;
  return parent === undefined ? (planOf(hole)?.target ?? '') : `${parent.reason} of ${parent.hole}`;
}

function toneOf(hole: Document): Tone {
  const { state } = headerOf(hole);
  return state === 'drilling' ? 'strong' : state === 'planned' ? 'faint' : 'plain';
}
