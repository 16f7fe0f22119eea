import type { DeskOptions } from '../../../src/desk/desk.ts';
import type { Change, DocumentName, Id, Thing } from '../../../src/record/document.ts';

/** Bytes that look random and come the same for the same seed. */
export function seededRandom(seed: number): (bytes: number) => Uint8Array {
  let state = seed >>> 0;
  return (bytes) =>
    Uint8Array.from({ length: bytes }, () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return state >>> 24;
    });
}

/** A clock that starts on a day in March and moves on a second at each look. */
export function tickingClock(): DeskOptions['clock'] {
  let now = Date.UTC(2026, 2, 14, 0, 0, 0);
  return {
    nowMs: () => {
      now += 1000;
      return now;
    },
    offsetMin: () => 480,
  };
}

export const HOLE: DocumentName = { kind: 'hole', id: 'ZQRC001' };

/** The changes that make a hole. */
export function holeMade(name = 'ZQRC001'): readonly Change[] {
  return [
    {
      put: ['hole', 'hole'],
      thing: {
        name,
        state: 'drilling',
        logFromMm: 0,
        intervalMm: 1000,
        rodMm: 6000,
        firstRodOffsetMm: 0,
      },
    },
  ];
}

/** The change that logs one metre from a depth. */
export function rowLogged(id: Id, fromM: number, percent = 2): Change {
  return {
    put: ['rows', id],
    thing: { fromMm: fromM * 1000, toMm: fromM * 1000 + 1000, cells: { pyrite: { percent } } },
  };
}

/** Rows whose remarks come to so many MB: in a file they are twice that, in the table and in the history. */
export function remarksOf(desk: { readonly newId: () => string }, megabytes: number): readonly Change[] {
  const set = { remark: 'x'.repeat(1024) };
  return Array.from({ length: megabytes * 1024 }, (_, metre) => {
    const logged = rowLogged(desk.newId(), metre % 4000) as { put: readonly [string, string]; thing: Thing };
    return { put: logged.put, thing: { ...logged.thing, ...set } };
  });
}
