import { type LineUpContext, type LineUpStep, stepsOf } from '../../acts/line-up-order.ts';
import type { Document } from '../../record/document.ts';
import { hintLine, messageFoot } from '../screens/bottom.ts';
import { headerLine } from '../screens/header.ts';
import { draftSpans } from '../screens/shown.ts';
import type { State } from '../state.ts';
import { fit } from '../terminal/paint/cells.ts';
import type { Size } from '../terminal/paint/painter.ts';
import type { Theme } from '../theme.ts';
import { beside, box } from '../widgets/box.ts';
import { fitHeight, type Line, line, spans } from '../widgets/line.ts';
import { type LineUpForm, readAt } from './line-up-form.ts';
import { formOf, lineUpContext } from './line-up-state.ts';
import { stepWords } from './line-up-words.ts';

/** What each step is called in the order of work. */
const LABELS: Readonly<Record<LineUpStep, string>> = {
  cautions: 'cautions read',
  permission: 'permission',
  way: 'set by',
  azimuth: 'azimuth',
  distance: 'compass from',
  compass: 'compass',
  'crew dip': "crew's dip",
  clinometer: 'clinometer',
  collar: 'collar',
  result: 'decide',
};

/** The line-up: the order of work with what was read on the left, the step in hand on the right, what is typed below. */
export function lineUpScreen(state: State, hole: Document, size: Size, theme: Theme): readonly Line[] {
  const height = size.rows - 5;
  const context = lineUpContext(state, hole);
  const form = formOf(state, hole);
  const body = bodyLines(state, form, context, { columns: size.columns, rows: height }, theme);
  return [
    headerLine(state, hole, size.columns),
    ...fitHeight(body, height),
    ...messageFoot(state, size.columns),
    [
      ...spans([` ${LABELS[form.step]} `, 'strong'], [`${theme.signs.cursor} `, 'accent']),
      ...draftSpans(form.typed),
    ],
    hintLine('line-up', size.columns, theme),
  ];
}

/**
 * The state with the words of the step scrolled no further than they go, and with how much of the cautions has been on the screen: what was
 * never shown can't be said to be read.
 */
export function settledLineUp(state: State, hole: Document, size: Size): State {
  const context = lineUpContext(state, hole);
  if (context === undefined) return state;
  const form = formOf(state, hole);
  const { page, lines } = wordsInBox(state, form, context, size);
  const scroll = Math.max(0, Math.min(form.scroll, lines - page));
  const shownTo = scroll + (lines - scroll > page ? page - 1 : page);
  const readTo = form.step === 'cautions' ? Math.max(form.readTo, shownTo) : form.readTo;
  const unread = form.step === 'cautions' && readTo < lines;
  if (scroll === form.scroll && readTo === form.readTo && page === form.page && unread === form.unread)
    return state;
  return {
    ...state,
    lineUps: new Map([...state.lineUps, [hole.id, { ...form, scroll, readTo, page, unread }]]),
  };
}

/** How many lines of the step in hand the screen shows at once, and how many there are. */
function wordsInBox(state: State, form: LineUpForm, context: LineUpContext, size: Size) {
  const width = size.columns - (form.step === 'cautions' ? 0 : orderWidth(size.columns));
  return { page: size.rows - 7, lines: stepWords(state, form, context, width - 4).lines.length };
}

const orderWidth = (columns: number) => (columns >= 100 ? 40 : 32);

/** The cautions have the whole width: none of them is to be cut or scrolled past where that can be helped. */
function bodyLines(
  state: State,
  form: LineUpForm,
  context: LineUpContext | undefined,
  size: Size,
  theme: Theme,
): readonly Line[] {
  const { columns, rows } = size;
  if (context === undefined) {
    const lines = [line(' No planned direction to compare with.', 'warn')];
    return box([{ title: 'line-up', lines, height: rows - 2 }], columns, theme.signs);
  }
  if (form.step === 'cautions') return stepInHand(state, form, context, columns, rows, theme);
  const left = orderWidth(columns);
  return beside([
    { lines: orderOfWork(form, context, left, rows, theme), width: left },
    { lines: stepInHand(state, form, context, columns - left, rows, theme), width: columns - left },
  ]);
}

function orderOfWork(
  form: LineUpForm,
  context: LineUpContext,
  width: number,
  height: number,
  theme: Theme,
): readonly Line[] {
  const lines = stepsOf(form, context).map((step): Line => {
    const value = readAt(form, step);
    const here = step === form.step;
    const mark = here ? theme.signs.cursor : value === undefined ? ' ' : theme.signs.tick;
    const words = fit(`${mark} ${LABELS[step].padEnd(14)}${value ?? ''}`, width - 3, theme.signs.ellipsis);
    return spans([words, here ? 'picked' : value === undefined ? 'faint' : 'plain']);
  });
  return box([{ title: 'line-up, in order', lines, height: height - 2 }], width, theme.signs);
}

function stepInHand(
  state: State,
  form: LineUpForm,
  context: LineUpContext,
  width: number,
  height: number,
  theme: Theme,
): readonly Line[] {
  const room = height - 2;
  const { title, lines } = stepWords(state, form, context, width - 4);
  const start = Math.max(0, Math.min(form.scroll, lines.length - room));
  const shown =
    lines.length - start > room
      ? [...lines.slice(start, start + room - 1), line('more below: PgDn', 'accent')]
      : lines.slice(start);
  const padded = shown.map((each): Line => [{ text: ' ' }, ...each]);
  return box([{ title, lines: padded, height: room }], width, theme.signs);
}
