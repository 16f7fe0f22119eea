import { formatDepth } from '../../quantity/depth.ts';
import type { Document, Thing } from '../../record/document.ts';
import type { LineUp, Shot, SurveyRun } from '../direction.ts';
import type { Stop } from '../ending.ts';
import type { Collar } from '../header.ts';
import { holeThings } from '../hole.ts';
import type { Made, Maker } from './made.ts';

/** A position of the collar, beside those there are: none is overwritten, the best rank is used. */
export function recordCollar(collar: Collar, maker: Maker): Made {
  return {
    what: `collar position (${collar.rank})`,
    changes: [{ put: ['collars', maker.newId()], thing: collar as Thing }],
  };
}

/** A run of a survey tool with its shots, as read. */
export function recordRun(run: SurveyRun, shots: readonly Omit<Shot, 'run'>[], maker: Maker): Made {
  const id = maker.newId();
  return {
    what: `survey run, ${shots.length} shot${shots.length === 1 ? '' : 's'}`,
    changes: [
      { put: ['runs', id], thing: run as Thing },
      ...shots.map((shot) => ({
        put: ['shots', maker.newId()] as const,
        thing: { ...shot, run: id } as Thing,
      })),
    ],
  };
}

/** One more shot of a run that is there. */
export function recordShot(shot: Shot, maker: Maker): Made {
  return {
    what: `shot at ${formatDepth(shot.depthMm)} m`,
    changes: [{ put: ['shots', maker.newId()], thing: shot as Thing }],
  };
}

/** A line-up, accepted or refused, as it was set and checked. */
export function recordLineUp(lineUp: LineUp, maker: Maker): Made {
  return {
    what: lineUp.accepted
      ? 'line-up accepted'
      : lineUp.correction === undefined
        ? 'line-up refused'
        : 'line-up refused, correction requested',
    changes: [{ put: ['lineUps', maker.newId()], thing: lineUp as Thing }],
  };
}

/** Why a hole is drilled without a line-up; one that is said again takes the place of the one before. */
export function recordNotLinedUp(because: string, maker: Maker): Made {
  const notLinedUp = { because, at: maker.at, by: maker.by };
  return {
    what: `not lined up: ${because}`,
    changes: [{ patch: ['hole', 'hole'], set: { notLinedUp } }],
  };
}

/** The driller stops for safety or for the hole: advice on ending is hidden until the stop is over. */
export function recordStop(stop: Stop, maker: Maker): Made {
  return {
    what: `driller's stop: ${stop.because}`,
    changes: [{ put: ['stops', maker.newId()], thing: stop as Thing }],
  };
}

/** The driller's stop is over: every stop that is open ends. */
export function endStops(hole: Document, maker: Maker): Made {
  const open = holeThings(hole, 'stops').filter(([, stop]) => stop.endedAt === undefined);
  return {
    what: "driller's stop over",
    changes: open.map(([id]) => ({ patch: ['stops', id] as const, set: { endedAt: maker.at } })),
  };
}
