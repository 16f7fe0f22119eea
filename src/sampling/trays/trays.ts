import type { Finding } from '../../finding/finding.ts';
import type { Tray } from '../../hole/bags.ts';
import { formatInterval } from '../../quantity/interval.ts';
import { trayMetres, trayWithoutPhoto } from '../findings.ts';
import type { Sampling } from '../sampling.ts';

/** A compartment of a chip tray: both counted from 1, with the metres that go into it. */
export interface Compartment {
  readonly tray: number;
  readonly compartment: number;
  readonly fromMm: number;
  readonly toMm: number;
}

/** Where the chips of a depth go. Trays are counted from where logging starts; a depth above that has no place: undefined. */
export function compartmentAt(sampling: Sampling, startMm: number, depthMm: number): Compartment | undefined {
  if (depthMm < startMm) return undefined;
  const { compartments, compartmentMm } = sampling.tray;
  const index = Math.floor((depthMm - startMm) / compartmentMm);
  const fromMm = startMm + index * compartmentMm;
  return {
    tray: Math.floor(index / compartments) + 1,
    compartment: (index % compartments) + 1,
    fromMm,
    toMm: fromMm + compartmentMm,
  };
}

/** The metres of a tray, counted from 1. */
function trayInterval(sampling: Sampling, startMm: number, tray: number) {
  const length = sampling.tray.compartments * sampling.tray.compartmentMm;
  return { fromMm: startMm + (tray - 1) * length, toMm: startMm + tray * length };
}

/** The next tray and the millimetres until it is needed, where that is within `aheadMm`; else undefined. */
export function trayChange(
  sampling: Sampling,
  startMm: number,
  depthMm: number,
  aheadMm: number,
): { readonly tray: number; readonly inMm: number } | undefined {
  const here = compartmentAt(sampling, startMm, Math.max(depthMm, startMm));
  if (here === undefined) return undefined;
  const inMm = trayInterval(sampling, startMm, here.tray).toMm - depthMm;
  return inMm <= aheadMm ? { tray: here.tray + 1, inMm } : undefined;
}

/** A hole as its trays are read: where its chips start, how deep it is, whether it is over, the trays recorded. */
export interface TrayedHole {
  readonly name: string;
  readonly startMm: number;
  readonly toMm: number;
  readonly isOver: boolean;
  readonly trays: readonly Tray[];
}

/** A tray of a hole as its label says: its metres, the last one cut off at the depth reached, and its photograph. */
export interface ListedTray {
  readonly tray: number;
  readonly fromMm: number;
  readonly toMm: number;
  /** No more chips come into it: it is full, or the hole is over. */
  readonly done: boolean;
  readonly photo?: string;
  readonly label: string;
}

/** Every tray of a hole down to a depth, with the metres it was filled with where that is recorded. */
export function trayList(sampling: Sampling, hole: TrayedHole): readonly ListedTray[] {
  const length = sampling.tray.compartments * sampling.tray.compartmentMm;
  const count = Math.max(0, Math.ceil((hole.toMm - hole.startMm) / length));
  return Array.from({ length: count }, (_, index) => {
    const tray = index + 1;
    const whole = trayInterval(sampling, hole.startMm, tray);
    // Of two records of one tray, as two laptops make them, the later one counts.
    const filled = hole.trays.findLast((each) => each.tray === tray);
    const fromMm = filled?.fromMm ?? whole.fromMm;
    const toMm = filled?.toMm ?? Math.min(whole.toMm, hole.toMm);
    const photo = filled?.photo === undefined ? {} : { photo: filled.photo };
    const label = `${hole.name} tray ${tray} ${formatInterval({ fromMm, toMm })} m`;
    return { tray, fromMm, toMm, done: hole.isOver || whole.toMm <= hole.toMm, ...photo, label };
  });
}

/** Trays that are done and have no photograph, and trays filled with other metres than their place gives. */
export function checkTrays(sampling: Sampling, hole: TrayedHole): readonly Finding[] {
  return trayList(sampling, hole).flatMap((tray) => {
    const place = { hole: hole.name, fromMm: tray.fromMm, toMm: tray.toMm, thing: `tray ${tray.tray}` };
    const whole = trayInterval(sampling, hole.startMm, tray.tray);
    const missing =
      tray.done && tray.photo === undefined
        ? [
            trayWithoutPhoto.at(place, {
              problem: 'No more chips come into this tray, and it has no photograph.',
              remedy:
                'Wet the chips, photograph the tray with its label, and register the picture: ;photo with the number of the tray and its file.',
            }),
          ]
        : [];
    const differs =
      tray.fromMm !== whole.fromMm || tray.toMm > whole.toMm
        ? [
            trayMetres.at(place, {
              problem: `This tray should hold ${formatInterval(whole)} m.`,
              remedy: 'Look at its compartments and correct the record, or relabel the tray.',
            }),
          ]
        : [];
    return [...missing, ...differs];
  });
}
