import {
  type Caution,
  type Field,
  type LoggingSchema,
  listOf,
  qualifiersOf,
  scaleOf,
} from '../../schema/logging-schema.ts';
import { typingIndex } from '../../shorthand/typing-index.ts';
import { writeNamedAmount, writeNamedCell, writeNamedEvent } from '../../shorthand/write-named.ts';
import type { Cell } from '../../value/cell.ts';

/** One thing that can be picked in a field: what it is in words, and the strokes that say it. */
export interface FieldOption {
  readonly label: string;
  /** What to look for in the chips. */
  readonly look: string;
  readonly strokes: string;
  /** What can hurt someone where it is seen. */
  readonly caution?: string;
  /** The strokes want an amount behind them. */
  readonly wantsAmount: boolean;
  /** It says more of what was picked before it in the field. */
  readonly qualifies?: true;
}

/** Everything that can be picked in a field, codes in the order of their list, then none and not observed. */
export function optionsOf(schema: LoggingSchema, field: Field): readonly FieldOption[] {
  const plain = (label: string, look: string, cell: Cell, caution?: Caution): FieldOption => ({
    ...(caution === undefined ? {} : { caution: caution.words }),
    label,
    look,
    strokes: sayCell(schema, field, cell),
    wantsAmount: false,
  });
  const codes = (listOf(schema, field)?.codes ?? [])
    .filter((code) => code.retiredSince === undefined)
    .map((code): FieldOption => {
      const wantsAmount = field.kind === 'levels' || field.kind === 'percents';
      const pair = typingIndex(schema).strokesOf(field, code.code).pair;
      const byName =
        field.kind === 'codes'
          ? writeNamedAmount(schema, field, code.code, 1)
          : field.kind === 'events'
            ? writeNamedEvent(schema, field, code.code, undefined)
            : wantsAmount
              ? writeNamedAmount(schema, field, code.code, 1).slice(0, -1)
              : writeNamedCell(schema, field, { code: code.code });
      const caution = code.caution === undefined ? {} : { caution: code.caution.words };
      return { label: code.label, look: code.look, strokes: pair ?? byName, wantsAmount, ...caution };
    });
  const qualities = qualifiersOf(field).flatMap(({ list }) => qualityOptions(schema, field, list));
  const levels =
    field.kind === 'level'
      ? (scaleOf(schema, field)?.levels ?? []).map((level) =>
          plain(`${level.level} ${level.label}`, level.look, { level: level.level }, level.caution),
        )
      : [];
  const yes = field.kind === 'flag' ? [plain('yes', '', { flag: true }, field.caution)] : [];
  const none = field.canBeNone ? [plain('none', 'looked, and saw none', { absent: 'none' })] : [];
  return [
    ...codes,
    ...qualities,
    ...levels,
    ...yes,
    ...none,
    plain('not observed', 'not looked at, or could not be seen', { absent: 'not observed' }),
  ];
}

/** What can be said more of a code picked in a field, from one list. A list that the field logs itself is there already. */
function qualityOptions(schema: LoggingSchema, field: Field, list: string): readonly FieldOption[] {
  const { qualityFields, strokesOf } = typingIndex(schema);
  const as = qualityFields.get(list.toLowerCase());
  if (as === undefined || ('list' in field && field.list === list)) return [];
  return (schema.lists[list]?.codes ?? [])
    .filter((code) => code.retiredSince === undefined)
    .map((code) => ({
      label: `… ${code.label}`,
      look: code.look,
      strokes: strokesOf(as, code.code).pair ?? writeNamedCell(schema, as, { code: code.code }),
      wantsAmount: false,
      qualifies: true,
      ...(code.caution === undefined ? {} : { caution: code.caution.words }),
    }));
}

/** The strokes that say a cell of a field: its pair where it has one, else by name. */
function sayCell(schema: LoggingSchema, field: Field, cell: Cell): string {
  const pair = typingIndex(schema).strokesOf(field).pair;
  if (pair !== undefined && 'level' in cell) return `${pair}${cell.level}`;
  if (pair !== undefined && 'flag' in cell) return pair;
  return writeNamedCell(schema, field, cell);
}

/** Options that what is typed could mean: by the start of a word of the label, or by the strokes. */
export function matchingOptions(options: readonly FieldOption[], typed: string): readonly FieldOption[] {
  const begun = typed.trim().toLowerCase();
  if (begun === '') return options;
  const words = (option: FieldOption): boolean =>
    option.label
      .toLowerCase()
      .split(/[^\p{L}\p{N}]+/u)
      .some((word) => word.startsWith(begun));
  const exact = options.filter((option) => option.strokes === begun);
  return [
    ...exact,
    ...options.filter(
      (option) => !exact.includes(option) && (words(option) || option.strokes.startsWith(begun)),
    ),
  ];
}

/** True of a pair of the field, its amount if it has one, and pairs that say more of it: `cl2pv`, `gypa`, `gygn`. */
function isQualified(schema: LoggingSchema, field: Field, text: string): boolean {
  const [, first = '', , rest = ''] = /^([a-z]{2})(,|;|[\d.]+)?((?:[a-z]{2})+)$/.exec(text) ?? [];
  const { pairs, qualities } = typingIndex(schema);
  if (pairs.get(first)?.field !== field) return false;
  return (rest.match(/../g) ?? []).every((pair) => {
    const list =
      qualities.get(pair)?.list ?? ('list' in field && pairs.get(pair)?.field === field ? field.list : '');
    return qualifiersOf(field).some((each) => each.list === list);
  });
}

/** What is typed, as strokes of the field, where it needs no picking: an amount alone, a number, a text, or strokes with their amount. */
export function typedStrokes(schema: LoggingSchema, field: Field, typed: string): string | undefined {
  const text = typed.trim();
  if (text === '') return undefined;
  const pair = typingIndex(schema).strokesOf(field).pair;
  if (/^(,|\d+(\.\d+)?|\.\d+)$/.test(text)) {
    if (pair !== undefined && field.kind !== 'flag') return `${pair}${text}`;
    if (field.kind === 'number' || field.kind === 'percent' || field.kind === 'level')
      return `${field.name}'${text}`;
  }
  if (field.kind === 'number' && /^-\d/.test(text)) return `${field.name}'${text}`;
  if (field.kind === 'code' && field.second && /^[a-z]{2}( ?[a-z]{2}[\d.]+){1,2}$/.test(text)) return text;
  if (qualifiersOf(field).length > 0 && isQualified(schema, field, text)) return text;
  if (field.kind === 'events' && /^[a-z]{2}[\d.;]*(@[\d.]+)?$/.test(text)) {
    if (typingIndex(schema).pairs.get(text.slice(0, 2))?.field === field) return text;
  }
  if (field.kind === 'text') return writeNamedCell(schema, field, { text });
  return /^[a-z]{2}(,|[\d.]+)$/.test(text) || text.includes("'") ? text : undefined;
}
