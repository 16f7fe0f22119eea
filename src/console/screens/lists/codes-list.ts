import {
  type Code,
  type Field,
  type LoggingSchema,
  listOf,
  scaleOf,
} from '../../../schema/logging-schema.ts';
import type { State } from '../../state.ts';
import { type Line, spans, wrap } from '../../widgets/line.ts';
import type { Listed } from './listed.ts';

/** Cells before the label of a code: what types it, and the code. */
const BEFORE_LABEL = 13;

/** Codes and levels by field, each with what types it and what to look for in the chips. */
export function codesList(state: State, width: number): Listed {
  const { schema } = state.project;
  const sections = schema.fields.map((field) => ({
    head: [fieldHead(field)],
    items: [
      ...(listOf(schema, field)?.codes ?? []).map((code) => codeLines(code, width)),
      ...levelsOf(schema, field).map((level) =>
        behind(spans(`  ${level.level} `), `${level.label}${looks(level.look)}`, 4, width),
      ),
    ],
  }));
  return { title: `codes of ${schema.name} · pair, key where it stands above, code`, sections };
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
    ...(code.caution === undefined ? [] : [`CAUTION ${code.caution.words}`]),
  ];
  const words = [`${code.label}${looks(code.look)}`, ...marks].join('  ');
  return behind(spans([typed, 'accent'], `${code.code.padEnd(5)} `), words, BEFORE_LABEL, width);
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
