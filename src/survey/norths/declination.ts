import geomagnetism from 'geomagnetism';
import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { instantMs, localDate, type Stamp } from '../../quantity/stamp.ts';
import { checkHorizontalField } from '../checks/weak-horizontal-field.ts';
import { magneticModelOutOfDate } from '../findings.ts';
import type { Geographic } from './grids.ts';

/** The Earth's field at a place and time by the World Magnetic Model. */
export interface MagneticField {
  /** Bearing of magnetic north from true north, degrees, east positive. */
  readonly declinationDeg: number;
  /** Angle of the field below horizontal, degrees, down positive. */
  readonly dipDeg: number;
  readonly horizontalNt: number;
  readonly totalNt: number;
  /** The model's name, `WMM-2025`. */
  readonly model: string;
  /** The decimal year it was taken for. */
  readonly epoch: number;
  /** The last month that the model is made for, `2029-11`. */
  readonly validTo: string;
}

/** A field, or none with the reason; a field can come with a caution. */
export interface FieldAnswer {
  readonly field: MagneticField | undefined;
  readonly findings: readonly Finding[];
}

/** Where a declination is from: `World Magnetic Model WMM-2025 for 2026.2, valid to 2029-11`. */
export function formatFieldSource(field: MagneticField): string {
  return `World Magnetic Model ${field.model} for ${field.epoch.toFixed(1)}, valid to ${field.validTo}`;
}

/** Decimal year of an instant, UTC. */
export function decimalYear(ms: number): number {
  const year = new Date(ms).getUTCFullYear();
  const start = Date.UTC(year, 0);
  return year + (ms - start) / (Date.UTC(year + 1, 0) - start);
}

/**
 * The field at WGS 84 degrees and metres above the ellipsoid (or the sea: the difference is far below what the field can show), at
 * an instant, by the World Magnetic Model in force then (NOAA/BGS; carried since December 2014, the last one until
 * November 2029). No field outside that; a finding where a compass is weak or useless.
 */
export function magneticField(where: Geographic, elevationM: number, at: Stamp, place: Place): FieldAnswer {
  const ms = instantMs(at);
  const model = modelAt(ms);
  if (model === undefined)
    return {
      field: undefined,
      findings: [
        magneticModelOutOfDate.at(place, {
          problem: `no World Magnetic Model is carried for ${localDate(at)}: they cover December 2014 to November 2029`,
          remedy: 'Check the date. After 2029, type the declination from a newer model, with its source.',
        }),
      ],
    };
  const point = model.point([where.latDeg, where.lonDeg, elevationM / 1000]);
  const field = {
    declinationDeg: point.decl,
    dipDeg: point.incl,
    horizontalNt: point.h,
    totalNt: point.f,
    model: model.name,
    epoch: decimalYear(ms),
    validTo: model.end_date.toISOString().slice(0, 7),
  };
  return { field, findings: checkHorizontalField(field.horizontalNt, place) };
}

/** The library throws outside its dates; undefined says the same. */
function modelAt(ms: number) {
  try {
    return geomagnetism.model(new Date(ms));
  } catch {
    return undefined;
  }
}
