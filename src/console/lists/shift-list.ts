import { queriesOf } from '../../acts/plod.ts';
import { headerOf } from '../../hole/hole.ts';
import { formatCents } from '../../quantity/cents.ts';
import { formatMinutes, instantMs, localTime, type Stamp } from '../../quantity/stamp.ts';
import type { Document } from '../../record/document.ts';
import { answerTo, queryName } from '../../shift/answers.ts';
import { gapsOf, minutesByClass, type Span, spansOf } from '../../shift/current.ts';
import { geologistsOf } from '../../shift/geologists.ts';
import { ownRecord } from '../../shift/own-record.ts';
import { lineText } from '../../shift/plod-text.ts';
import { isUnauthorised } from '../../shift/query-list.ts';
import { linesOf, shiftHeaderOf, shiftThings } from '../../shift/shift.ts';
import { closed, plannedEnd, shiftsOf } from '../../shift/shift-end.ts';
import { eventsOf } from '../../shift/shift-events.ts';
import { activityNamed } from '../../shift/shift-rules.ts';
import { signersOf, unsignedPlods } from '../../shift/signed.ts';
import { timelineKeys, timelineOf } from '../../shift/timeline.ts';
import { waitingNotes } from '../../standing/completed-notes.ts';
import { crewNote } from '../../standing/crew-note.ts';
import { swingStart } from '../../standing/swing.ts';
import { holesOf, inOwn, type State } from '../state.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import type { Listed, ListSection } from './listed.ts';

const HINT = 'Type what happened: breakdown 14:20 hydraulic hose. ? shows every form.';

/** What the rig did in a shift: each activity, gaps, what was read from the holes in between; its hours; the hours by class. */
export function shiftList(state: State, width: number): Listed {
  const stored = shiftShown(state);
  if (stored === undefined) {
    const none = 'No shift is recorded. Ctrl-A says what the rig does now; or type begin 06:00.';
    return {
      title: `shift record of ${state.rig}`,
      sections: [{ head: wrap(none, width, 'warn'), items: [] }],
    };
  }
  const shift = closed(stored, context(state));
  if (state.screen.name === 'shift' && state.screen.view === 'plod')
    return {
      title: `plod and queries of ${stored.id}`,
      sections: [
        { head: [...timelineLines(state, shift, width), ...plodLines(state, stored, width)], items: [] },
      ],
    };
  if (state.screen.name === 'shift' && state.screen.view !== undefined)
    return noteList(state, stored, width, state.screen.view === 'swing');
  const rows = rowsOf(state, shift);
  const record: ListSection = {
    head: hoursLines(state, stored, shift),
    items: rows.map((row) => row.lines),
    about: rows.map((row) => row.about),
  };
  return {
    title: `shift record ${stored.id} · ${hoursTitle(state, stored, shift)}`,
    sections: [record, { head: footLines(state, stored, shift, width), items: [] }],
  };
}

/** What a presumed end is worked out from. */
const context = (state: State) => ({
  documents: state.documents.values(),
  shifts: state.project.shift.shifts,
  now: state.now,
});

/**
 * The line of the record that it opens at: the activity going on; of a shift that is over the first gap or standby that no one
 * authorised, else its last activity.
 */
export function openingLine(state: State): number {
  const stored = shiftShown(state);
  if (stored === undefined) return 0;
  const shift = closed(stored, context(state));
  const rows = rowsOf(state, shift);
  const spans = spansOf(shift, state.now);
  const going = spans.find((span) => span.current)?.id;
  const gaps = gapsOf(shift, state.now).filter((gap) => gap.minutes > state.project.shift.tolerances.minutes);
  const asking = new Set<string>([
    ...gaps.map((gap) => gap.from),
    ...spans.filter(isUnauthorised).map((span) => span.id),
  ]);
  const isAsking = ({ at, about }: Row): boolean => asking.has(about ?? at);
  const first =
    going === undefined ? rows.findIndex(isAsking) : rows.findIndex(({ about }) => about === going);
  return Math.max(0, first >= 0 ? first : rows.findLastIndex(({ about }) => about !== undefined));
}

interface Row {
  readonly at: Stamp;
  readonly lines: readonly Line[];
  /** The clock of the entry that it is, for the line that amends it. */
  readonly about: string | undefined;
}

