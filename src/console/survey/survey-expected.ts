import type { Project } from '../../project/project.ts';
import type { Document } from '../../record/document.ts';
import { expectedLoggedOf, hazardsOf } from '../../standing/survey.ts';
import { NO_CLEARANCE } from '../../survey/expected/expected.ts';
import type { ExpectedLogged } from '../../survey/expected/expected-logged.ts';
import { expectedCells } from '../../survey/expected/expected-words.ts';
import { inOwn, type State } from '../state.ts';
import type { Size } from '../terminal/paint/painter.ts';
import type { Theme } from '../theme.ts';
import { box } from '../widgets/box.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';

/** Contacts and zones of the plan: where they should come in the hole as it runs, and how far off they were logged. */
export function expectedView(state: State, hole: Document, size: Size, theme: Theme): readonly Line[] {
  const { project } = state;
  const inner = size.columns - 4;
  const zones = expectedLoggedOf(project, hole);
  const none = wrap(
    inOwn(state, 'The plan expects nothing yet. On the log: ;expect lode 70-78 seen sulphides PYR>=2'),
    inner,
    'faint',
  );
  const lines = [
    ...(zones.length === 0 ? none : zones.flatMap((zone) => zoneLines(zone, inner))),
    ...hazardWords(project, hole, state.documents.values(), zones, inner),
  ];
  const shown = lines.map((each): Line => [{ text: ' ' }, ...each]);
  return box(
    [{ title: 'what the plan expects, in this hole as it runs', lines: shown, height: size.rows - 2 }],
    size.columns,
    theme.signs,
  );
}

function zoneLines(zone: ExpectedLogged, width: number): readonly Line[] {
  const [name, planned, here, logged] = expectedCells(zone);
  const tone = zone.state === 'not seen' || (zone.topOffMm ?? 0) !== 0 ? 'warn' : 'plain';
  return [
    spans([name, 'strong'], [`  planned at ${planned} m`, 'faint']),
    line(`  in this hole ${here}${here.startsWith('not') ? '' : ' m'}`),
    ...wrap(`logged: ${logged}`, width - 2, tone).map((each): Line => [{ text: '  ' }, ...each]),
  ];
}

function hazardWords(
  project: Project,
  hole: Document,
  documents: Iterable<Document>,
  zones: readonly ExpectedLogged[],
  width: number,
): readonly Line[] {
  const near = hazardsOf(project, hole, documents);
  if (near.length > 0) return near.flatMap((each) => wrap(each.text, width, 'alert'));
  return zones.some((zone) => zone.expected.hazard !== undefined) ? wrap(NO_CLEARANCE, width, 'warn') : [];
}
