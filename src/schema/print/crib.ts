import stringWidth from 'string-width';
import { cautionsOfSchema, cautionTexts } from '../cautions.ts';
import {
  CAUTION_KINDS,
  type Caution,
  type Code,
  type Field,
  type FieldOf,
  type LoggingSchema,
  listOf,
  qualifiersOf,
  scaleOf,
} from '../logging-schema.ts';

/** One thing that can be typed: its strokes, what they say, and the kind of its caution. */
export type CribItem = { readonly strokes: string; readonly says: string; readonly caution?: string };

/** What one field is typed with. */
export type CribSection = {
  readonly title: string;
  /** How its amounts are typed; empty where it takes none. */
  readonly hint: string;
  readonly items: readonly CribItem[];
};

/** What is typed the same with every schema. */
export const LINE_WORDS: readonly CribItem[] = [
  { strokes: '.', says: 'same again' },
  { strokes: 'nr', says: 'no return' },
  { strokes: '0', says: 'after a pair: take it out' },
  { strokes: ',', says: 'after a pair: trace' },
  { strokes: ';', says: 'after a pair: a half percent' },
  { strokes: "field'code", says: 'say it by its field' },
  { strokes: "field'0", says: 'none of it' },
  { strokes: "field'nr", says: 'not observed' },
  { strokes: '=', says: 'yes, unchanged' },
  { strokes: '/', says: 'remark follows' },
  { strokes: ';u', says: 'undo' },
  { strokes: ';q', says: 'leave' },
];

/** Everything that a schema is typed with, field by field in the order of the log sheet. Retired codes are left out. */
export function cribSections(schema: LoggingSchema): readonly CribSection[] {
  return schema.fields.flatMap((field, index) => [
    sectionOf(schema, field),
    ...qualifiersOf(field)
      .filter(({ list }) => isFirstOf(schema, index, list))
      .map(({ list }) => qualitySection(schema, list)),
  ]);
}

/** True where no field above takes a list of qualifiers, and none logs it by itself. */
function isFirstOf(schema: LoggingSchema, index: number, list: string): boolean {
  const takes = (field: Field): boolean => qualifiersOf(field).some((each) => each.list === list);
  return (
    !schema.fields.slice(0, index).some(takes) &&
    !schema.fields.some((field) => 'list' in field && field.list === list)
  );
}

/** What says more of something, with the fields that it is said of. */
function qualitySection(schema: LoggingSchema, list: string): CribSection {
  const takers = schema.fields.filter((field) => qualifiersOf(field).some((each) => each.list === list));
  const behind = takers.map(({ label }) => label).join(', ');
  return {
    title: schema.lists[list]?.label ?? list,
    hint: `right after it: ${behind}`,
    items: itemsOfCodes(schema.lists[list]?.codes ?? [], list.toLowerCase()),
  };
}

function sectionOf(schema: LoggingSchema, field: Field): CribSection {
  const title = field.label;
  const levels = (scaleOf(schema, field)?.levels ?? []).map((each) => ({
    digit: String(each.level),
    says: each.label,
    ...marked(each.caution),
  }));
  const strokes = strokesIn(field);
  switch (field.kind) {
    case 'code':
      return { title, hint: sharesHint(field), items: codeItems(schema, field) };
    case 'codes':
      return { title, hint: 'as many as are seen', items: codeItems(schema, field) };
    case 'level':
      return {
        title,
        hint: '',
        items: levels.map(({ digit, ...level }) => ({
          ...level,
          strokes: strokes
            .split(' ')
            .map((each) => `${each}${digit}`)
            .join(' '),
        })),
      };
    case 'levels':
      return {
        title,
        hint: `with ${levels.map(({ digit, says }) => `${digit} ${says}`).join(', ')}`,
        items: codeItems(schema, field),
      };
    case 'percents':
      return { title, hint: percentHint(field), items: codeItems(schema, field) };
    case 'events':
      return {
        title,
        hint: 'with what is measured, and its depth after @: 2@44.6',
        items: codeItems(schema, field),
      };
    case 'percent':
      return {
        title,
        hint: percentHint(field),
        items: [{ strokes, says: field.label, ...marked(field.caution) }],
      };
    case 'number':
      return {
        title,
        hint: `${field.min} to ${field.max} ${field.unit}`,
        items: [
          { strokes, says: field.column ? 'or down the column' : field.unit, ...marked(field.caution) },
        ],
      };
    case 'flag':
      return { title, hint: '', items: [{ strokes, says: `${field.label} seen`, ...marked(field.caution) }] };
    case 'text':
      return { title, hint: '', items: [{ strokes: `${strokes}'words'`, says: 'in quotes' }] };
  }
}

