import { asOf } from '../../record/chain.ts';
import type { Document, Entry } from '../../record/document.ts';
import type { LoggingSchema } from '../../schema/logging-schema.ts';
import { chainWords, entryWords, stateWords } from '../../standing/history-words.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import { rememberLast } from '../widgets/remember.ts';
import { type Listed, oneSection } from './listed.ts';

/**
 * What was done on a hole, latest first: number, when, who, what, and for everything changed or taken out what stood before. A key
 * that scrolls or searches changes none of it, and a long hole has thousands of entries.
 */
export const historyList = rememberLast((schema: LoggingSchema, hole: Document, width: number): Listed => {
  const items = hole.history
    .map((entry, index) => entryLines(schema, hole, entry, width, `${index + 1}  `))
    .reverse();
  const { length } = hole.history;
  return oneSection(`history, latest first · ${length} edits · ${chainWords(hole)}`, items, [
    line('← shows the hole one edit earlier; ;history 12 in the log shows it after edit 12', 'faint'),
  ]);
});

/** One edit: when, who, what, and what stood before and after. */
export function entryLines(
  schema: LoggingSchema,
  hole: Document,
  entry: Entry,
  width: number,
  number = '',
): readonly Line[] {
  const { when, by, what, outside, changes } = entryWords(schema, hole, entry);
  const head = spans([`${number}${when}  ${by}  `, 'faint'], what, [
    outside ? '  EDITED OUTSIDE' : '',
    'alert',
  ]);
  const below = changes
    .flatMap((words) => wrap(words, width - 4, 'faint'))
    .map((each): Line => [{ text: '    ' }, ...each]);
  return [head, ...below];
}

const stateAfter = rememberLast(asOf);

/** A hole as it stood after the first `count` edits: its rows and everything else in it. */
export function earlierList(schema: LoggingSchema, hole: Document, count: number, width: number): Listed {
  const then = stateAfter(hole, count);
  const entry = hole.history[count - 1];
  const after = entry === undefined ? [] : entryLines(schema, hole, entry, width);
  return {
    title: `after edit ${count} of ${hole.history.length} · ${chainWords(hole)}`,
    sections: [
      {
        head: [line('← an edit earlier, → an edit later, Esc back to the history', 'faint'), ...after],
        items: [],
      },
      ...stateWords(schema, then).map(({ head, lines }) => ({
        head: [line(`${head} · ${lines.length}`, 'strong')],
        items: lines.map((each) => wrap(`  ${each}`, width, 'plain')),
      })),
    ],
  };
}
