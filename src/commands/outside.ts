import { createHash, randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { Outside } from '../desk/outside.ts';
import { instantMs, offsetMin, parseStamp, type Stamp } from '../quantity/stamp.ts';

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

function clockFrom(file: string): Outside['clock'] {
  const look = (): Stamp => {
    const at = parseStamp(readFileSync(file, 'utf8').trim());
    if (at === undefined) throw new Error(`${file} holds no stamp like 2026-03-14T07:42:10+08:00`);
    return at;
  };
  return { nowMs: () => instantMs(look()), offsetMin: () => offsetMin(look()) };
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