function sharesHint({ list, second, third, qualifiers = [] }: FieldOf<'code'>): string {
  if (!second) return qualifiers.some((each) => each.list === list) ? 'a second one right after it' : '';
  return third === true ? 'a second and a third one with their %' : 'a second one with its %';
}

/** One word of a kind is mark enough beside a code: the kinds differ in the first. */
function markOf(kind: Caution['kind']): string {
  return kind.split(' ')[0] ?? kind;
}

function marked(caution: Caution | undefined): { readonly caution?: string } {
  return caution === undefined ? {} : { caution: markOf(caution.kind) };
}

function percentHint(field: { readonly traceCountsAsPercent?: number }): string {
  return field.traceCountsAsPercent === undefined ? 'with %' : 'with %, or a comma for a trace';
}

function codeItems(schema: LoggingSchema, field: Field): readonly CribItem[] {
  return itemsOfCodes(listOf(schema, field)?.codes ?? [], field.name);
}

function itemsOfCodes(codes: readonly Code[], name: string): readonly CribItem[] {
  return codes
    .filter((code) => code.retiredSince === undefined)
    .map((code) => ({
      strokes: strokesIn(code, `${name}'${code.code.toLowerCase()}`),
      says: code.label,
      ...marked(code.caution),
    }));
}

/** The pair, with the key behind it where there is one; else by the field's name. */
function strokesIn(typed: Field | Code, otherwise?: string): string {
  const { pair, key } = typed as { readonly pair?: string; readonly key?: string };
  const named = otherwise ?? ('name' in typed ? `${typed.name}'` : '');
  if (pair === undefined) return named;
  return key === undefined ? pair : `${pair} ${key}`;
}

const WIDEST_TITLE = 26;

/** The crib as lines of text, at most `width` columns wide: what can be typed, to hang beside the screen. */
export function cribLines(schema: LoggingSchema, width: number): readonly string[] {
  const words = (items: readonly CribItem[]) => items.map(cribWords);
  const sections = [...cribSections(schema), { title: 'every line', hint: '', items: LINE_WORDS }];
  const titleWidth = Math.min(WIDEST_TITLE, 2 + Math.max(...sections.map(({ title }) => stringWidth(title))));
  const cautions = cribCautions(schema).flatMap((text) => paragraph('', text.split(' '), width, ' '));
  const keys = sections.flatMap(({ title, hint, items }) =>
    paragraph(padded(title, titleWidth), [...words(items), ...(hint === '' ? [] : [`(${hint})`])], width),
  );
  return [...cautions, ...keys];
}

/** An item in words, with the kind of its caution: `te actinolite !fibre`. */
export function cribWords({ strokes, says, caution }: CribItem): string {
  return `${strokes} ${says}${caution === undefined ? '' : ` !${caution}`}`;
}

/** Every caution of a schema in full: they head the crib. What they are about is marked there by their kind. */
export function cribCautions(schema: LoggingSchema): readonly string[] {
  const all = cautionsOfSchema(schema);
  return CAUTION_KINDS.flatMap((kind) => {
    const ofKind = all.filter(({ caution }) => caution.kind === kind);
    const words = new Set(ofKind.map(({ caution }) => caution.words));
    const texts = words.size === 1 ? [`!${markOf(kind)}: ${[...words][0]}`] : cautionTexts(ofKind);
    return texts.map((text) => `CAUTION ${text}`);
  });
}

/** A title, and beside it texts parted by dots, wrapped. A text is not broken; one wider than the room is alone. */
function paragraph(
  title: string,
  texts: readonly string[],
  width: number,
  between = ' · ',
): readonly string[] {
  const room = Math.max(20, width - stringWidth(title));
  const lines: string[] = [];
  let line = '';
  for (const text of texts) {
    const longer = line === '' ? text : `${line}${between}${text}`;
    if (line !== '' && stringWidth(longer) > room) {
      lines.push(line);
      line = text;
    } else line = longer;
  }
  lines.push(line);
  const blank = ' '.repeat(stringWidth(title));
  return lines.map((each, index) => `${index === 0 ? title : blank}${each}`.trimEnd());
}

function padded(title: string, width: number): string {
  const cut = stringWidth(title) < width ? title : `${title.slice(0, width - 2)}…`;
  return cut + ' '.repeat(Math.max(1, width - stringWidth(cut)));
}
