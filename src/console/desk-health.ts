import type { Desk } from '../desk/desk.ts';
import type { Health } from './state.ts';

/** The desk's health as the state holds it; the same object where nothing changed. */
export function healthOf(desk: Pick<Desk, 'health' | 'readOnly'>, was: Health): Health {
  const { state, unsafeEdits, waiting, reason, savedAt } = desk.health();
  // A console that another one has displaced can only read from then on: what it holds is as little saved as on a full disk.
  const isDisplaced = state === 'read only' && !desk.readOnly;
  const unsafe =
    state === 'unsafe' || isDisplaced
      ? {
          reason: reason ?? 'the disk does not take it',
          what: waiting.map((deed) => deed.what),
          ...(isDisplaced ? { isForGood: true as const } : {}),
        }
      : undefined;
  // What is pending is counted at each edit already; the names of it come from here.
  const isNamed = unsafe?.what.length === was.unsafe?.what.length && unsafe?.reason === was.unsafe?.reason;
  if (unsafeEdits === was.pending && savedAt === was.savedAt && isNamed) return was;
  return {
    pending: unsafeEdits,
    ...(savedAt === undefined ? {} : { savedAt }),
    ...(unsafe === undefined ? {} : { unsafe }),
  };
}
