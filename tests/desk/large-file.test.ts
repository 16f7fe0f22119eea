import { describe, expect, it } from 'vitest';
import { openDesk } from '../../src/desk/desk.ts';
import { faultOptions } from '../faults/sitting.ts';
import { done } from './support/project.ts';
import { troubledDesk } from './support/troubled.ts';
import { HOLE, holeMade, remarksOf, rowLogged } from './support/values.ts';

const MEGABYTE = 1024 * 1024;
const OTHER = { kind: 'hole', id: 'ZQRC002' } as const;

/** A desk whose hole has remarks of so many MB, beside a second hole. */
async function grown(megabytes: number) {
  const at = await troubledDesk();
  const { desk } = at;
  await done(desk, HOLE, holeMade());
  await desk.snapshot();
  await done(desk, HOLE, remarksOf(desk, megabytes));
  await done(desk, OTHER, holeMade('ZQRC002'));
  await desk.snapshot();
  return at;
}

describe('a file that grows towards what can be read again', () => {
  it('is said when it is written and at every opening, days before it is reached', async () => {
    const { desk, disk } = await grown(8);
    const [found] = desk.findings();
    expect(desk.findings().map(({ code }) => code)).toEqual(['file-nears-limit']);
    expect(found?.place).toEqual({ file: 'holes/ZQRC001.json', hole: 'ZQRC001' });
    expect(found?.problem).toContain('its file is 17 MB; at 24 MB');
    await done(desk, HOLE, [rowLogged(desk.newId(), 4500)]);
    await desk.snapshot();
    expect(desk.findings()).toHaveLength(1);
    await desk.close();
    for (const readOnly of [false, true]) {
      const again = await openDesk({ ...faultOptions(disk, 4), readOnly });
      if (!again.ok) throw new Error('must open');
      expect(again.value.findings().map(({ code }) => code)).toEqual(['file-nears-limit']);
      await again.value.close();
    }
  });

  it('is not written where it could not be read again: that is said, other files are written, and no row is lost', async () => {
    const { desk, disk } = await grown(12);
    expect(desk.findings().map(({ code, severity }) => [code, severity])).toEqual([
      ['file-too-large-to-write', 'fault'],
    ]);
    expect((await disk.facts('/project/holes/ZQRC001.json')).size).toBeLessThan(MEGABYTE);
    expect(await disk.list('/project/holes')).toEqual(['ZQRC001.json', 'ZQRC002.json']);
    await done(desk, HOLE, [rowLogged(desk.newId(), 4500)]);
    await desk.snapshot();
    expect(desk.findings()).toHaveLength(1);
    expect(await desk.close()).toEqual({ ok: true });
    const again = await openDesk(faultOptions(disk, 4));
    if (!again.ok) throw new Error('must open');
    expect(Object.keys(again.value.get(HOLE)?.tables.rows ?? {})).toHaveLength(12 * 1024 + 1);
    expect(again.value.get(OTHER)).toBeDefined();
    await again.value.close();
  });
});
