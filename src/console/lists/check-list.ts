import { isOpen, type Judged, judgedAll } from '../../check/accepted.ts';
import { checkHole, checkProject } from '../../check/check-hole.ts';
import type { Severity } from '../../finding/finding.ts';
import { formatPlace } from '../../finding/place.ts';
import { signedOff } from '../../hole/acceptance.ts';
import { headerOf } from '../../hole/hole.ts';
import type { Project } from '../../project/project.ts';
import type { Document } from '../../record/document.ts';
import { checkShifts } from '../../shift/shift-checks.ts';
import { holeInHand, type State } from '../state.ts';
import type { Tone } from '../theme.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import { rememberLast } from '../widgets/remember.ts';
import { found, type Listed, type ListSection, oneSection } from './listed.ts';

const TONES: Readonly<Record<Severity, Tone>> = { fault: 'alert', warning: 'warn', note: 'faint' };
const HEADS: Readonly<Record<Severity, string>> = {
  fault: 'faults: can’t be used as they are',
  warning: 'warnings',
  note: 'notes',
};

/** Every finding of the hole in hand, or with none in hand of the project: open ones by severity or by hole, then those accepted. */
export function checkList(state: State, width: number): Listed {
  const { screen } = state;
  const hole = holeInHand(state);
  const of = hole === undefined ? 'the project' : headerOf(hole).name;
  const judged = judgedIn(state);
  const open = judged.filter((each) => isOpen(each));
  const settled = judged.filter(({ accepted }) => accepted !== undefined);
  const groups = screen.name === 'check' && screen.by === 'hole' ? byHole(open) : bySeverity(open);
  const sections = [
    ...signOffSection(hole, width),
    ...groups.map(([head, of]): ListSection => section([line(head, 'strong')], of, width)),
    ...(settled.length === 0 ? [] : [section([line('accepted as they are', 'strong')], settled, width)]),
  ];
  if (judged.length === 0)
    return {
      ...oneSection(`check of ${of}`, []),
      sections: [...signOffSection(hole, width), { head: [], items: [[line('Nothing found.', 'good')]] }],
    };
  return {
    title: `check of ${of} · ${open.length} open${settled.length === 0 ? '' : ` · ${settled.length} accepted`}`,
    sections,
  };
}

/** The finding that the cursor is on. */
export function findingInHand(state: State): Judged | undefined {
  const { screen } = state;
  if (screen.name !== 'check') return undefined;
  // Which of them are found does not hang on where their lines break.
  const { sections } = found(checkList(state, 200), screen.find);
  const about = sections.flatMap(({ items, about }) => about ?? items.map(() => undefined))[screen.cursor];
  return judgedIn(state).find(({ facts }) => facts === about);
}

function judgedIn(state: State): readonly Judged[] {
  const { project, documents, found, now } = state;
  return judgedOf(project, documents, found, now, holeInHand(state));
}

const judgedOf = rememberLast(
  (
    project: Project,
    documents: State['documents'],
    found: State['found'],
    now: State['now'],
    hole: Document | undefined,
  ): readonly Judged[] => {
    const all = [...documents.values()];
    if (hole === undefined)
      return judgedAll(
        [...found, ...checkProject(project, all), ...checkShifts(all, project.shift, now)],
        all,
      );
    const file = `holes/${hole.id}.json`;
    const ofFile = found.filter(({ place }) => place.hole === hole.id || place.file === file);
    return judgedAll([...ofFile, ...checkHole(project, hole, all)], all);
  },
);

function bySeverity(open: readonly Judged[]): readonly (readonly [string, readonly Judged[]])[] {
  return (['fault', 'warning', 'note'] as const).flatMap((severity) => {
    const of = open.filter(({ finding }) => finding.severity === severity);
    return of.length === 0 ? [] : [[`${HEADS[severity]} · ${of.length}`, of] as const];
  });
}

function byHole(open: readonly Judged[]): readonly (readonly [string, readonly Judged[]])[] {
  const groups = new Map<string, Judged[]>();
  for (const each of open) {
    const { document } = each;
    const name =
      document === undefined
        ? 'the project'
        : document.kind === 'hole'
          ? headerOf(document).name
          : `${document.kind} ${document.id}`;
    groups.set(name, [...(groups.get(name) ?? []), each]);
  }
  return [...groups]
    .sort(([a], [b]) => a.localeCompare(b, 'en', { numeric: true }))
    .map(([name, of]) => [`${name} · ${of.length}`, of] as const);
}

function section(head: readonly Line[], of: readonly Judged[], width: number): ListSection {
  return { head, items: of.map((each) => lines(each, width)), about: of.map(({ facts }) => facts) };
}

function lines({ finding, accepted, before }: Judged, width: number): readonly Line[] {
  const { severity, place, problem, excerpt, remedy } = finding;
  return [
    spans(' ', [severity.toUpperCase(), accepted === undefined ? TONES[severity] : 'faint'], '  ', [
      formatPlace(place),
      'strong',
    ]),
    ...indented(problem, width, 'plain'),
    ...(excerpt === undefined ? [] : indented(excerpt, width, 'faint')),
    ...(accepted === undefined
      ? indented(remedy, width, 'accent')
      : indented(
          `accepted by ${accepted.by}, ${accepted.at.slice(0, 10)}: ${accepted.reason}`,
          width,
          'good',
        )),
    ...(before === undefined
      ? []
      : indented(
          `${before.by} accepted it on ${before.at.slice(0, 10)} (${before.reason}) when it said: ${before.problem}`,
          width,
          'warn',
        )),
  ];
}

function signOffSection(hole: Document | undefined, width: number): readonly ListSection[] {
  const by = hole === undefined ? undefined : signedOff(hole);
  if (by === undefined) return [];
  const said = `Signed off by ${by.by} on ${by.at.slice(0, 10)}${by.reason === undefined ? '' : `: ${by.reason}`}. It takes no change: ;open-again and the reason.`;
  return [{ head: wrap(said, width, 'good'), items: [] }];
}

function indented(text: string, width: number, tone: Tone): readonly Line[] {
  return wrap(text, width - 4, tone).map((each): Line => [{ text: '    ' }, ...each]);
}
