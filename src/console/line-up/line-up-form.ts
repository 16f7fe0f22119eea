import type { LineUpReading, LineUpStep } from '../../acts/line-up-order.ts';
import { formatAzimuth } from '../../quantity/azimuth.ts';
import { formatDip } from '../../quantity/dip.ts';
import type { Draft } from '../draft.ts';

/** A line-up being made on the screen: what is typed at the step in hand, and how far its words are scrolled. */
export interface LineUpForm extends LineUpReading {
  readonly typed: Draft;
  /** Lines that the words of the step are scrolled by. */
  readonly scroll: number;
  /** Lines of the cautions that have been on the screen; the rest is not read. */
  readonly readTo: number;
  /** Lines that the screen shows at once, and whether some of the cautions were never on it; known once it was drawn. */
  readonly page: number;
  readonly unread: boolean;
}

/** What is at a step, in a few words; undefined where nothing was read yet. */
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
