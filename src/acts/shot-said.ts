import type { Finding, Result } from '../finding/finding.ts';
import { refused } from '../finding/finding.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import { placeOf } from '../standing/survey.ts';
import { type ReadShot, readTypedShot } from '../survey/shots/typed-shot.ts';
import { doubtsOfShot, openRun, recordShotRead } from './shot.ts';
import { correctShot, readingsAt } from './shot-corrected.ts';

/** A shot as said on one line: what it would record or why not, and what is doubtful about it; `corrects` one that is there. */
export interface ShotSaid {
  readonly shot: ReadShot | undefined;
  readonly recorded: Result<Made>;
  readonly doubts: readonly Finding[];
  /** What it shows to be doubtful about shots recorded before it. */
  readonly earlier: readonly Finding[];
  /** A last `=`: it is so, whatever is doubtful. */
  readonly insists: boolean;
  readonly corrects: boolean;
}

const NUMBER = /^[+-]?\d+(\.\d+)?$/;

/** How a shot is said, for messages. */
const SHOT_FORM = '60 -59.5 271.2';

/**
 * Reads `60 -59.5 271.2` (depth, dip, azimuth as read; the azimuth left out where there is none), or `b63 …` for the depth of the bit, for
 * the run that is open; behind the azimuth the total field in nanotesla and the magnetic dip, where the tool gives them. A last `=` insists;
 * `corrects` at the end corrects the reading that is there at this depth.
 * One way for the console and the pipe, so that both refuse and doubt the same.
 */
export function readShotSaid(
  project: Project,
  hole: Document,
  text: string,
  maker: Maker,
  documents: Iterable<Document>,
): ShotSaid {
  const insists = text.trim().endsWith('=');
  const plain = text.trim().replace(/\s*=$/, '');
  const corrects = /\scorrects$/i.test(plain);
  const typed = typedShot(plain.replace(/\s+corrects$/i, ''), openRun(hole)?.[1].toolOffsetMm ?? 0);
  const none = { shot: undefined, doubts: [], earlier: [], insists, corrects };
  if (typed === undefined)
    return {
      ...none,
      recorded: refused(
        REFUSALS.shotUnread.at(
          { hole: headerOf(hole).name },
          {
            excerpt: text,
            problem: 'it is not a shot',
            remedy: `Type depth, dip and azimuth with spaces between, like ${SHOT_FORM}.`,
          },
        ),
      ),
    };
  const { shot: read, findings } = readTypedShot(typed, undefined, placeOf(hole));
  if (read === undefined) return { ...none, recorded: refused(...findings) };
  const shot = { ...read, ...typed.felt };
  const recorded = corrects ? correctShot(hole, shot, maker) : recordShotRead(project, hole, shot, maker);
  const { own, earlier } = recorded.ok
    ? doubtsOfShot(project, hole, shot, maker, documents)
    : { own: [], earlier: [] };
  const again = corrects || !recorded.ok ? [] : runAgain(hole, shot, plain);
  return { shot, recorded, doubts: [...again, ...own], earlier, insists, corrects };
}

/** A second shot at the depth of one that was rejected: paid again if the tool was run again, and no shot at all if it was misread. */
function runAgain(hole: Document, shot: ReadShot, text: string): readonly Finding[] {
  const [, first] = readingsAt(hole, shot.depthMm).rejected.at(-1) ?? [];
  if (first === undefined) return [];
  return [
    REFUSALS.asked.at(
      { hole: headerOf(hole).name, fromMm: shot.depthMm },
      {
        problem: `the one rejected here (${first.rejected}) counts as a shot, and so does this one`,
        remedy: `Where the tool was run once and only misread: ;shot ${text} corrects.`,
      },
    ),
  ];
}

/** Limits of what a sensor can feel of the Earth, as a shot keeps it. */
const LARGEST_NT = 100_000;

function typedShot(text: string, toolOffsetMm: number) {
  const [depth = '', dip = '', azimuth, field, magneticDip, ...more] = text.split(/\s+/);
  const plain = depth.replace(/^b/, '');
  const numbers = [plain, dip, azimuth ?? '0', field ?? '0', magneticDip ?? '0'];
  if (!numbers.every((each) => NUMBER.test(each)) || more.length > 0) return undefined;
  if (Number(field ?? 0) < 0 || Number(field ?? 0) > LARGEST_NT || Math.abs(Number(magneticDip ?? 0)) > 90)
    return undefined;
  const depthM = Number(plain) - (depth.startsWith('b') ? toolOffsetMm / 1000 : 0);
  return {
    depthM,
    dipDeg: Number(dip),
    ...(azimuth === undefined ? {} : { azimuthDeg: Number(azimuth) }),
    felt: {
      ...(field === undefined ? {} : { fieldNt: Number(field) }),
      ...(magneticDip === undefined ? {} : { magneticDipDeg: Number(magneticDip) }),
    },
  };
}
