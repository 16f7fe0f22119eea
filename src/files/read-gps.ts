import { constants, type FileHandle, open } from 'node:fs/promises';
import { setTimeout as wait } from 'node:timers/promises';
import { errorCode, whyRefused } from './disk.ts';

/** What a GPS sent, or why nothing came, in words. */
export type GpsText =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly problem: string };

/** How much is listened to. */
export interface GpsLimits {
  /** Longest that a device is listened to, milliseconds. */
  readonly forMs: number;
  /** Enough once so many sentences with a position came. */
  readonly sentences: number;
}

/** A minute of a receiver that sends once a second, or half of one: long enough to average, short enough to stand and wait. */
const GPS_LIMITS: GpsLimits = { forMs: 30_000, sentences: 60 };

/** Most that is read of a file, bytes: hours of a receiver. */
const LARGEST = 4 * 1024 * 1024;
const CHUNK = 64 * 1024;
const PAUSE_MS = 50;

/**
 * Reads the sentences of a GPS from a file (whole, up to 4 MB) or a device (a serial port, a pipe), listened to until enough positions came,
 * the sender ended or the time is up. A device is opened without waiting for it: one that never sends keeps no one.
 */
export async function readGps(path: string, limits: GpsLimits = GPS_LIMITS): Promise<GpsText> {
  let file: FileHandle | undefined;
  try {
    file = await open(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    const facts = await file.stat();
    if (facts.isDirectory()) return { ok: false, problem: 'it is a folder' };
    const text = facts.isFile() ? await readWhole(file) : await listen(file, limits);
    if (text.trim() !== '') return { ok: true, text };
    return { ok: false, problem: facts.isFile() ? 'it is empty' : 'nothing came from it' };
  } catch (error) {
    return { ok: false, problem: whyRefused(error) };
  } finally {
    await file?.close();
  }
}

async function readWhole(file: FileHandle): Promise<string> {
  const buffer = new Uint8Array(LARGEST);
  let filled = 0;
  while (filled < LARGEST) {
    const { bytesRead } = await file.read(buffer, filled, Math.min(CHUNK, LARGEST - filled));
    if (bytesRead === 0) break;
    filled += bytesRead;
  }
  return asText(buffer.subarray(0, filled));
}

async function listen(file: FileHandle, { forMs, sentences }: GpsLimits): Promise<string> {
  const until = performance.now() + forMs;
  const chunk = new Uint8Array(CHUNK);
  let text = '';
  while (performance.now() < until && text.length < LARGEST && positionsIn(text) < sentences) {
    const bytesRead = await readNow(file, chunk);
    if (bytesRead > 0) text += asText(chunk.subarray(0, bytesRead));
    // A pipe at its end reads as nothing, and so does one that no one writes to yet: only after something came is it over.
    else if (bytesRead === 0 && text !== '') break;
    else await wait(PAUSE_MS);
  }
  return text;
}

/** Bytes that are there: 0 at the end of a pipe or before its beginning, −1 where a device has nothing yet. */
async function readNow(file: FileHandle, chunk: Uint8Array): Promise<number> {
  try {
    return (await file.read(chunk, 0, chunk.length)).bytesRead;
  } catch (error) {
    if (errorCode(error) === 'EAGAIN') return -1;
    throw error;
  }
}

/** Receivers send ASCII; anything else is kept as a character that no sentence holds. */
const asText = (bytes: Uint8Array) => new TextDecoder('latin1').decode(bytes);

const positionsIn = (text: string) => (text.match(/\$..(?:GGA|RMC),[^\r\n]*\*[0-9A-Fa-f]{2}/g) ?? []).length;
