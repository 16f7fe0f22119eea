import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { breaksCarry } from '../../src/schema/cautions.ts';
import type { LoggingSchema } from '../../src/schema/logging-schema.ts';
import { explain } from '../../src/shorthand/explain.ts';
import type { EntryContext } from '../../src/shorthand/parse.ts';
import { cellWords } from '../../src/shorthand/words.ts';
import type { RowSaid } from '../../src/value/row.ts';
import { schemaWithRows } from '../support/arbitrary-schema.ts';
import { runs } from '../support/long-run.ts';
import { above, rowOf, schema } from './fixture-schema.ts';

function echo(line: string, context: Partial<EntryContext> = { above }): readonly string[] {
  return explain(rowOf(line, context).row, { schema, ...context }).map(
    ({ kind, text }) => `${kind}: ${text}`,
  );
}

const changes = (line: string, context?: Partial<EntryContext>) =>
  echo(line, context).filter((text) => !text.startsWith('same'));

describe('the echo', () => {
  test('says what changed, in words, in the order of the log sheet, then what is now it was', () => {
    expect(echo('v2p10=')).toEqual([
      'up: pyrite 2→10 % ▲',
      'down: veins 5→2 % ▼',
      'same: basalt',
      'same: weathering fresh',
      'same: chlorite 2',
      'same: silica 1',
    ]);
  });

  test('says what came and what went', () => {
    expect(changes('se1s0hl,')).toEqual(['new: sericite 1', 'gone: silica gone', 'new: chalcopyrite trace']);
    expect(changes('c0s0')).toEqual(['gone: no alteration']);
    expect(changes("alteration'nr")).toEqual(['gone: alteration not observed']);
    expect(changes('ct')).toEqual(['new: contact']);
  });

  test('names levels by their scale, and a trace by its name', () => {
    expect(changes('we2')).toEqual(['up: weathering fresh→slight ▲']);
    expect(changes('p,=')).toEqual(['down: pyrite 2 %→trace ▼']);
    expect(changes('p.5', { above: rowOf('p,=', { above }).row })).toEqual(['up: pyrite trace→0.5 % ▲']);
  });

  test('notes the contact under a new rock', () => {
    expect(changes('dosh30')).toEqual([
      'new: basalt→dolerite',
      'new: shale 30 %',
      'note: contact below basalt',
    ]);
    expect(changes('sh30')).toEqual(['new: shale 30 %']);
  });

  test('gives the caution of a code first: in full where it is first seen, in short while it goes on', () => {
    const words = 'caution: CAUTION banded iron: may hold fibre: keep it wet, wear the mask';
    expect(changes("rock'bif")[0]).toBe(words);
    expect(changes('.', { above: rowOf("rock'bif", { above }).row })[0]).toBe(
      'caution: CAUTION as above: banded iron (fibre)',
    );
  });

  test('says that a point repeats, and across no return what it repeats', () => {
    expect(changes('.')).toEqual(['note: the same again']);
    expect(changes('.', { above, previous: rowOf('nr').row })).toEqual([
      'note: the last row with chips again',
    ]);
    expect(echo('nr/hose off')).toEqual([
      'caution: CAUTION no return: Broken ground or a void may be near. Tell the driller, and go by site procedures.',
      'note: no return: nothing observed',
      'note: remark: hose off',
    ]);
  });

  test('says what a field is no longer asked for', () => {
    const weathered = rowOf('we4=sp', { above }).row;
    expect(changes('we2=', { above: weathered })).toEqual([
      'down: weathering high→slight ▼',
      'gone: regolith unit not asked here',
    ]);
  });

  test('says of a first row everything that is in it, also what was left unsaid', () => {
    expect(echo('bswe1', {})).toEqual([
      'new: basalt',
      'new: weathering fresh',
      'new: no alteration',
      'new: no sulphides',
      'new: no veins',
    ]);
  });
});

/** Everything that a row says, each thing in words, and nothing else. */
function wordsOf(of: LoggingSchema, row: RowSaid | undefined): readonly string[] {
  return of.fields.flatMap((field) => {
    const cell = row?.cells[field.name];
    return cell === undefined ? [] : cellWords(of, field, cell);
  });
}

/** The schema with labels without spaces and digits, so that a piece can be taken apart. */
function worded(of: LoggingSchema): LoggingSchema {
  const json = JSON.stringify(of).replace(/"label":"[^"]*"/g, (label) =>
    label.replaceAll(' ', '-').replace(/\d/g, (digit) => 'abcdefghij'[Number(digit)] ?? ''),
  );
  return JSON.parse(json) as LoggingSchema;
}

/** What a piece says of its row, its movement and what is no longer so taken off: `pyrite 2→10 % ▲` says `pyrite 10 %`. */
function saidOf(piece: string): string {
  const text = piece.replace(/ [▲▼]$/, '').replaceAll(/ \(not [^)]*\)/g, '');
  const [head = '', to] = text.split('→');
  if (to === undefined) return head;
  const label = head.replace(/ (?:trace|[\d.]+(?: %)?|level-\w)$/, '');
  return label === head ? to : `${label} ${to}`;
}

describe('for every row that can be observed', () => {
  test('no piece says anything that its row does not', () => {
    fc.assert(
      fc.property(schemaWithRows(3), ({ schema: made, rows }) => {
        const generated = worded(made);
        rows.forEach((row, index) => {
          const context = {
            schema: generated,
            above: rows.slice(0, index).findLast((each) => !breaksCarry(generated, each)),
          };
          if (row.noReturn) return;
          const words = wordsOf(generated, row);
          for (const { kind, text: piece } of explain(row, context)) {
            if (kind === 'note' || kind === 'caution') continue;
            const text = piece.replace(/ \(not across [^)]*\)$/, '');
            if (/ (?:gone|not asked here)$/.test(text)) {
              const what = text.replace(/ (?:gone|not asked here)$/, '');
              expect(
                words.some((each) => each === what || each.startsWith(`${what} `)),
                text,
              ).toBe(false);
            } else expect(words).toContain(saidOf(text));
          }
        });
      }),
      { numRuns: runs(1_000) },
    );
  });

  test('every value of the row is said', () => {
    fc.assert(
      fc.property(schemaWithRows(3), ({ schema: made, rows }) => {
        const generated = worded(made);
        rows.forEach((row, index) => {
          if (row.noReturn) return;
          const context = {
            schema: generated,
            above: rows.slice(0, index).findLast((each) => !breaksCarry(generated, each)),
          };
          const said = explain(row, context).map(({ text }) => saidOf(text));
          for (const field of generated.fields) {
            const cell = row.cells[field.name];
            if (cell === undefined || 'absent' in cell) continue;
            expect(said).toEqual(expect.arrayContaining([...cellWords(generated, field, cell)]));
          }
        });
      }),
      { numRuns: runs(500) },
    );
  });
});
