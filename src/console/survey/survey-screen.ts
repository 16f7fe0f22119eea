import { formatAzimuth } from '../../quantity/azimuth.ts';
import { formatDepth } from '../../quantity/depth.ts';
import type { Document } from '../../record/document.ts';
import { headsOf } from '../../standing/heads.ts';
import { expectedFindingsOf, surveyChecksOf, surveyOf } from '../../standing/survey.ts';
import { pictureOf } from '../../standing/survey-pictures.ts';
import { shotGap } from '../../survey/findings.ts';
import { brailleLines } from '../../survey/pictures/braille.ts';
import { hintLine, messageFoot } from '../screens/bottom.ts';
import { headerLine } from '../screens/header.ts';
import type { Screen, State } from '../state.ts';
import type { Size } from '../terminal/paint/painter.ts';
import type { Theme } from '../theme.ts';
import { box } from '../widgets/box.ts';
import { fitHeight, type Line, line, wrap } from '../widgets/line.ts';
import { expectedView } from './survey-expected.ts';
import { isDoubted, shotDetail, shotHeading, shotLines } from './survey-shots.ts';
import { targetLines } from './survey-target.ts';

type SurveyScreen = Extract<Screen, { readonly name: 'survey' }>;

/** The survey: where the hole goes and each shot with its checks, or the hole drawn from above or from the side. */
export function surveyScreen(
  state: State,
  hole: Document,
  screen: SurveyScreen,
  size: Size,
  theme: Theme,
): readonly Line[] {
  const room = size.rows - 4;
  const body =
    screen.view === 'shots'
      ? shotsView(state, hole, screen.cursor, { columns: size.columns, rows: room }, theme)
      : screen.view === 'expected'
        ? expectedView(state, hole, { columns: size.columns, rows: room }, theme)
        : pictureView(state, hole, screen.view, { columns: size.columns, rows: room }, theme);
  return [
    headerLine(state, hole, size.columns),
    ...fitHeight(body, room),
    ...messageFoot(state, size.columns),
    hintLine('survey', size.columns, theme),
  ];
}

const padded = (lines: readonly Line[]): readonly Line[] => lines.map((each) => [{ text: ' ' }, ...each]);

/** Three parts: the target, the shots, this shot with what the checks say. */
function shotsView(state: State, hole: Document, cursor: number, size: Size, theme: Theme): readonly Line[] {
  const inner = size.columns - 4;
  const whole = targetLines(state.project, hole, inner);
  const survey = surveyOf(state.project, hole);
  const checks = surveyChecksOf(state.project, hole, state.documents.values());
  const rows = shotLines(hole, survey, checks, cursor, theme);
  const wanted = shotDetail(hole, checks, cursor, inner);
  const room = size.rows - 4 - Math.min(4, rows.length + 1);
  // What the checks say of the shot in hand comes first: the rest of the target is there on any shot that nothing is said of.
  const target = isDoubted(hole, checks, cursor)
    ? cutTo(whole, Math.max(LEAST_OF_TARGET, room - wanted.length))
    : whole;
  const free = size.rows - 4 - target.length;
  const detailRoom = Math.max(2, Math.min(wanted.length, free - Math.min(4, rows.length + 1)));
  const listRoom = free - detailRoom;
  const at = Math.min(Math.max(0, cursor + 1), rows.length - 1);
  const start = Math.max(0, Math.min(at - Math.floor((listRoom - 1) / 2), rows.length - listRoom + 1));
  const gaps = checks.findings.filter(({ code }) => code === shotGap.code).length;
  const doubts = checks.findings.length - gaps;
  const off = expectedFindingsOf(state.project, hole).length;
  return box(
    [
      { title: targetTitle(hole, survey), lines: padded(target), height: target.length },
      {
        title: `shots · ${doubts === 0 ? 'nothing doubtful' : `${doubts} doubtful, marked ?`}${gaps === 0 ? '' : ' · metres without a shot'}${off === 0 ? '' : ` · ${off} of the plan not as expected: e`}`,
        lines: padded([shotHeading(survey.north), ...rows.slice(start, start + listRoom - 1)]),
        height: listRoom,
      },
      { title: 'what the checks say', lines: padded(fitDetail(wanted, detailRoom)), height: detailRoom },
    ],
    size.columns,
    theme.signs,
  );
}

/** Lines of the target that are always there: its heading, and how the hole comes out. */
const LEAST_OF_TARGET = 4;

function cutTo(lines: readonly Line[], room: number): readonly Line[] {
  if (lines.length <= room) return lines;
  const hidden = lines.length - room + 1;
  return [
    ...lines.slice(0, room - 1),
    line(`and ${hidden} lines more: go to a shot that is not marked`, 'faint'),
  ];
}

/** Words cut to their room never end as if they were all. */
function fitDetail(lines: readonly Line[], room: number): readonly Line[] {
  if (lines.length <= room) return lines;
  return [
    ...lines.slice(0, room - 1),
    line(`and ${lines.length - room + 1} lines more: make the window higher`, 'warn'),
  ];
}

function targetTitle(hole: Document, survey: ReturnType<typeof surveyOf>): string {
  const { planned } = survey;
  const drilled = `drilled ${formatDepth(headsOf(hole).drilledMm)} m`;
  return planned === undefined
    ? `where the hole goes · ${drilled}`
    : `where the hole goes · target at ${formatDepth(planned.targetMm)} m · ${drilled}`;
}

function pictureView(
  state: State,
  hole: Document,
  view: 'plan' | 'section',
  size: Size,
  theme: Theme,
): readonly Line[] {
  const survey = surveyOf(state.project, hole);
  const inner = size.columns - 4;
  const picture = pictureOf(state.project, hole, view);
  const instead = noPicture(picture !== undefined, theme);
  if (picture === undefined || instead !== undefined) {
    const words = wrap(instead ?? '', inner, 'warn');
    return box([{ title: view, lines: padded(words), height: size.rows - 2 }], size.columns, theme.signs);
  }
  const [heading = '', ...drawn] = brailleLines(picture, inner, size.rows - 7);
  const legend = drawn.at(-1) ?? '';
  const lines = [
    ...drawn.slice(0, -1).map((each) => line(each)),
    ...wrap(legend, inner, 'faint'),
    ...wrap(
      `Below the last shot it is drawn straight on: it was not measured there. North is ${northName(survey)}.`,
      inner,
      'faint',
    ),
  ];
  return box([{ title: heading, lines: padded(lines), height: size.rows - 2 }], size.columns, theme.signs);
}

/** Why there is no picture, undefined where there is one. */
function noPicture(known: boolean, theme: Theme): string | undefined {
  if (!known) return 'No direction is known yet: record the line-up (;line-up) or a shot (n).';
  return theme.ascii
    ? 'This terminal is set to plain characters, which draw no picture. t leads back to the figures.'
    : undefined;
}

function northName(survey: ReturnType<typeof surveyOf>): string {
  return formatAzimuth({ deg: 0, north: survey.north }).replace(/^\S+ /, '');
}
