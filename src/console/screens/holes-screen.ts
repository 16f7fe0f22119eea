import { headerOf, planOf } from '../../hole/hole.ts';
import { formatAzimuth } from '../../quantity/azimuth.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { formatDip } from '../../quantity/dip.ts';
import type { Document } from '../../record/document.ts';
import { headsOf } from '../../standing/heads.ts';
import { fit } from '../paint/cells.ts';
import type { Size } from '../paint/painter.ts';
import { holesOf, type State } from '../state.ts';
import type { Theme } from '../theme.ts';
import { box } from '../widgets/box.ts';
import { fitHeight, type Line, line, spans } from '../widgets/line.ts';
import { hintLine, messageLines } from './bottom.ts';
import { headerLine } from './header.ts';

/** The program: every hole with its state, its plan and where its heads are. */
export function holesScreen(state: State, cursor: number, size: Size, theme: Theme): readonly Line[] {
  const height = size.rows - 4;
  const holes = holesOf(state);
  const room = height - 3;
  const start = Math.max(0, Math.min(cursor - Math.floor(room / 2), holes.length - room));
  const rows = holes
    .slice(start, start + room)
    .map((hole, index) => holeLine(hole, start + index === cursor, size.columns - 2, theme));
  const empty = [line(' No holes yet. n makes one; offsider new takes a program from a CSV.', 'warn')];
  const lines = [
    line(` ${columns('hole', 'state', 'azimuth', 'dip', 'planned', 'drilled', 'logged')} note`, 'faint'),
    ...(holes.length === 0 ? empty : rows),
  ];
  return [
    headerLine(state, undefined, size.columns),
    ...box([{ title: `holes · rig ${state.rig}`, lines, height: height - 2 }], size.columns, theme.signs),
    ...fitHeight(
      messageLines(state, size.columns).map((each) => [{ text: '  ' }, ...each]),
      2,
    ),
    hintLine('holes', size.columns, theme),
  ];
}

function columns(...texts: readonly [string, string, string, string, string, string, string]): string {
  const widths = [13, 10, 16, 7, 8, 8, 8];
  return texts.map((text, index) => fit(text, widths[index] ?? 8)).join(' ');
}

function holeLine(hole: Document, here: boolean, width: number, theme: Theme): Line {
  const header = headerOf(hole);
  const plan = planOf(hole);
  const heads = headsOf(hole);
  const started = header.state !== 'planned';
  const text = columns(
    header.name,
    header.state,
    plan === undefined ? theme.signs.dash : formatAzimuth({ deg: plan.azimuthDeg, north: plan.azimuthNorth }),
    plan === undefined ? theme.signs.dash : formatDip(plan.dipDeg),
    plan === undefined ? theme.signs.dash : `${formatDepth(plan.depthMm)} m`,
    started ? `${formatDepth(heads.drilledMm)} m` : '',
    started ? `${formatDepth(heads.loggedMm)} m` : '',
  );
  const parent = header.parent === undefined ? '' : `${header.parent.reason} of ${header.parent.hole}`;
  const note = header.stateReason ?? (parent === '' ? (plan?.target ?? '') : parent);
  const whole = fit(`${here ? theme.signs.cursor : ' '}${text} ${note}`, width, theme.signs.ellipsis);
  const tone = header.state === 'drilling' ? 'strong' : header.state === 'planned' ? 'faint' : 'plain';
  return spans([whole, here ? 'picked' : tone]);
}
