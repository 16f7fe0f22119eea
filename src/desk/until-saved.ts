import { setTimeout as pause } from 'node:timers/promises';
import type { Desk } from './contract.ts';
import type { Saved } from './health.ts';

/** A scanner or a sync client holds a file for a second or two, a stick is pushed in again: so long a command waits before it gives up. */
const PAUSES_MS = [100, 250, 500, 1000, 2000];

/** What came of waiting. `waiting`: it is in memory, is tried again as the desk closes, and may be on the medium all the same. */
export type SavedAtLast = Saved | { readonly ok: false; readonly problem: string; readonly waiting: true };

/** Waits for something submitted to be on the medium, and tries again for some seconds where the disk does not take it at once. */
export async function untilSaved(
  desk: Pick<Desk, 'health' | 'retry' | 'now'>,
  submitted:
    | { readonly ok: true; readonly durable: Promise<Saved> }
    | { readonly ok: false; readonly problem: string },
  pauseFor: (ms: number) => Promise<unknown> = pause,
): Promise<SavedAtLast> {
  if (!submitted.ok) return submitted;
  const saved = await submitted.durable;
  if (saved.ok) return saved;
  for (const ms of PAUSES_MS) {
    if (desk.health().state === 'read only') break;
    await pauseFor(ms);
    const { unsafeEdits, savedAt } = await desk.retry();
    if (unsafeEdits === 0) return { ok: true, at: savedAt ?? desk.now() };
  }
  return { ok: false, problem: desk.health().reason ?? saved.problem, waiting: true };
}

/** What to do about something that was not saved; `it` is how a person gives it again ("the line", "the command"). */
export function remedyUnsaved(saved: SavedAtLast, it: string): string {
  return 'waiting' in saved
    ? `It is tried once more before the project is closed; the last message says what came of it. Give ${it} again only if that says so.`
    : `Nothing of it is saved. Mend that, then give ${it} again.`;
}
