import { formatInterval } from '../../quantity/interval.ts';
import type { Document } from '../../record/document.ts';
import type { Field } from '../../schema/logging-schema.ts';
import { type EntryContext, parseLine } from '../../shorthand/parse.ts';
import { cellWords } from '../../shorthand/words.ts';
import { hintLine, messageFoot, messageLines } from '../screens/bottom.ts';
import { headerLine } from '../screens/header.ts';
import { draftSpans } from '../screens/shown.ts';
import { type Screen, type State, schemaInHand } from '../state.ts';
import { fit } from '../terminal/paint/cells.ts';
import type { Size } from '../terminal/paint/painter.ts';
import type { Theme } from '../theme.ts';
import { beside, box } from '../widgets/box.ts';
import { fitHeight, type Line, line, spans, wrap } from '../widgets/line.ts';
import { entryContext, intervalInHand } from './entry.ts';
import { matchingOptions, optionsOf } from './field-options.ts';
import { formFields, formLine } from './fields.ts';
import { cautionLines, echoLines } from './panels/echo.ts';

type FieldsScreen = Extract<Screen, { readonly name: 'fields' }>;

/** Logging by fields: the fields of the row on the left, what can be picked in the one in hand on the right, the line they make below. */
export function fieldsScreen(
  state: State,
  hole: Document,
  screen: FieldsScreen,
  size: Size,
  theme: Theme,
): readonly Line[] {
  const context = entryContext(state, hole, screen.cursor);
  const text = formLine(screen.form);
  const cautions = cautionLines(text, context, size.columns - 4).map(
    (each): Line => [{ text: '  ' }, ...each],
  );
  const room = size.rows - 8 - cautions.length;
  const left = Math.floor(size.columns * 0.45);
  const right = size.columns - left;
  const fields = formFields(state, hole);
  const at = Math.min(screen.form.field, fields.length - 1);
  const title = `by fields ${formatInterval(intervalInHand(hole, screen.cursor))}`;
  const lines = fieldLines(state, screen, fields, context, { room, width: left - 2 }, theme);
  const body = beside([
    { lines: box([{ title, lines, height: room }], left, theme.signs), width: left },
    { lines: pickList(state, screen, fields[at], right, room, theme), width: right },
  ]);
  const [changes = []] = echoLines(text, context, theme, size.columns - 4);
  const isSaid = messageLines(state, size.columns).length > 0;
  return [
    headerLine(state, hole, size.columns),
    ...body,
    ...cautions,
    ...(isSaid ? messageFoot(state, size.columns) : fitHeight([[{ text: '  ' }, ...changes]], 2)),
    spans(['  line: ', 'faint'], [text, 'accent']),
    line(
      ' Type or ↑↓ to pick, Enter takes it, Tab next field, F4 logs the row, Esc back to the line',
      'faint',
    ),
    hintLine('fields', size.columns, theme),
  ];
}

/** The fields with what the row holds in each as far as it is said; a window on them round the one in hand. */
function fieldLines(
  state: State,
  { form }: FieldsScreen,
  fields: readonly Field[],
  context: EntryContext,
  { room, width }: { readonly room: number; readonly width: number },
  theme: Theme,
): readonly Line[] {
  const parsed = parseLine(formLine(form), context);
  const cells = parsed.kind === 'row' ? parsed.row.cells : (context.above?.cells ?? {});
  const at = Math.min(form.field, fields.length - 1);
  const start = Math.max(0, Math.min(at - Math.floor(room / 2), fields.length - room));
  return fields.slice(start, start + room).map((field, index): Line => {
    const cell = cells[field.name];
    const value = cell === undefined ? '' : cellWords(state.project.schema, field, cell).join(', ');
    const here = start + index === at;
    const mark = here ? theme.signs.cursor : ' ';
    const words = fit(`${mark}${fit(field.label, 20)} ${value}`, width, theme.signs.ellipsis);
    return spans([words, here ? 'picked' : form.said[field.name] === undefined ? 'faint' : 'strong']);
  });
}

function pickList(
  state: State,
  screen: FieldsScreen,
  field: ReturnType<typeof formFields>[number] | undefined,
  width: number,
  room: number,
  theme: Theme,
): readonly Line[] {
  if (field === undefined) return [];
  const { typed, pick } = screen.form;
  const options = matchingOptions(optionsOf(schemaInHand(state), field), typed.text);
  const at = typed.text.trim() === '' ? pick - 1 : Math.min(pick, options.length - 1);
  // What is picked shows its caution whole, above the list; the others are marked.
  const picked = options[at]?.caution ?? field.caution?.words;
  const caution = picked === undefined ? [] : wrap(`CAUTION ${picked}`, width - 2, 'alert');
  const listRoom = room - 1 - caution.length;
  const start = Math.max(0, Math.min(at - Math.floor(listRoom / 2), options.length - listRoom));
  const lines = options.slice(start, start + listRoom).map((option, index): Line => {
    const here = start + index === at;
    const words = `${here ? theme.signs.cursor : ' '}${fit(option.strokes, 8)} ${option.caution === undefined ? '' : '! '}${option.label}${option.look === '' ? '' : `: ${option.look}`}`;
    return spans([fit(words, width - 2, theme.signs.ellipsis), here ? 'picked' : 'plain']);
  });
  const input: Line = [...spans([` ${field.label} ${theme.signs.cursor} `, 'accent']), ...draftSpans(typed)];
  const second =
    field.kind === 'code' && field.second
      ? ` · a second${field.third === true ? ' and a third' : ''} with its share: ba30`
      : '';
  return box(
    [{ title: `${field.label}${second}`, lines: [input, ...caution, ...lines], height: room }],
    width,
    theme.signs,
  );
}
