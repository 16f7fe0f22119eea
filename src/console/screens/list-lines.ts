import { headerOf, holeNouns, rowsDown } from '../../hole/hole.ts';
import { formatInterval } from '../../quantity/interval.ts';
import { formatMinutes, localDate, localTime, parseStamp } from '../../quantity/stamp.ts';
import type { Document, DoneChange, Entry, Thing } from '../../record/document.ts';
import { canonicalJson } from '../../record/json.ts';
import { streamAhead } from '../../sampling/stream.ts';
import { compartmentAt } from '../../sampling/trays.ts';
import { spansOf } from '../../shift/current.ts';
import { activityNamed } from '../../shift/shift-rules.ts';
import { COMMANDS, RANGE_FORM } from '../../shorthand/commands.ts';
import { cellWords } from '../../shorthand/words.ts';
import { openShift } from '../../standing/activity.ts';
import { streamStateOf } from '../../standing/stream.ts';
import { KEYS } from '../keys.ts';
import { upcomingLine } from '../panels/bags-panel.ts';
import type { RowCursor } from '../panels/rows-panel.ts';
import type { ListScreen, State } from '../state.ts';
import type { Theme } from '../theme.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import { adviceList } from './advice-list.ts';
import { keyName } from './bottom.ts';
import type { Listed } from './listed.ts';

/** What a list screen of a hole shows, all of it; the screen cuts it to its window. */
export function listOf(
  state: State,
  hole: Document,
  screen: { readonly name: ListScreen; readonly from: RowCursor },
  width: number,
  theme: Theme,
): Listed {
  switch (screen.name) {
    case 'bags':
      return bagsList(state, hole);
    case 'advice':
      return adviceList(state, hole, width, theme);
    case 'history':
      return historyList(hole, width);
    case 'codes':
      return codesList(state);
    case 'shift':
      return shiftList(state);
    case 'row':
      return rowList(state, hole, screen.from);
  }
}

function bagsList(state: State, hole: Document): Listed {
  const { sampling } = state.project;
  const ahead = streamAhead(sampling, streamStateOf(hole), { count: 400, rodMm: headerOf(hole).rodMm });
  const issued = holeNouns(hole, 'bags');
  const lines = ahead.upcoming.map((bag): Line => {
    const tray =
      bag.fromMm === undefined ? undefined : compartmentAt(sampling, headerOf(hole).logFromMm, bag.fromMm);
    const place = tray === undefined ? '' : `   tray ${tray.tray}, ${tray.compartment}`;
    return [...spans('[ ] '), ...upcomingLine(bag), ...spans([place, 'faint'])];
  });
  const last = issued.at(-1)?.number;
  return {
    title: `bags · ${issued.length} issued${last === undefined ? '' : `, last ${last}`} · ${ahead.numberedLeft} numbered left`,
    lines: [
      ...ahead.putOff.map((put) =>
        line(`put off: ${put.kind} ${put.number} (${put.reason}); ;place puts it in`, 'warn'),
      ),
      ...(lines.length === 0
        ? [line('No numbered bags: ;numbered and the first and last number.', 'warn')]
        : lines),
    ],
  };
}

function historyList(hole: Document, width: number): Listed {
  const lines = [...hole.history]
    .reverse()
    .flatMap((entry): readonly Line[] => [
      spans(
        [`${when(entry)}  ${entry.by}  `, 'faint'],
        entry.what,
        [entry.undoes === undefined ? '' : '  (undo)', 'accent'],
        [entry.outside ? '  EDITED OUTSIDE' : '', 'alert'],
      ),
      ...entry.changes
        .filter((change) => 'patch' in change)
        .flatMap((change) =>
          wrap(changeWords(change), width - 6, 'faint').map((each): Line => [{ text: '      ' }, ...each]),
        ),
    ]);
  return { title: `history, latest first · ${hole.history.length} edits`, lines };
}

function when(entry: Entry): string {
  const at = parseStamp(entry.at);
  return at === undefined ? entry.at : `${localDate(at)} ${localTime(at, true)}`;
}

/** What a patch changed: each field, before and after. */
function changeWords(change: DoneChange): string {
  if (!('patch' in change)) return '';
  const after: Thing = change.set ?? {};
  const fields = [...new Set([...Object.keys(after), ...(change.unset ?? [])])];
  return fields.map((field) => differences(field, change.before[field], after[field])).join('; ');
}

function differences(field: string, before: unknown, after: unknown): string {
  if (field !== 'cells') return `${field}: ${text(before)} → ${text(after)}`;
  const was = (before ?? {}) as Readonly<Record<string, unknown>>;
  const is = (after ?? {}) as Readonly<Record<string, unknown>>;
  const changed = [...new Set([...Object.keys(was), ...Object.keys(is)])].filter(
    (name) => canonicalJson(was[name]) !== canonicalJson(is[name]),
  );
  return changed.map((name) => `${name}: ${text(was[name])} → ${text(is[name])}`).join('; ');
}

