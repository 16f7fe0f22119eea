import type { LineUpTaken } from '../../desk/acts/line-up.ts';
import { formatAzimuth } from '../../quantity/azimuth.ts';
import { formatDip } from '../../quantity/dip.ts';
import type { Draft } from '../draft.ts';

/** The steps of a line-up, in the order of work. */
export const LINE_UP_STEPS = [
  'cautions',
  'permission',
  'way',
  'azimuth',
  'distance',
  'compass',
  'crew dip',
  'clinometer',
  'collar',
  'result',
] as const;
export type LineUpStep = (typeof LINE_UP_STEPS)[number];

/** A line-up being made: which step is in hand, what is typed there, and what was read so far. */
export interface LineUpForm {
  readonly step: LineUpStep;
  readonly typed: Draft;
  readonly taken: LineUpTaken;
  /** Metres from the rig at which the compass is read now. */
  readonly distanceM?: number;
  /** Lines that the words of the step are scrolled by. */
  readonly scroll: number;
}

/** What stands at a step, in a few words; undefined where nothing was read yet. */
export function readAt(form: LineUpForm, step: LineUpStep): string | undefined {
  const { taken } = form;
  switch (step) {
    case 'cautions':
      return taken.cautionsReadBy;
    case 'permission':
      return taken.permissionBy;
    case 'way':
      return taken.way;
    case 'azimuth':
      return taken.azimuth === undefined ? undefined : formatAzimuth(taken.azimuth);
    case 'distance':
      return form.distanceM === undefined ? undefined : `${form.distanceM} m`;
    case 'compass':
      return taken.compass.length === 0
        ? undefined
        : `${taken.compass.length} reading${taken.compass.length === 1 ? '' : 's'}`;
    case 'crew dip':
      return taken.crewDip === undefined ? undefined : formatDip(taken.crewDip);
    case 'clinometer':
      return taken.clinometerDip === undefined ? undefined : formatDip(taken.clinometerDip);
    case 'collar':
      return taken.collar === undefined
        ? undefined
        : `${taken.collar.eastM.toFixed(1)} E ${taken.collar.northM.toFixed(1)} N`;
    case 'result':
      return undefined;
  }
}
