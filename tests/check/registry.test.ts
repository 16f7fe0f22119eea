import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { allFindingKinds, catalogueText, FINDING_KINDS_BY_ROOM } from '../../src/check/registry.ts';

const source = join(import.meta.dirname, '../../src');

/** Codes that a room declares, read out of its files. */
function declaredIn(room: string): readonly string[] {
  return readdirSync(join(source, room), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .flatMap((file) => [
      ...readFileSync(join(source, room, file), 'utf8').matchAll(/defineFinding\(\{\s*code: '([^']+)'/g),
    ])
    .map(([, code]) => code ?? '');
}

describe('the collected kinds of finding', () => {
  it.each(FINDING_KINDS_BY_ROOM)('hold every kind that %s/ declares, and no other', (room, kinds) => {
    expect(kinds.map((kind) => kind.code).sort()).toEqual([...declaredIn(room)].sort());
  });

  it('take in every room below that declares one', () => {
    const rooms = [
      'quantity',
      'value',
      'finding',
      'record',
      'condition',
      'schema',
      'shorthand',
      'hole',
      'sampling',
      'survey',
      'shift',
      'termination',
      'project',
      'standing',
    ];
    const declaring = rooms.filter((room) => declaredIn(room).length > 0);
    expect(FINDING_KINDS_BY_ROOM.map(([room]) => room).sort()).toEqual(declaring.sort());
  });

  it('give no code to two kinds', () => {
    const codes = allFindingKinds.map((kind) => kind.code);
    expect(codes.filter((code, index) => codes.indexOf(code) !== index)).toEqual([]);
  });

  it('say of each in the catalogue what is wrong and why it matters', () => {
    const text = catalogueText();
    for (const { code, title, rationale } of allFindingKinds) {
      expect(text).toContain(`**\`${code}\`**`);
      expect(text).toContain(title);
      expect(text).toContain(rationale);
    }
  });

  it('show below each, where there is one, an input and the very words that it brings about', () => {
    const [[room, kinds]] = FINDING_KINDS_BY_ROOM as [(typeof FINDING_KINDS_BY_ROOM)[number]];
    const [kind] = kinds;
    const example = { input: 'a comma too many', text: 'logging.json:3:5: a comma\n  Take it out.' };
    const text = catalogueText(
      [[room, [kind as (typeof kinds)[number]]]],
      new Map([[kind?.code ?? '', example]]),
    );
    expect(text).toContain(
      ' Given a comma too many:\n\n```text\nlogging.json:3:5: a comma\n  Take it out.\n```',
    );
    expect(catalogueText([[room, kinds]])).not.toContain('```');
  });
});
