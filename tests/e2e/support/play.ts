import { type Act, type Chapter, isThere, keysOf } from '../../support/whole-hole/script.ts';
import type { Pty } from './pty.ts';
import type { Rig } from './rig.ts';

/** Plays a chapter into a console in a terminal, each key a write of its own; waits after each act until the screen shows what it is to show. */
export async function play(rig: Rig, pty: Pty, chapter: Chapter): Promise<void> {
  for (const act of chapter.acts) {
    if (act.after !== undefined) rig.pass(act.after);
    press(pty, act);
    await pty.waitFor((lines) => isThere(act, lines.join('\n')), wanted(act));
  }
}

function press(pty: Pty, act: Act): void {
  const keys = keysOf(act.keys);
  if (act.atOnce === true) pty.type(keys.map((key) => ('character' in key ? key.character : '\r')).join(''));
  else for (const key of keys) pty.press('character' in key ? key.character : key.name);
}

function wanted(act: Act): string {
  const gone = act.gone === undefined ? '' : `, and no longer ${act.gone.join(', ')}`;
  return `after ${act.keys} the screen showing ${act.see.join(', ')}${gone}`;
}
