import type { Finding } from '../../finding/finding.ts';
import { formatPlace } from '../../finding/place.ts';
import { findingsOf } from '../../schema/change/preview-change.ts';
import {
  type Caution,
  type Code,
  type Field,
  type LoggingSchema,
  listOf,
  scaleOf,
} from '../../schema/logging-schema.ts';
import { found, type Listed, type ListSection } from '../lists/listed.ts';
import type { State } from '../state.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';

/** Cells before the label of a code: what types it, and the code. */
const BEFORE_LABEL = 13;

/** Codes and levels by field, each with what types it and what to look for in the chips; what the check finds comes first. */
export function codesList(state: State, width: number): Listed {
  const { schema } = state.project;
  const checked = findingsOf(schema);
  const sections = schema.fields.map((field): ListSection => {
    const codes = listOf(schema, field)?.codes ?? [];
    const levels = levelsOf(schema, field);
    return {
      head: [fieldHead(field), ...fieldCaution(field, width)],
      items: [
        ...codes.map((code) => codeLines(code, width)),
        ...levels.map((level) =>
          behind(
            spans(`  ${level.level} `),
            `${cautionFirst(level.caution)}${level.label}${looks(level.look)}`,
            4,
            width,
          ),
        ),
      ],
      about: [
        ...codes.map((code) => ('list' in field ? `${field.list} ${code.code}` : undefined)),
        ...levels.map(() => undefined),
      ],
    };
  });
  const title = `pair, key, code · check: ${countWords(checked)}`;
  return { title, sections: [...checkSections(checked, width), ...sections, sheetSection(schema)] };
}

/** The fields of the log sheet, each to be changed, moved or retired. */
function sheetSection({ fields }: LoggingSchema): ListSection {
  return {
    head: [line('fields of the log sheet, in their order', 'strong')],
    items: fields.map(({ name, label, kind, required }) => [
      spans(`  ${label}`, [`  ${name}, ${kind}${required ? ', required' : ''}`, 'faint']),
    ]),
    about: fields.map(({ name }) => `${FIELD_MARK} ${name}`),
  };
}

/** In place of a list's name, where what is in hand is a field. */
const FIELD_MARK = ':';

/** The field in hand, on the list of fields below the codes. */
export function fieldInHand(state: State): Field | undefined {
  const [mark, name] = aboutInHand(state)?.split(' ') ?? [];
  return mark === FIELD_MARK ? state.project.schema.fields.find((field) => field.name === name) : undefined;
}

/** The code in hand: the one that the cursor is on, among those that hold what is searched for. */
export function codeInHand(state: State): { readonly list: string; readonly code: Code } | undefined {
  const { project } = state;
  const [list = '', ...code] = aboutInHand(state)?.split(' ') ?? [];
  const there = project.schema.lists[list]?.codes.find((each) => each.code === code.join(' '));
  return there === undefined ? undefined : { list, code: there };
}

/** What the cursor is on, among what holds what is searched for. */
function aboutInHand(state: State): string | undefined {
  const { screen } = state;
  if (screen.name !== 'codes') return undefined;
  // Which of them are found does not hang on where their lines break.
  const { sections } = found(codesList(state, 200), screen.find);
  const about = sections.flatMap(({ items, about: of }) => items.map((_, index) => of?.[index]));
  return about[screen.cursor];
}

function countWords(findings: readonly Finding[]): string {
  const counts = (['fault', 'warning', 'note'] as const).flatMap((severity) => {
    const count = findings.filter((each) => each.severity === severity).length;
    return count === 0 ? [] : [`${count} ${severity}${count === 1 ? '' : 's'}`];
  });
  return counts.length === 0 ? 'nothing found' : counts.join(', ');
}

function checkSections(findings: readonly Finding[], width: number): readonly ListSection[] {
  if (findings.length === 0) return [];
  const items = findings.map(({ severity, place, problem, remedy }) =>
    behind(spans(`  ${severity.toUpperCase()} `), `${formatPlace(place)}: ${problem}. ${remedy}`, 4, width),
  );
  const about = findings.map(({ place }) =>
    /^list (\S+), code (.+)$/
      .exec(place.thing ?? '')
      ?.slice(1)
      .join(' '),
  );
  return [{ head: [line('what the check finds', 'strong')], items, about }];
}

function fieldHead(field: Field): Line {
  const strokes =
    'pair' in field && field.pair !== undefined
      ? `  ${field.pair}${field.key === undefined ? '' : ` or ${field.key}`}`
      : '';
  return spans([field.label, 'strong'], [`  ${field.name}'${strokes}`, 'accent']);
}

function codeLines(code: Code, width: number): readonly Line[] {
  const typed = `  ${(code.pair ?? '').padEnd(3)}${(code.key ?? '').padEnd(2)}`;
  const marks = [
    ...(code.provisional === true ? ['(provisional)'] : []),
    ...(code.retiredSince === undefined ? [] : [`(retired ${code.retiredSince})`]),
  ];
  const words = [`${cautionFirst(code.caution)}${code.label}${looks(code.look)}`, ...marks].join('  ');
  return behind(spans([typed, 'accent'], `${code.code.padEnd(5)} `), words, BEFORE_LABEL, width);
}

function fieldCaution(field: Field, width: number): readonly Line[] {
  return field.caution === undefined ? [] : wrap(`CAUTION ${field.caution.words}`, width, 'alert');
}

/** A caution comes before what it is about: it is what has to be read. */
function cautionFirst(caution: Caution | undefined): string {
  return caution === undefined ? '' : `CAUTION ${caution.words} `;
}

function levelsOf(schema: LoggingSchema, field: Field) {
  return scaleOf(schema, field)?.levels ?? [];
}

function looks(look: string): string {
  return look === '' ? '' : `: ${look}`;
}

/** Words behind a start, going on under themselves. */
function behind(start: Line, words: string, indent: number, width: number): readonly Line[] {
  return wrap(words, width - indent).map(
    (each, index): Line => (index === 0 ? [...start, ...each] : [{ text: ' '.repeat(indent) }, ...each]),
  );
}
