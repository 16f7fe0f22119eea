import { expect } from 'vitest';
import { type Act, type Chapter, isThere, keysOf, type ScriptKey } from '../../support/whole-hole/script.ts';
import type { Sitting } from './sitting.ts';

/** Plays a chapter into a sitting, each key a read of its own, and looks at the screen after each act. */
export function play(sitting: Sitting, chapter: Chapter): void {
  for (const act of chapter.acts) {
    if (act.after !== undefined) sitting.wait(act.after);
    press(sitting, act);
    const screen = sitting.screen().join('\n');
    for (const seen of act.see) expect(screen, `after ${act.keys}`).toMatch(seen);
    for (const seen of act.gone ?? []) expect(screen, `after ${act.keys}`).not.toMatch(seen);
  }
}

function press(sitting: Sitting, act: Act): void {
  const keys = keysOf(act.keys);
  if (act.atOnce === true) {
    sitting.burst(keys.map((key) => ('character' in key ? key.character : '\r')).join(''));
    return;
  }
  for (const key of keys.slice(0, -1)) pressOne(sitting, key);
  // In a real terminal the next act begins as soon as this one is seen: what can be seen sooner would let the clock run ahead of the keys.
  expect(isThere(act, sitting.screen().join('\n')), `seen before the last key of ${act.keys}`).toBe(false);
  for (const key of keys.slice(-1)) pressOne(sitting, key);
}

function pressOne(sitting: Sitting, key: ScriptKey): void {
  if ('character' in key) sitting.type(key.character);
  else sitting.press(key.name);
}
