import { ok, type Result, refused } from '../finding/finding.ts';
import type { Made } from '../hole/commands/made.ts';
import type { Shot, SurveyRun } from '../hole/direction.ts';
import { REFUSALS } from '../hole/findings.ts';
import { holeThing, holeThings } from '../hole/hole.ts';
import { type Depth, formatDepth, parseDepth } from '../quantity/depth.ts';
import { formatInterval } from '../quantity/interval.ts';
import type { Document, Id } from '../record/document.ts';
import { placeOf } from '../standing/survey.ts';
import type { RejectedPart } from './shot.ts';

/** How shots are rejected on one line, for messages. */
export const REJECT_FORM = '90 misread, or 30-60 azimuth near steel, or 30-180 of gyro 3: misaligned';

const SAID =
  /^(?<from>\d+(\.\d+)?)(-(?<to>\d+(\.\d+)?))?\s+(?<azimuth>azimuths?\s+)?(of\s+(?<tool>[^:]+):\s*)?(?<reason>\S.*)$/;

/** Shots of one run, or their azimuths alone, and why. */
interface Meant {
  readonly fromMm: Depth;
  readonly toMm: Depth;
  readonly part: RejectedPart;
  readonly tool: string | undefined;
  readonly reason: string;
}

/**
 * Rejects shots said on one line (`30-60 azimuth near steel`), or takes rejected ones into use again, with the reason: those of one run, named
 * where several have shots there. One way for console and pipe; on the survey screen it is one shot at a time.
 */
export function rejectShotsSaid(hole: Document, said: string, use: boolean): Result<Made> {
  const meant = meantBy(said);
  if (meant === undefined)
    return refused(
      REFUSALS.shotUnread.at(placeOf(hole), {
        excerpt: said,
        problem: 'it says no depth, or no reason',
        remedy: `Say it as: ${REJECT_FORM}.`,
      }),
    );
  const field = meant.part === 'shot' ? 'rejected' : 'azimuthRejected';
  const there = holeThings(hole, 'shots').filter(
    ([, shot]) =>
      shot.depthMm >= meant.fromMm &&
      shot.depthMm <= meant.toMm &&
      (shot[field] !== undefined) === use &&
      (meant.part === 'shot' || shot.azimuthDeg !== undefined) &&
      (meant.tool === undefined || isCalled(holeThing(hole, 'runs', shot.run), meant.tool)),
  );
  const names = [...new Set(there.map(([, { run }]) => nameOf(holeThing(hole, 'runs', run))))];
  const what = whatOf(meant);
  if (there.length === 0 || new Set(there.map(([, { run }]) => run)).size > 1)
    return refused(
      REFUSALS.notThere.at(placeOf(hole), {
        problem:
          there.length === 0
            ? `there is no ${what} to ${use ? 'use again' : 'reject'}`
            : `more than one run has shots there: ${names.join('; ')}`,
        remedy:
          there.length === 0
            ? 'Look at the shots: F6, or offsider survey.'
            : `Name the run, with a colon behind it: ${typedRange(meant)} of ${names[0]}: ${meant.reason}. Or on the survey screen (F6).`,
      }),
    );
  return ok({
    what: `${what} ${use ? 'used again' : 'rejected'}: ${meant.reason}`,
    changes: there.map(([id]) => changeOf(id, field, use ? undefined : meant.reason)),
  });
}

function changeOf(id: Id, field: keyof Shot, reason: string | undefined): Made['changes'][number] {
  return reason === undefined
    ? { patch: ['shots', id], unset: [field] }
    : { patch: ['shots', id], set: { [field]: reason } };
}

function meantBy(said: string): Meant | undefined {
  const { from = '', to = from, azimuth, tool, reason = '' } = SAID.exec(said.trim())?.groups ?? {};
  const [fromMm, toMm] = [parseDepth(from), parseDepth(to)];
  if (fromMm === undefined || toMm === undefined || toMm < fromMm) return undefined;
  return { fromMm, toMm, part: azimuth === undefined ? 'shot' : 'azimuth', tool: tool?.trim(), reason };
}

/** As it is typed: `30-60`. */
const typedRange = ({ fromMm, toMm }: Meant) =>
  toMm > fromMm ? `${formatDepth(fromMm)}-${formatDepth(toMm)}` : formatDepth(fromMm);

function whatOf(meant: Meant): string {
  const many = meant.toMm > meant.fromMm ? 's' : '';
  const at = many === '' ? formatDepth(meant.fromMm) : formatInterval(meant);
  return `${meant.part === 'azimuth' ? 'azimuth' : 'shot'}${many} at ${at} m`;
}

const nameOf = (run: SurveyRun | undefined) =>
  run === undefined ? '' : run.pass === 'single' ? run.tool : `${run.tool}, ${run.pass}`;

/** True of a run by its tool, or by tool and pass with or without the comma. */
function isCalled(run: SurveyRun | undefined, name: string): boolean {
  const plain = (text: string) => text.toLowerCase().replaceAll(',', '').replace(/\s+/g, ' ').trim();
  return (
    run !== undefined && [run.tool, `${run.tool} ${run.pass}`].some((each) => plain(each) === plain(name))
  );
}
