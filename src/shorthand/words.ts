import { type Field, type LoggingSchema, scaleOf } from '../schema/logging-schema.ts';
import { type Amount, amountsIn, type Cell, sharesIn } from '../value/cell.ts';
import { eventWords } from './point-events.ts';
import { firstWords, qualityWords } from './qualities.ts';
import type { Note } from './said.ts';
import { labelOf } from './typing-index.ts';

/** An amount of a field in words: `10 %`, `trace`; a level as its number. */
export function amountWords(field: Field, amount: Amount): string {
  if (amount === 'trace') return 'trace';
  return field.kind === 'percents' || field.kind === 'percent' || field.kind === 'code'
    ? `${amount} %`
    : `${amount}`;
}

/** What an absent cell says: `no veins`, `veins not observed`. */
export function absenceWords(field: Field, cell: Extract<Cell, { absent: unknown }>): string {
  return cell.absent === 'none' ? `no ${field.label}` : `${field.label} not observed`;
}

/** What a level is called on its scale, or its number where the scale doesn't hold it. */
export function levelWords(schema: LoggingSchema, field: Field, level: number): string {
  return scaleOf(schema, field)?.levels.find((each) => each.level === level)?.label ?? `${level}`;
}

/** A cell in words, one piece a thing: `basalt`, `shale 30 %`, `chlorite 2`, `no sulphides`. */
export function cellWords(schema: LoggingSchema, field: Field, cell: Cell): readonly string[] {
  if ('absent' in cell) return [absenceWords(field, cell)];
  if ('code' in cell) {
    const beside = sharesIn(cell).map(({ code, percent }) => `${labelOf(schema, field, code)} ${percent} %`);
    return [firstWords(schema, field, cell), ...beside];
  }
  if ('level' in cell) return [`${field.label} ${levelWords(schema, field, cell.level)}`];
  if ('events' in cell)
    return Object.entries(cell.events).map(([code, event]) => eventWords(schema, field, code, event));
  if ('levels' in cell || 'percents' in cell || 'codes' in cell)
    return Object.entries(amountsIn(cell)).map(([code, amount]) =>
      [
        withAmount(field, labelOf(schema, field, code), amount),
        ...qualityWords(schema, field, cell, code),
      ].join(' '),
    );
  if ('percent' in cell) return [`${field.label} ${amountWords(field, cell.percent)}`];
  if ('number' in cell && field.kind === 'number') return [`${field.label} ${cell.number} ${field.unit}`];
  if ('number' in cell) return [`${field.label} ${cell.number}`];
  return 'flag' in cell ? [field.label] : [`${field.label}: ${cell.text}`];
}

/** What a code is called with its amount, where its field takes one: `chlorite 2`, `pyrite 10 %`, `vuggy`. */
export function withAmount(field: Field, label: string, amount: Amount): string {
  return field.kind === 'codes' ? label : `${label} ${amountWords(field, amount)}`;
}

/** `same as the row above: pyrite, acid fizz; no sericite there`. */
export function noteWords(notes: readonly Note[]): string {
  const of = (gone: boolean) => notes.filter((each) => each.gone === gone).map(({ label }) => label);
  const parts = [
    ['same as the row above:', of(false)],
    ['not in the row above either:', of(true)],
  ] as const;
  return parts
    .filter(([, labels]) => labels.length > 0)
    .map(([words, labels]) => `${words} ${labels.join(', ')}`)
    .join('; ');
}
