import type { Outside } from '../desk/outside.ts';
import type { Project } from '../project/project.ts';
import { formatDepth } from '../quantity/depth.ts';
import { formatInterval } from '../quantity/interval.ts';
import { formatMinutes, localTime, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { answerTo } from '../shift/answers.ts';
import { gapsOf, minutesByClass, spansOf } from '../shift/current.ts';
import { geologistsOf } from '../shift/geologists.ts';
import { ownRecord } from '../shift/own-record.ts';
import { queryList, queryText } from '../shift/query-list.ts';
import { figureText } from '../shift/reconcile.ts';
import { shiftHeaderOf, shiftThings } from '../shift/shift.ts';
import { closed, presumedEnd } from '../shift/shift-end.ts';
import { eventsOf, type ShiftEvent } from '../shift/shift-events.ts';
import { activityNamed } from '../shift/shift-rules.ts';
import { timelineKeys, timelineLegend, timelineOf } from '../shift/timeline.ts';
import { atProject, holesOf, type Shared } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { EXIT, refuse, say, sayJson } from './say.ts';
import { tableText } from './table-text.ts';

/** What `offsider shift` is given. */
export interface ShiftAsked extends Shared {
  /** Local date of the shift, or its whole name; the latest shift if none is given. */
  readonly shift?: string | undefined;
  readonly json: boolean;
}

/** Says what a shift did (its time, its metres) and, once a plod has come, the query list. */
export function shift(outside: Outside, asked: ShiftAsked): Promise<number> {
  return atProject(outside, asked, async ({ desk, project }) => {
    const shifts = [...desk.documents().values()]
      .filter((document) => document.kind === 'shift')
      .sort((a, b) => (shiftHeaderOf(a).startsAt < shiftHeaderOf(b).startsAt ? -1 : 1));
    const [rig] = asked.rig === undefined ? [] : project.settings.rigs;
    const meant = shifts
      .filter((each) => rig === undefined || shiftHeaderOf(each).rig === rig.name)
      .filter(({ id }) => asked.shift === undefined || id === asked.shift || id.includes(`_${asked.shift}_`));
    if (asked.shift !== undefined && meant.length > 1)
      return refuse(
        outside,
        wrongUse.at(
          { thing: `shift ${asked.shift}` },
          {
            problem: `${meant.length} shifts are of that day`,
            remedy: `Give the whole name: ${meant.map(({ id }) => id).join(', ')}.`,
          },
        ),
      );
    const stored = meant.at(-1);
    if (stored === undefined) {
      const there = shifts.map(({ id }) => id).join(', ');
      return refuse(
        outside,
        wrongUse.at(
          { thing: `shift ${asked.shift ?? ''}`.trim() },
          {
            problem: 'no such shift is recorded',
            remedy: there === '' ? 'None is yet.' : `There are ${there}.`,
          },
        ),
      );
    }
    const now = desk.now();
    const context = { documents: desk.documents().values(), shifts: project.shift.shifts, now };
    const found = closed(stored, context);
    const presumed = presumedEnd(stored, context);
    const events = eventsOf(found, holesOf(desk), now);
    const documents = [...desk.documents().values()];
    const { comparisons, queries, ownBill, plodBill } = queryList(found, documents, project.shift, now);
    if (asked.json)
      sayJson(outside, {
        shift: found.id,
        ...(presumed === undefined ? {} : { presumedEnd: presumed }),
        spans: spansOf(found, now),
        gaps: gapsOf(found, now),
        events,
        own: ownFacts(found, holesOf(desk), now),
        comparisons,
        ownBill,
        plodBill,
        queries,
      });
    else
      say(
        outside,
        [
          ...recordLines(project, found, holesOf(desk), now),
          ...(presumed === undefined
            ? []
            : [
                `The end, ${localTime(presumed)}, is PRESUMED: it was not recorded. offsider activity end records it.`,
              ]),
          ...eventLines(events),
          ...queryLines(comparisons, shiftThings(stored, 'plods').length > 0),
          '',
          ...timelineOf(found, ownRecord(found, holesOf(desk), now).metres, project.shift, now),
          ...timelineLegend(timelineKeys(found, project.shift)),
          ...queries.map((query) => queryText(query, answerTo(stored, query)?.answer ?? 'open')),
        ].join('\n'),
      );
    return queries.length > 0 ? EXIT.findings : EXIT.fine;
  });
}

/** The own record as data: maps do not come out in JSON. */
function ownFacts(document: Document, holes: readonly Document[], now: Stamp) {
  const { shots, consumables, ...record } = ownRecord(document, holes, now);
  return { ...record, shots: Object.fromEntries(shots), consumables: Object.fromEntries(consumables) };
}

function recordLines(
  project: Project,
  document: Document,
  holes: readonly Document[],
  now: Stamp,
): readonly string[] {
  const { rig, date, name, crew } = shiftHeaderOf(document);
  const geologists = geologistsOf(document, holes, project.settings.people, now).join(', ');
  const spans = spansOf(document, now);
  const rows = spans.map((span) => [
    localTime(span.startedAt),
    `${formatMinutes(span.minutes)} h`,
    activityNamed(project.shift, span.activity)?.label ?? span.activity,
    span.hole ?? '',
    span.charge,
    (span.beside ?? []).join(', '),
  ]);
  const classes = Object.entries(minutesByClass(spans)).filter(([, minutes]) => minutes > 0);
  return [
    `${rig}, ${name} shift of ${date}; geologist ${geologists}${crew.length === 0 ? '' : `; crew ${crew.join(', ')}`}`,
    tableText([['from', 'for', 'activity', 'hole', 'charged by', 'beside'], ...rows]),
    ...gapsOf(document, now).map(
      (gap) =>
        `GAP ${localTime(gap.from)}–${localTime(gap.to)}: ${formatMinutes(gap.minutes)} h not recorded`,
    ),
    '',
    ...classes.map(([charge, minutes]) => `${charge}: ${formatMinutes(minutes)} h`),
    ...metreLines(ownRecord(document, holes, now).metres),
  ];
}

function eventLines(events: readonly ShiftEvent[]): readonly string[] {
  if (events.length === 0) return [];
  const rows = events.map(({ at, hole, text }) => [localTime(at), hole ?? '', text]);
  return ['', tableText([['at', 'hole', 'what happened'], ...rows])];
}

/** Metres by hole, from the top of the first to the foot of the last. */
function metreLines(metres: ReturnType<typeof ownRecord>['metres']): readonly string[] {
  return [...new Set(metres.map((each) => each.hole))].map((hole) => {
    const here = metres.filter((each) => each.hole === hole);
    const fromMm = Math.min(...here.map((each) => each.fromMm));
    const toMm = Math.max(...here.map((each) => each.toMm));
    const drilledMm = here.reduce((sum, each) => sum + each.toMm - each.fromMm, 0);
    return `${hole}: ${formatDepth(drilledMm)} m drilled, ${formatInterval({ fromMm, toMm })}`;
  });
}

function queryLines(
  comparisons: ReturnType<typeof queryList>['comparisons'],
  hasPlod: boolean,
): readonly string[] {
  const rows = comparisons
    .filter(({ own, plod }) => own !== 0 || plod !== 0)
    .map(({ subject, of, own, plod, past, follows }) => [
      subject === 'beside' ? 'hours' : subject,
      of,
      figureText(subject, own),
      hasPlod ? figureText(subject, plod) : '',
      follows === true ? 'follows' : past ? 'QUERY' : '',
    ]);
  return ['', tableText([['', '', 'own record', hasPlod ? 'plod' : 'no plod yet', ''], ...rows])];
}
