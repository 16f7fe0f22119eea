import { headerOf, planOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { azimuth, formatAzimuth } from '../quantity/azimuth.ts';
import { formatDepth } from '../quantity/depth.ts';
import { formatDip } from '../quantity/dip.ts';
import { formatInterval } from '../quantity/interval.ts';
import { formatMinutes, localTime, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { streamAhead, type Upcoming } from '../sampling/stream/stream.ts';
import { activityNamed } from '../shift/shift-rules.ts';
import { activityNow } from '../standing/activity.ts';
import { adviceFor } from '../standing/advice.ts';
import { headsOf, loggedWords } from '../standing/heads.ts';
import { openItems } from '../standing/open-items.ts';
import { paceOf } from '../standing/pace.ts';
import { nextShot } from '../standing/shots.ts';
import { streamStateOf } from '../standing/stream.ts';
import { ADVICE_LIMITS, dangersFirst, headlines, isDanger, restsOn } from '../termination/advice/verdict.ts';
import { adviceWords } from '../termination/rules/rule.ts';
import { holesText } from './holes.ts';

/** What the state of a project is read from. */
export interface StateOf {
  readonly project: Project;
  readonly documents: ReadonlyMap<string, Document>;
  readonly holes: readonly Document[];
  readonly now: Stamp;
}

/** Where a project stands, as plain text: the hole in hand (the first that is being drilled), then every hole. */
export function stateText(at: StateOf): string {
  const { settings } = at.project;
  const inHand = at.holes.find((hole) => headerOf(hole).state === 'drilling');
  const title = [settings.name, settings.company, settings.district].filter((part) => part !== undefined);
  return [
    title.join(' · '),
    '',
    ...(inHand === undefined ? ['No hole is being drilled.'] : holeState(at, inHand)),
    '',
    holesText(at.project, at.holes),
  ].join('\n');
}

/** Where one hole stands, line by line. */
function holeState(at: StateOf, hole: Document): readonly string[] {
  return [
    headline(hole),
    depthLine(hole),
    ...activityLine(at, hole),
    shotLine(at.project, hole),
    '',
    ...bagLines(at.project, hole),
    '',
    ...adviceLines(at, hole),
    ...openLines(at.project, hole),
  ];
}

function headline(hole: Document): string {
  const { name, state } = headerOf(hole);
  const plan = planOf(hole);
  if (plan === undefined) return `${name}, ${state}, no plan`;
  const direction = `${formatAzimuth(azimuth(plan.azimuthDeg, plan.azimuthNorth))}, dip ${formatDip(plan.dipDeg)}`;
  return `${name}, ${state}, planned ${direction} to ${formatDepth(plan.depthMm)} m`;
}

function depthLine(hole: Document): string {
  const { drilledMm, behindMm } = headsOf(hole);
  const pace = paceOf(hole);
  const reached =
    pace?.plannedReachedAt === undefined ? '' : `, planned depth at ${localTime(pace.plannedReachedAt)}`;
  const speed = pace === undefined ? '' : `; ${pace.metresPerHour.toFixed(1)} m an hour${reached}`;
  return `Drilled ${formatDepth(drilledMm)} m, logged to ${loggedWords(hole)}, ${formatDepth(behindMm)} m drilled and not logged${speed}`;
}

function activityLine({ project, documents, now }: StateOf, hole: Document): readonly string[] {
  const drilling = Object.values(hole.tables.drilling ?? {}).at(-1);
  const rig = typeof drilling?.rig === 'string' ? drilling.rig : undefined;
  const span = rig === undefined ? undefined : activityNow(project, documents.values(), rig, now);
  if (span === undefined) return [];
  const label = activityNamed(project.shift, span.activity)?.label ?? span.activity;
  return [`${rig}: ${label} since ${localTime(span.startedAt)}, ${formatMinutes(span.minutes)} h`];
}

function shotLine(project: Project, hole: Document): string {
  const { atMm, overdue } = nextShot(hole, project.survey);
  return `Survey shot ${overdue ? 'OVERDUE, due' : 'due'} at ${formatDepth(atMm)} m`;
}

function bagLines(project: Project, hole: Document): readonly string[] {
  const rodMm = headerOf(hole).rodMm;
  const ahead = streamAhead(project.sampling, streamStateOf(hole), { count: 6, rodMm });
  const controls = ahead.announced.filter((each) => !ahead.upcoming.includes(each));
  return [
    'Bags next:',
    ...[...ahead.upcoming, ...controls].map((each) => `  ${upcomingText(each)}`),
    ...ahead.putOff.map((put) => `  ${put.number}  ${put.kind} put off: ${put.reason}`),
    `  ${ahead.numberedLeft} numbered ${ahead.numberedLeft === 1 ? 'bag' : 'bags'} left, to ${formatDepth(ahead.lastsToMm)} m`,
  ];
}

/** A bag that comes up: its number, what is in it, and in how many drilled metres it is due. */
function upcomingText({ number, kind, fromMm, toMm, inMm }: Upcoming): string {
  const metre = fromMm === undefined || toMm === undefined ? '' : ` ${formatInterval({ fromMm, toMm })}`;
  const due = kind === 'primary' ? '' : `, in ${formatDepth(inMm)} m`;
  return `${number}  ${kind}${metre}${due}`;
}

function adviceLines({ project, documents }: StateOf, hole: Document): readonly string[] {
  const { shown, outcomes, ahead } = adviceFor(project, hole, documents.values());
  const head = headlines(shown, outcomes).map(({ words, danger }) => `${danger ? '!' : ' '} ${words}`);
  if (!shown.shown) return ['advice on ending the hole:', ...head];
  return [
    `${shown.advice.heading}, ${restsOn(shown.advice)}:`,
    ...head,
    ...dangersFirst(outcomes).map((outcome) => {
      const { rule, state, progress, reason } = outcome;
      const stands = state === 'cannot tell' ? reason : progress.text;
      return `${isDanger(outcome) ? '!' : ' '} ${rule.name} (${adviceWords(rule)}): ${state}, ${stands}`;
    }),
    ...ahead.map((warning) => `  ${warning.words}`),
    `  ${ADVICE_LIMITS}`,
  ];
}

function openLines(project: Project, hole: Document): readonly string[] {
  const items = openItems(project, hole, headsOf(hole).drilledMm);
  return items.length === 0 ? [] : ['', 'Open, were it to end here:', ...items.map((item) => `  ${item}`)];
}
