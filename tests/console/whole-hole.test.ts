import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { tellOneStory } from '../support/story.ts';
import { WHOLE_HOLE_PROJECT } from '../support/whole-hole/files.ts';
import { AFTER_COVER, FROM_ROW_60, TO_COVER } from '../support/whole-hole/script.ts';
import { play } from './support/play.ts';
import { type Sitting, sitDown } from './support/sitting.ts';

/** Tables of the hole file that the same story leaves when it is typed in a real terminal (tests/e2e). */
const typed = JSON.parse(
  readFileSync(join(import.meta.dirname, '../e2e/whole-hole.expected.json'), 'utf8'),
).tables;

/** Tables with the ids' counters alone: what comes before them differs from one copy of a project to the next. */
function withoutReplica(tables: unknown): unknown {
  return JSON.parse(JSON.stringify(tables).replace(/"[a-z0-9]{6}-(\d+)"/g, '"$1"'));
}

let sitting: Sitting;
beforeAll(async () => {
  sitting = await sitDown(WHOLE_HOLE_PROJECT, '2026-03-16T06:30:00+08:00');
});
const tables = () => sitting.hole('MBRC020').tables;

tellOneStory();

describe('the whole hole of the end-to-end test, straight through the console’s rule', () => {
  it.each([...TO_COVER, ...AFTER_COVER])('$title', (chapter) => play(sitting, chapter));

  it('closed and opened again at 60 m, shows every row as it was saved', async () => {
    const before = tables();
    sitting = await sitting.reopen();
    expect(tables()).toEqual(before);
    expect(Object.keys(tables().rows ?? {})).toHaveLength(60);
    expect(sitting.screen().join('\n')).toContain(' 60–61 ▸');
  });

  it.each(FROM_ROW_60)('$title', (chapter) => play(sitting, chapter));

  it('leaves the same tables as the keys in a real terminal do', () => {
    expect(withoutReplica(tables())).toEqual(withoutReplica(typed));
  });

  it('still holds all of it when it is opened again', async () => {
    const before = tables();
    sitting = await sitting.reopen();
    expect(tables()).toEqual(before);
  });
});
