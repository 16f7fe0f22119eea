import { describe, expect, it } from 'vitest';
import { healthOf } from '../../src/console/desk-health.ts';
import { done } from '../desk/support/project.ts';
import { troubledDesk } from '../desk/support/troubled.ts';
import { HOLE, holeMade, rowLogged } from '../desk/support/values.ts';

describe('what the console knows of how safe the work is', () => {
  it('names every edit that is not safe, also those entered since the disk refused and counted already', async () => {
    const { desk, trouble } = await troubledDesk();
    await done(desk, HOLE, holeMade(), 'hole made');
    const safe = healthOf(desk, { pending: 0 });
    expect(safe.unsafe).toBeUndefined();
    trouble.now = 'ENOSPC';
    await done(desk, HOLE, [rowLogged(desk.newId(), 0)], '0–1 logged');
    const first = healthOf(desk, safe);
    expect(first.unsafe?.what).toEqual(['0–1 logged']);
    void done(desk, HOLE, [rowLogged(desk.newId(), 1)], '1–2 logged');
    const second = healthOf(desk, { ...first, pending: desk.health().unsafeEdits });
    expect(second.unsafe?.what).toEqual(['0–1 logged', '1–2 logged']);
    expect(healthOf(desk, second)).toBe(second);
    trouble.now = undefined;
    await desk.retry();
    expect(healthOf(desk, second)).toMatchObject({ pending: 0 });
    expect(healthOf(desk, second).unsafe).toBeUndefined();
    await desk.close();
  });
});