function text(value: unknown): string {
  if (value === undefined) return 'nothing';
  return typeof value === 'string' ? value : JSON.stringify(value).replaceAll('"', '');
}

function codesList(state: State): Listed {
  const { schema } = state.project;
  const lines = schema.fields.flatMap((field): readonly Line[] => {
    const codes = 'list' in field ? (schema.lists[field.list]?.codes ?? []) : [];
    const levels = 'scale' in field ? (schema.scales[field.scale]?.levels ?? []) : [];
    const strokes =
      'pair' in field && field.pair !== undefined
        ? `  ${field.pair}${field.key === undefined ? '' : ` or ${field.key}`}`
        : '';
    return [
      spans([`${field.label}`, 'strong'], [`  ${field.name}'${strokes}`, 'accent']),
      ...codes.map((code) =>
        spans(
          [`  ${(code.pair ?? '').padEnd(3)}${(code.key ?? '').padEnd(2)}`, 'accent'],
          `${code.code.padEnd(5)} ${code.label}`,
          [code.retiredSince === undefined ? '' : ` (retired ${code.retiredSince})`, 'warn'],
          [code.look === '' ? '' : `: ${code.look}`, 'faint'],
          [code.caution === undefined ? '' : '  CAUTION', 'alert'],
        ),
      ),
      ...levels.map((level) => spans(`  ${level.level} ${level.label}`, [`: ${level.look}`, 'faint'])),
    ];
  });
  return { title: `codes of ${schema.name}: pair, key where it stands above, code`, lines };
}

function shiftList(state: State): Listed {
  const shift = openShift(state.documents.values(), state.rig);
  const hint = line(';activity starts what the rig does now.', 'faint');
  if (shift === undefined)
    return { title: `shift record of ${state.rig}`, lines: [line('No shift goes on.', 'warn'), hint] };
  const lines = spansOf(shift, state.now).map((span) => {
    const label = activityNamed(state.project.shift, span.activity)?.label ?? span.activity;
    return spans(
      `${localTime(span.startedAt)}  ${formatMinutes(span.minutes).padStart(6)}  ${label}`,
      [`  ${span.charge}${span.hole === undefined ? '' : `  ${span.hole}`}`, 'faint'],
      [span.current ? '  now' : '', 'good'],
    );
  });
  return { title: `shift record ${shift.id}`, lines: [...lines, line(''), hint] };
}

function rowList(state: State, hole: Document, from: RowCursor): Listed {
  const rows = rowsDown(hole);
  const found = from === 'head' ? rows.at(-1) : rows.find(([id]) => id === from);
  if (found === undefined) return { title: 'the whole row', lines: [line('No row is logged yet.', 'warn')] };
  const [, row] = found;
  const lines = state.project.schema.fields.flatMap((field): readonly Line[] => {
    const cell = row.cells[field.name];
    if (cell === undefined) return [];
    return [
      spans(`${field.label.padEnd(24)} `, cellWords(state.project.schema, field, cell).join(', '), [
        row.carried?.includes(field.name) ? '  (as above)' : '',
        'faint',
      ]),
    ];
  });
  return {
    title: `the whole row ${formatInterval(row)}`,
    lines: [...lines, ...(row.remark === undefined ? [] : [line(`remark: ${row.remark}`)])],
  };
}

/** Every key and every command: read off the two tables, so that it can't be behind them. */
export function helpList(state: State): Listed {
  const screens = [
    ['on the log', 'log'],
    ['on the list of holes', 'holes'],
    ['on the survey', 'survey'],
    ['on the line-up', 'line-up'],
    ['on the other screens', 'bags'],
  ] as const;
  const keys = screens.flatMap(([title, screen]): readonly Line[] => [
    line(title, 'strong'),
    ...KEYS.filter((binding) => binding.on === 'any' || binding.on.includes(screen)).map((binding) => {
      const hindrance = state.screen.name === screen ? binding.hindered?.(state) : undefined;
      return spans(
        [
          `  ${binding.keys.map(keyName).join(' ').padEnd(8)} ${(binding.word === undefined ? '' : `;${binding.word}`).padEnd(14)}`,
          'accent',
        ],
        binding.help,
        [hindrance === undefined ? '' : ` (not now: ${hindrance})`, 'warn'],
      );
    }),
  ]);
  const commands = COMMANDS.map((command) => spans([`  ${command.form}  `, 'accent'], command.does));
  return {
    title: 'keys and commands',
    lines: [
      line('the entry line', 'strong'),
      line(
        '  ba py2      a rock by its pair, a mineral by its pair with its amount; what is not said stays as above',
      ),
      line('  p3          a mineral of the row above by its one key; 0 takes it out; , is a trace'),
      line('  .           the same as above     nr   no return     /words   a remark     =   insists'),
      spans([`  ${RANGE_FORM.form}  `, 'accent'], RANGE_FORM.does),
      ...commands,
      ...keys,
    ],
  };
}
