import { expect } from 'vitest';
import { type Act, type Chapter, keysOf } from '../../support/whole-hole/script.ts';
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
  for (const key of keys) {
    if ('character' in key) sitting.type(key.character);
    else sitting.press(key.name);
  }
}
