import { breaksCarry } from '../../../schema/cautions.ts';
import { explain, type Segment } from '../../../shorthand/explain.ts';
import { type EntryContext, type ParsedRow, parseLine } from '../../../shorthand/parse.ts';
import type { Refusal } from '../../../shorthand/said.ts';
import { cellWords, noteWords } from '../../../shorthand/words.ts';
import type { Theme, Tone } from '../../theme.ts';
import { type Line, line, spans, wrap } from '../../widgets/line.ts';

/** Cautions of the row that a line says, each in full: they stand above the echo, however many lines that takes. */
export function cautionLines(text: string, context: EntryContext, width: number): readonly Line[] {
  const parsed = parseLine(text, context);
  if (parsed.kind !== 'row') return [];
  return explain(parsed.row, context)
    .filter(({ kind }) => kind === 'caution')
    .flatMap((each) => wrap(each.text, width, 'alert'));
}

/** The lines above the entry line, at most `width` cells each: what the line changes, in words, and what it leaves as above; why it is refused, whole. */
export function echoLines(text: string, context: EntryContext, theme: Theme, width: number): readonly Line[] {
  const parsed = parseLine(text, context);
  switch (parsed.kind) {
    case 'row':
      return rowEcho(parsed, context, theme);
    case 'refused':
      return wrap(refusalWords(parsed), width, 'warn');
    case 'bag':
      return [line(`bag ${parsed.number}: Enter checks it`, 'accent'), []];
    case 'range':
      return [line('a range: Enter shows what it would change', 'accent'), []];
    case 'command':
      return [line(`;${parsed.word}`, 'accent'), []];
    default:
      return [[], []];
  }
}

/** Why a line is not taken and what it could be, each thing said once. */
export function refusalWords({ problem, remedy, suggestions }: Refusal): string {
  const could = suggestions
    .filter(({ text }) => !says(`${problem} ${remedy}`, text))
    .map(({ text, label }) => `${text} ${label}`)
    .join(', ');
  return `${problem}${/[.?!]$/.test(problem) ? '' : '.'} ${remedy}${could === '' ? '' : `: ${could}`}`;
}

/** True where a text holds strokes or a word as such, not as a part of another. */
function says(text: string, strokes: string): boolean {
  return text.split(/[\s:,?]+/).includes(strokes);
}

const TONES: { readonly [kind in Segment['kind']]: Tone } = {
  caution: 'alert',
  up: 'strong',
  down: 'strong',
  new: 'strong',
  gone: 'strong',
  note: 'accent',
  same: 'faint',
};

/** What a row changes; under it what carries, or, where nothing is above, what the row leaves unsaid. */
function rowEcho(parsed: ParsedRow, context: EntryContext, theme: Theme): readonly [Line, Line] {
  const segments = [...explain(parsed.row, context), ...noted(parsed)].filter(
    ({ kind }) => kind !== 'caution',
  );
  const unsaid =
    context.above === undefined && !breaksCarry(context.schema, parsed.row)
      ? unsaidFields(parsed, context)
      : [];
  const unsaidWords = new Set(unsaid.flatMap((each) => each.words));
  const said = segments.filter((segment) => !unsaidWords.has(segment.text));
  return [changes(said, theme), unsaid.length === 0 ? carried(said) : line(absences(unsaid), 'faint')];
}

/** What a line restates, as the echo says it. */
function noted({ notes }: ParsedRow): readonly Segment[] {
  return notes.length === 0 ? [] : [{ text: noteWords(notes), kind: 'note' }];
}

/** Fields of a first row that the line does not name: what leaving them unsaid says of each. */
function unsaidFields({ row, said }: ParsedRow, { schema }: EntryContext) {
  return schema.fields.flatMap((field) => {
    const cell = row.cells[field.name];
    if (cell === undefined || !('absent' in cell) || said.some((item) => item.field.name === field.name))
      return [];
    return [{ label: field.label, absent: cell.absent, words: cellWords(schema, field, cell) }];
  });
}

/** `unsaid: no sulphides, veins; not observed: colour, grain size`: what counts as barren comes first. */
function absences(unsaid: ReturnType<typeof unsaidFields>): string {
  const labels = (absent: 'none' | 'not observed') =>
    unsaid.filter((each) => each.absent === absent).map((each) => each.label);
  const parts = [
    ['no', labels('none')],
    ['not observed:', labels('not observed')],
  ] as const;
  return `unsaid: ${parts
    .filter(([, names]) => names.length > 0)
    .map(([word, names]) => `${word} ${names.join(', ')}`)
    .join('; ')}`;
}

function changes(segments: readonly Segment[], theme: Theme): Line {
  const changed = segments.filter((segment) => segment.kind !== 'same');
  if (changed.length === 0) return line('no change', 'faint');
  const between = theme.ascii ? ' - ' : ' · ';
  return spans(
    ...changed.flatMap((segment, index): readonly (readonly [string, Tone])[] => [
      ...(index === 0 ? [] : [[between, 'faint'] as const]),
      [segment.text, TONES[segment.kind]] as const,
    ]),
  );
}

function carried(segments: readonly Segment[]): Line {
  const same = segments.filter((segment) => segment.kind === 'same');
  return same.length === 0
    ? []
    : line(`as above: ${same.map((segment) => segment.text).join(', ')}`, 'faint');
}