function rowsOf(state: State, shift: Document): readonly Row[] {
  const activities = spansOf(shift, state.now).map(
    (span): Row => ({ at: span.startedAt, lines: [activityLine(state, span)], about: span.id }),
  );
  const gaps = gapsOf(shift, state.now).map(
    (gap): Row => ({
      at: gap.from,
      lines: [spans([` ${localTime(gap.from)} ${lasting(gap.minutes)}  GAP: nothing recorded`, 'warn'])],
      about: undefined,
    }),
  );
  const events = eventsOf(shift, holesOf(state), state.now).map(
    (event): Row => ({
      at: event.at,
      lines: [spans([` ${localTime(event.at)}          · ${event.text}`, 'faint'])],
      about: undefined,
    }),
  );
  return [...activities, ...gaps, ...events].toSorted((a, b) => Date.parse(a.at) - Date.parse(b.at));
}

function activityLine(state: State, span: Span): Line {
  const label = activityNamed(state.project.shift, span.activity)?.label ?? span.activity;
  const hole = span.hole === undefined ? undefined : state.documents.get(`hole/${span.hole}`);
  const more = [
    span.charge,
    hole === undefined ? span.hole : headerOf(hole).name,
    ...(span.beside ?? []).map((each) => `+${each}`),
    span.authorisedBy === undefined ? undefined : `by ${span.authorisedBy}`,
    ...(span.used ?? []).map((each) => `${each.count} ${each.item}`),
    span.remark,
  ].filter((each) => each !== undefined);
  return spans(
    ` ${localTime(span.startedAt)} ${lasting(span.minutes)}  ${label}`,
    [`  ${more.join(' · ')}`, 'faint'],
    [span.current ? '  now' : '', 'good'],
  );
}

/** The hours in the title, which stays where the record scrolls. */
function hoursTitle(state: State, stored: Document, shift: Document): string {
  const { startsAt, endedAt } = shiftHeaderOf(shift);
  const from = localTime(startsAt);
  if (endedAt === undefined)
    return `${from}–now, ends ${localTime(plannedEnd(stored, state.project.shift.shifts, state.now))}`;
  const isTold = shiftHeaderOf(stored).endedAt !== undefined;
  return `${from}–${localTime(endedAt)}${isTold ? '' : ' PRESUMED'}`;
}

function hoursLines(state: State, stored: Document, shift: Document): readonly Line[] {
  const { startsAt, endedAt, plannedEndAt, crew } = shiftHeaderOf(shift);
  const by = geologistsOf(
    shift,
    [...state.documents.values()],
    state.project.settings.people,
    state.now,
  ).join(', ');
  const isTold = shiftHeaderOf(stored).endedAt !== undefined;
  const planned = localTime(plannedEnd(stored, state.project.shift.shifts, state.now));
  const end =
    endedAt === undefined
      ? spans(
          ['now', 'good'],
          `; it ends ${planned} ${plannedEndAt === undefined ? 'by its settings' : 'as agreed'}`,
        )
      : isTold
        ? spans(localTime(endedAt))
        : spans([`${localTime(endedAt)} PRESUMED`, 'warn']);
  const names = crew.length === 0 ? 'not recorded' : crew.join(', ');
  return [
    [...spans(` from ${localTime(startsAt)} to `), ...end],
    line(` crew ${names} · geologist ${by}`, 'faint'),
    line(''),
  ];
}

function footLines(state: State, stored: Document, shift: Document, width: number): readonly Line[] {
  const classes = Object.entries(minutesByClass(spansOf(shift, state.now))).filter(([, min]) => min > 0);
  const { endedAt } = shiftHeaderOf(shift);
  const isPresumed = endedAt !== undefined && shiftHeaderOf(stored).endedAt === undefined;
  const end = isPresumed
    ? [line(` End not recorded: ${localTime(endedAt)} is presumed. Type end ${localTime(endedAt)}.`, 'warn')]
    : [];
  const hours = classes.map(([charge, minutes]) => `${charge} ${lasting(minutes).trim()}`).join(' · ');
  return [line(''), ...end, ...wrap(` ${hours}`, width), ...wrap(` ${HINT}`, width, 'faint')];
}

