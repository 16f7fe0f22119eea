import type { Geographic } from '../norths/grids.ts';

/**
 * How a fix was made, by the quality of GGA or the mode of RMC (NMEA 0183). Estimated, typed-in and simulated positions have their
 * own marks there and are not fixes.
 */
export type FixKind = 'plain' | 'differential' | 'precise' | 'kinematic fixed' | 'kinematic float';

const GGA_KINDS: Readonly<Record<string, FixKind>> = {
  '1': 'plain',
  '2': 'differential',
  '3': 'precise',
  '4': 'kinematic fixed',
  '5': 'kinematic float',
};

const RMC_KINDS: Readonly<Record<string, FixKind>> = {
  A: 'plain',
  D: 'differential',
  P: 'precise',
  R: 'kinematic fixed',
  F: 'kinematic float',
};

/** A GPS fix out of one sentence. Quality as the sentence gives it: kind, satellites, horizontal dilution; height above the sea in metres. */
export interface Fix extends Geographic {
  readonly sentence: 'GGA' | 'RMC';
  readonly kind: FixKind;
  /** Time of day, UTC, `hhmmss`, as sent. */
  readonly time: string;
  readonly heightM?: number;
  readonly satellites?: number;
  readonly dilution?: number;
}

/** One line of a GPS: a fix, a sentence that holds none for us, or a line that can't be trusted and why. */
export type NmeaLine =
  | { readonly kind: 'fix'; readonly fix: Fix }
  | { readonly kind: 'no fix'; readonly reason: string }
  | { readonly kind: 'bad'; readonly reason: string };

/** Longest sentence that NMEA 0183 allows, `$` and line end included. */
const LONGEST = 82;

/** The checksum of NMEA 0183: all characters between `$` and `*`, exclusive or, two hexadecimal digits. */
export function nmeaChecksum(between: string): string {
  let sum = 0;
  for (let index = 0; index < between.length; index++) sum ^= between.charCodeAt(index);
  return sum.toString(16).toUpperCase().padStart(2, '0');
}

/** Reads one line as NMEA 0183: GGA and RMC from any talker give fixes, once their checksum holds. */
export function readNmea(line: string): NmeaLine {
  const text = line.trim();
  const parts = /^\$([\x20-\x7e]*)\*([0-9A-Fa-f]{2})$/.exec(text);
  if (parts === null) return { kind: 'bad', reason: 'no NMEA sentence with a checksum' };
  if (text.length + 2 > LONGEST) return { kind: 'bad', reason: `longer than ${LONGEST} characters` };
  const [, between = '', printed = ''] = parts;
  const sum = nmeaChecksum(between);
  if (sum !== printed.toUpperCase())
    return { kind: 'bad', reason: `checksum ${printed} does not fit: the characters give ${sum}` };
  const fields = between.split(',');
  const kind = (fields[0] ?? '').slice(-3);
  if (kind === 'GGA') return readGga(fields);
  if (kind === 'RMC') return readRmc(fields);
  return { kind: 'no fix', reason: `${fields[0]} holds no position we read` };
}

const NO_FIX: NmeaLine = { kind: 'no fix', reason: 'the receiver had no fix, or only an estimate' };

function readGga(fields: readonly string[]): NmeaLine {
  const kind = GGA_KINDS[fields[6] ?? ''];
  if (kind === undefined) return NO_FIX;
  const at = readPosition(fields.slice(2, 6));
  if (at === undefined) return { kind: 'bad', reason: 'latitude or longitude is not a position' };
  return {
    kind: 'fix',
    fix: {
      ...at,
      sentence: 'GGA',
      kind,
      time: fields[1] ?? '',
      ...numberAs('satellites', fields[7]),
      ...numberAs('dilution', fields[8]),
      ...(fields[10] === 'M' ? numberAs('heightM', fields[9]) : {}),
    },
  };
}

function readRmc(fields: readonly string[]): NmeaLine {
  // Before NMEA 2.3 the sentence ended without a mode: valid was all it could say.
  const kind = RMC_KINDS[fields[12] === undefined || fields[12] === '' ? 'A' : fields[12]];
  if (fields[2] !== 'A' || kind === undefined) return NO_FIX;
  const at = readPosition(fields.slice(3, 7));
  if (at === undefined) return { kind: 'bad', reason: 'latitude or longitude is not a position' };
  return { kind: 'fix', fix: { ...at, sentence: 'RMC', kind, time: fields[1] ?? '' } };
}

/** Latitude `ddmm.mm`, N or S, longitude `dddmm.mm`, E or W. */
function readPosition(fields: readonly string[]): Geographic | undefined {
  const [lat = '', latSide = '', lon = '', lonSide = ''] = fields;
  const latDeg = readDegrees(lat, 2, 90);
  const lonDeg = readDegrees(lon, 3, 180);
  if (latDeg === undefined || lonDeg === undefined || !/^[NS]$/.test(latSide) || !/^[EW]$/.test(lonSide))
    return undefined;
  return { latDeg: latSide === 'S' ? -latDeg : latDeg, lonDeg: lonSide === 'W' ? -lonDeg : lonDeg };
}

function readDegrees(text: string, digits: number, most: number): number | undefined {
  if (!new RegExp(`^\\d{${digits + 2}}(\\.\\d+)?$`).test(text)) return undefined;
  const minutes = Number(text.slice(digits));
  const deg = Number(text.slice(0, digits)) + minutes / 60;
  return minutes < 60 && deg <= most ? deg : undefined;
}

function numberAs<K extends string>(key: K, text: string | undefined): { readonly [P in K]?: number } {
  return text !== undefined && /^-?\d+(\.\d+)?$/.test(text)
    ? ({ [key]: Number(text) } as { [P in K]: number })
    : {};
}
