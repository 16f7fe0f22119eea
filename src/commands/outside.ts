import { createHash, randomBytes } from 'node:crypto';
import type { Outside } from '../desk/outside.ts';
import { whyRefused } from '../files/disk.ts';
import { readRegular } from '../files/read-regular.ts';
import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { instantMs, offsetMin, parseStamp, type Stamp } from '../quantity/stamp.ts';

import { wrongUse } from './findings.ts';

export type { Outside } from '../desk/outside.ts';

/**
 * The real world around this process. Two variables stand in for its chance parts, so that an end-to-end test can compare whole
 * files: OFFSIDER_CLOCK_FILE names a file that holds a stamp, read at each look; OFFSIDER_SEED is any text that the random bytes follow from.
 */
export function realOutside(process: NodeJS.Process): Outside {
  const { env, stdin, stdout, stderr } = process;
  const clockFile = env.OFFSIDER_CLOCK_FILE ?? '';
  const seed = env.OFFSIDER_SEED ?? '';
  return {
    clock: clockFile === '' ? realClock : clockFrom(clockFile),
    random: seed === '' ? randomBytes : bytesFrom(seed),
    env,
    stdin,
    stdout,
    stderr,
  };
}

const realClock: Outside['clock'] = {
  nowMs: () => Date.now(),
  offsetMin: () => -new Date().getTimezoneOffset() + 0,
};

/** Far more than a stamp; a clock file is read at every look. */
const LARGEST_CLOCK = 200;

function clockFrom(file: string): Outside['clock'] {
  const look = (): Stamp => {
    const at = stampIn(file);
    if (!at.ok) throw new Error(`${file}: ${at.findings.map(({ problem }) => problem).join('; ')}`);
    return at.value;
  };
  return { nowMs: () => instantMs(look()), offsetMin: () => offsetMin(look()) };
}

/** What is wrong with the clock file that the environment names, to be refused before anything is opened; undefined where it can be used. */
export function clockFault(env: Outside['env']): Finding | undefined {
  const file = env.OFFSIDER_CLOCK_FILE ?? '';
  const read = file === '' ? undefined : stampIn(file);
  return read === undefined || read.ok ? undefined : read.findings[0];
}

function stampIn(file: string): Result<Stamp> {
  const bad = (problem: string, remedy: string): Result<Stamp> =>
    refused(wrongUse.at({ file }, { problem, remedy }));
  const without =
    'or start without OFFSIDER_CLOCK_FILE: then the clock of the computer is used. Nothing was changed.';
  let text: string;
  try {
    text = new TextDecoder().decode(readRegular(file, LARGEST_CLOCK)).trim();
  } catch (error) {
    return bad(`the clock file can't be read: ${whyRefused(error)}`, `Give a file with a stamp, ${without}`);
  }
  const at = parseStamp(text);
  if (at !== undefined) return ok(at);
  return bad(
    `the clock file has no stamp: "${text}"`,
    `Write a stamp like 2026-03-14T07:42:10+08:00 into it, ${without}`,
  );
}

/** Bytes that follow from a seed alone: SHA-256 of the seed and a counter. */
export function bytesFrom(seed: string): Outside['random'] {
  let block = 0;
  return (bytes) => {
    const found: Buffer[] = [];
    for (let have = 0; have < bytes; have += 32) {
      found.push(createHash('sha256').update(`${seed}\n${block}`).digest());
      block += 1;
    }
    return Uint8Array.from(Buffer.concat(found).subarray(0, bytes));
  };
}
