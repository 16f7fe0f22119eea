import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { keepCode, keptCode, userCacheFolder } from '../src/code-cache.ts';
import { freshFolder } from './commands/support/outside.ts';

const NAME = 'program-0123456789abcdef-v20.1.0-x64.code';
const CODE = Buffer.from('bytes that stand for compiled code');

describe('compiled code that is kept', () => {
  it('comes back as it was, from the first folder that has it', () => {
    const [first, second] = [freshFolder(), join(freshFolder(), 'made', 'when', 'needed')];
    expect(keptCode([first, second], NAME)).toBeUndefined();
    keepCode([second], NAME, CODE);
    expect(keptCode([first, second], NAME)).toEqual(CODE);
    expect(readdirSync(second)).toEqual([NAME]);
  });

  it('is not used with any one byte changed, or cut anywhere', () => {
    const folder = freshFolder();
    keepCode([folder], NAME, CODE);
    const whole = readFileSync(join(folder, NAME));
    for (let at = 0; at < whole.length; at += 1) {
      const changed = Buffer.from(whole);
      changed[at]! ^= 0x40;
      for (const bytes of [changed, whole.subarray(0, at)]) {
        writeFileSync(join(folder, NAME), bytes);
        expect(keptCode([folder], NAME), `byte ${at}`).toBeUndefined();
      }
    }
  });

  it('goes to the next folder where the first can’t be written, and nowhere where none can', () => {
    const [blocked, open] = [freshFolder(), freshFolder()];
    // A folder in the place of the file: not even root can write there.
    mkdirSync(join(blocked, NAME, 'something'), { recursive: true });
    keepCode([blocked, open], NAME, CODE);
    expect(readdirSync(blocked)).toEqual([NAME]);
    expect(keptCode([blocked, open], NAME)).toEqual(CODE);
    keepCode([blocked], NAME, CODE);
    expect(readdirSync(blocked)).toEqual([NAME]);
  });

  it('takes the place of what an older program kept, on any Node, and leaves another Node’s of the same program', () => {
    const folder = freshFolder();
    const same = NAME.replace('v20.1.0', 'v22.0.0');
    for (const file of ['program-fedcba9876543210-v22.0.0-x64.code', same, 'program.js', 'notes.code'])
      writeFileSync(join(folder, file), '');
    keepCode([folder], NAME, CODE);
    expect(readdirSync(folder).sort()).toEqual([NAME, same, 'program.js', 'notes.code'].sort());
  });

  it('has the user’s cache folder for its second place, where there is one', () => {
    expect(userCacheFolder('linux', { HOME: '/home/jo' })).toBe('/home/jo/.cache/offsider');
    expect(userCacheFolder('linux', { HOME: '/home/jo', XDG_CACHE_HOME: '/fast' })).toBe('/fast/offsider');
    // The XDG Base Directory Specification: a path that isn't absolute is to be ignored.
    expect(userCacheFolder('linux', { HOME: '/home/jo', XDG_CACHE_HOME: 'here' })).toBe(
      '/home/jo/.cache/offsider',
    );
    expect(userCacheFolder('darwin', { HOME: '/Users/jo' })).toBe('/Users/jo/Library/Caches/offsider');
    expect(userCacheFolder('linux', {})).toBeUndefined();
  });
});
