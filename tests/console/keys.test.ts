import { describe, expect, it } from 'vitest';
import { HOLE_SCREENS } from '../../src/console/keys/binding.ts';
import { type Binding, KEYS, type ScreenName } from '../../src/console/keys.ts';

const SCREENS: readonly ScreenName[] = ['holes', ...HOLE_SCREENS];
const on = (screen: ScreenName): readonly Binding[] =>
  KEYS.filter((binding) => binding.on === 'any' || binding.on.includes(screen));

describe('the table of keys', () => {
  it.each(SCREENS)('gives no key two meanings on the screen %s', (screen) => {
    const keys = on(screen).flatMap((binding) => binding.keys);
    expect(keys.filter((key, index) => keys.indexOf(key) !== index)).toEqual([]);
  });

  it('gives no word two meanings', () => {
    const words = KEYS.flatMap((binding) => binding.word ?? []);
    expect(new Set(words).size).toBe(words.length);
  });

  it('has a word for all that a function key does on a hole, for keyboards without them', () => {
    const only = on('log').filter(
      (binding) => binding.keys.some((key) => /^f\d/.test(key)) && binding.word === undefined,
    );
    expect(only.map((binding) => binding.name)).toEqual([]);
  });

  it('leaves alone the keys that terminals and shells take for themselves', () => {
    const kept = [...'sqzcd\\hijm[wtnv'].filter((letter) => letter !== 'c').map((letter) => `ctrl-${letter}`);
    const used = KEYS.flatMap((binding) => binding.keys);
    expect(used.filter((key) => kept.includes(key) || key.startsWith('alt-') || key === 'insert')).toEqual(
      [],
    );
  });

  it('explains every key, and says nothing twice', () => {
    for (const screen of SCREENS) {
      const help = on(screen).map((binding) => binding.help);
      expect(new Set(help).size).toBe(help.length);
      for (const words of help) expect(words.length).toBeGreaterThan(5);
    }
  });
});