/** The note for the next crew: as it was completed on this shift, else the draft as it would be now. */
function noteList(state: State, stored: Document, width: number, isSwing: boolean): Listed {
  const note = shiftThings(stored, 'crewNotes')
    .map(([, each]) => each)
    .findLast((each) => (each.swingFrom !== undefined) === isSwing);
  const documents = [...state.documents.values()];
  const { rig } = shiftHeaderOf(stored);
  const swingFrom = isSwing ? swingStart(documents, rig) : undefined;
  const draft = note?.draft ?? crewNote(state.project, documents, rig, state.now, swingFrom);
  const signed =
    note === undefined
      ? line(` Draft. Type note${isSwing ? ' swing' : ''} and what is to add: it is completed.`, 'warn')
      : line(
          ` completed by ${note.by} ${localTime(note.at)} · ${note.acknowledgedBy === undefined ? 'NOT ACKNOWLEDGED: the next geologist types acknowledge' : `acknowledged by ${note.acknowledgedBy}`}`,
          note.acknowledgedBy === undefined ? 'warn' : 'good',
        );
  const unread = waitingNotes(documents, rig).filter(({ shift }) => shift.id !== stored.id);
  const before = note !== undefined ? [] : unread.slice(-1);
  const parts = [...draft, ...(note?.added === undefined ? [] : [{ title: 'Added', lines: [note.added] }])];
  return {
    title: `note for the next crew${isSwing ? ', swing' : ''} · ${stored.id}`,
    sections: [
      {
        head: [
          ...before.map(({ shift, note: { by } }) =>
            line(` ${by} completed a note in ${shift.id}, NOT ACKNOWLEDGED: Left shows it.`, 'warn'),
          ),
          signed,
        ],
        items: [],
      },
      ...parts.map(({ title, lines }) => ({
        head: [line(` ${title}`, 'strong')],
        items: lines.map((each) => wrap(each, width - 4).map((part): Line => [{ text: '    ' }, ...part])),
      })),
    ],
  };
}

/** The shift by quarter hours, record over plod over metres; a line too wide for the screen is cut at its end. */
function timelineLines(state: State, shift: Document, width: number): readonly Line[] {
  const { metres } = ownRecord(shift, holesOf(state), state.now);
  const lines = timelineOf(shift, metres, state.project.shift, state.now);
  return [
    line(''),
    ...lines.map((each) => line(` ${each}`)),
    ...wrap(timelineKeys(shift, state.project.shift), width, 'faint'),
  ];
}

/** The plods of a shift as they were typed, and the query list with what came of each. */
function plodLines(state: State, stored: Document, width: number): readonly Line[] {
  const plods = shiftThings(stored, 'plods');
  if (plods.length === 0)
    return [
      line(''),
      line(inOwn(state, ' No plod yet. Ctrl-P types it; or plod 0412 Mick Tarrant.'), 'faint'),
    ];
  const { queries, ownBill, plodBill } = queriesOf(
    state.project,
    [...state.documents.values()],
    stored,
    state.now,
  );
  const { currency } = state.project.shift.contract;
  const sheets = plods.flatMap(([id, { sheet, from, crew, remark }]) => {
    const signed = signersOf(stored, id);
    const isSigned = !unsignedPlods(stored).includes(sheet);
    const by = [
      ...(signed.length === 0 ? [] : [`signed by ${signed.join(', ')}`]),
      ...(isSigned ? [] : [`not signed: sign ${sheet}`]),
    ].join(' · ');
    const lines = linesOf(stored, id).flatMap((each, index) => [
      line(` ${String(index + 1).padStart(2)}  ${lineText(each)}`),
      ...(each.was ?? []).flatMap((was) => wrap(`     was ${was}`, width, 'faint')),
    ]);
    const whole = [crew === undefined ? undefined : `crew ${crew.join(', ')}`, remark].filter(
      (each) => each !== undefined,
    );
    return [
      line(` plod ${sheet}${from === undefined ? '' : ` from ${from}`} · ${by}`, 'strong'),
      ...whole.flatMap((each) => wrap(`     ${each}`, width)),
      ...lines,
    ];
  });
  const money = ` own record ${currency} ${formatCents(ownBill.total)} · plod ${currency} ${formatCents(plodBill.total)}`;
  return [
    line(''),
    ...sheets,
    line(money),
    ...(queries.length === 0
      ? [line(' No queries.', 'good')]
      : [line(' queries: agree, correct or open, its name, then what was said', 'strong')]),
    ...queries.flatMap((query) => {
      const answer = answerTo(stored, query)?.answer ?? 'open';
      return wrap(
        ` ${queryName(query)} [${answer}] ${query.problem}. ${query.remedy}`,
        width,
        answer === 'open' ? 'warn' : 'faint',
      );
    }),
  ];
}

const DAY_MIN = 24 * 60;

/** How long, in six cells. More than a day means that no one ended the shift: the figure would mean nothing. */
function lasting(minutes: number): string {
  return (minutes < DAY_MIN ? formatMinutes(minutes) : '>24:00').padStart(6);
}

/** The shift on the screen as it is stored: the one that was gone to, else the latest of this rig. */
export function shiftShown(state: State): Document | undefined {
  const { screen } = state;
  if (screen.name === 'shift' && screen.shift !== undefined)
    return state.documents.get(`shift/${screen.shift}`);
  return latestStored(state);
}

/** The latest shift of this rig that has begun, as it is stored. */
export function latestStored(state: State): Document | undefined {
  return shiftsOf(state.documents.values(), state.rig).findLast(
    (each) => instantMs(shiftHeaderOf(each).startsAt) <= instantMs(state.now) + 300_000,
  );
}
