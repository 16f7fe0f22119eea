import { formatInterval } from '../quantity/interval.ts';
import { byReference } from '../record/by-reference.ts';
import { type Cell, qualifiedIn } from '../value/cell.ts';
import type { Cells, Row, RowSaid } from '../value/row.ts';
import { codesIn } from './codes-in.ts';
import {
  CAUTION_KINDS,
  type Caution,
  type Field,
  type LoggingSchema,
  listOf,
  qualifiersOf,
  scaleOf,
} from './logging-schema.ts';

/** A caution with what it is about: the code, the level or the field that was seen, in words. */
export type Cautioned = {
  readonly about: string;
  readonly caution: Caution;
  /** No chips come up where it is logged: a void may be near. */
  readonly noChips?: true;
};

/** What can be seen in a field and matters for people: its caution, and whether no chips come up with it. */
type Thing = { readonly about: string; readonly caution?: Caution; readonly noChips?: true };

/** Things by the name of their field, then by what a cell names. */
type Things = ReadonlyMap<string, ReadonlyMap<string, Thing>>;

/**
 * Every caution of a row, in the order of the log sheet: of its codes, of the levels of its scales, and of fields where something was
 * seen (a flag, an amount).
 */
export function cautionsIn(schema: LoggingSchema, cells: Cells): readonly Cautioned[] {
  return thingsIn(schema, cells).flatMap(cautioned);
}

/** Every caution that a schema can show: of codes in use, of levels, of fields (a column of readings among them). */
export function cautionsOfSchema(schema: LoggingSchema): readonly Cautioned[] {
  return schema.fields.flatMap((field) => {
    const retired = (listOf(schema, field)?.codes ?? []).filter((code) => code.retiredSince !== undefined);
    const retiredQualities = qualifiersOf(field).flatMap(({ list }) =>
      (schema.lists[list]?.codes ?? []).flatMap((code) =>
        code.retiredSince === undefined ? [] : [quality(list, code.code)],
      ),
    );
    const gone = new Set([...retired.map(({ code }) => named(code)), ...retiredQualities]);
    const things = [...(thingsOf(schema).get(field.name) ?? [])].filter(([name]) => !gone.has(name));
    const column =
      isColumn(field) && field.caution !== undefined ? [{ about: field.label, caution: field.caution }] : [];
    return [...column, ...things.flatMap(([, thing]) => cautioned(thing))];
  });
}

/** True where a void is seen in a row: a code, a level or a field whose caution is a void. */
export function holdsVoid(schema: LoggingSchema, cells: Cells): boolean {
  return thingsIn(schema, cells).some(({ caution }) => caution?.kind === 'void');
}

/**
 * Dangers that one state of a row says and another no longer does, in words: `void or old workings (void)`. A row that is gone, or without
 * return now, says none.
 */
export function dangersLost(
  schema: LoggingSchema,
  before: Pick<RowSaid, 'cells'>,
  after: Pick<RowSaid, 'cells'> | undefined,
): readonly string[] {
  const is = new Set(thingsIn(schema, after?.cells ?? {}).map(dangerWords));
  return [...new Set(thingsIn(schema, before.cells).map(dangerWords))].filter((each) => !is.has(each));
}

function dangerWords({ about, caution, noChips }: Thing): string {
  return `${about} (${noChips === true ? 'no chips' : (caution?.kind ?? '')})`;
}

/** What of a danger is about to go from a row, to be read before it does; nothing where nothing goes. */
export function lostWords(
  schema: LoggingSchema,
  before: Pick<Row, 'cells' | 'fromMm' | 'toMm'>,
  after: Pick<RowSaid, 'cells'> | undefined,
): readonly string[] {
  const lost = dangersLost(schema, before, after);
  return lost.length === 0
    ? []
    : [`CAUTION ${formatInterval(before)} would no longer say ${lost.join(', ')}`];
}

/** True where something that can be logged has a caution of a kind. */
export function canSay(schema: LoggingSchema, kind: Caution['kind']): boolean {
  return cautionsOfSchema(schema).some(({ caution }) => caution.kind === kind);
}

/** Fields that a void can be seen in. */
export function voidFields(schema: LoggingSchema): readonly string[] {
  const known = withVoids.get(schema) ?? findVoidFields(schema);
  withVoids.set(schema, known);
  return known;
}

const withVoids = new WeakMap<LoggingSchema, readonly string[]>();

function findVoidFields(schema: LoggingSchema): readonly string[] {
  return [...thingsOf(schema)].flatMap(([field, things]) =>
    [...things.values()].some(({ caution }) => caution?.kind === 'void') ? [field] : [],
  );
}

/**
 * True of a row that nothing carries into or out of: no return, a void, a loss of return. What lies in such a metre was not seen to
 * be as above, and the metre below was not seen to be like it.
 */
export function breaksCarry(schema: LoggingSchema, row: Pick<RowSaid, 'cells' | 'noReturn'>): boolean {
  if (row.noReturn === true) return true;
  return thingsIn(schema, row.cells).some((each) => each.caution?.kind === 'void' || each.noChips === true);
}

/** Cautions in words, a void first, then what gives no chips, then in the order of their kinds. What has the same words is named together: `chert, silcrete: …`. */
export function cautionTexts(cautions: readonly Cautioned[]): readonly string[] {
  const lost = cautions.filter(({ caution, noChips }) => noChips === true && caution.kind !== 'void');
  const others = cautions.filter((each) => !lost.includes(each));
  const groups = CAUTION_KINDS.map((kind) => others.filter(({ caution }) => caution.kind === kind));
  const [voids = [], ...rest] = groups;
  return [voids, lost, ...rest].flatMap((ofKind) => {
    const texts = [...new Set(ofKind.map(({ caution }) => caution.words))];
    return texts.map(
      (words) => `${namesOf(ofKind.filter(({ caution }) => caution.words === words))}: ${words}`,
    );
  });
}

/**
 * What is shown of a row's cautions: in full words those that the row above does not have, then in short those that it has too.
 * Nothing for a row without any.
 */
export function cautionsShown(schema: LoggingSchema, above: Cells, cells: Cells): readonly string[] {
  const known = new Set(cautionsIn(schema, above).map(keyOf));
  const all = cautionsIn(schema, cells);
  const still = all.filter((each) => known.has(keyOf(each)));
  const fresh = cautionTexts(all.filter((each) => !known.has(keyOf(each)))).map((text) => `CAUTION ${text}`);
  if (still.length === 0) return fresh;
  const short = still.map((each) => `${each.about} (${each.caution.kind})`);
  return [...fresh, `CAUTION as above: ${[...new Set(short)].join(', ')}`];
}

/**
 * What is shown where nothing came up: the caution of a loss of return in the project's words, for a metre marked so says no less than a code
 * of its own. Right below a void or a loss of return it is theirs, which may go on. Nothing for any other row.
 */
export function cautionsOfNoReturn(
  schema: LoggingSchema,
  directlyAbove: Pick<RowSaid, 'cells'> | undefined,
  row: Pick<RowSaid, 'noReturn'>,
): readonly string[] {
  if (row.noReturn !== true) return [];
  const lost = thingsIn(schema, directlyAbove?.cells ?? {}).filter(
    ({ caution, noChips }) => caution?.kind === 'void' || noChips === true,
  );
  if (lost.length === 0) return [`CAUTION no return: ${lossWords(schema)}`];
  return cautionTexts(lost.flatMap(cautioned)).map(
    (text) => `CAUTION no return right below it, so it may go on. ${text}`,
  );
}

/** What a project says of a loss of return: the words of its first code that gives no chips. */
function lossWords(schema: LoggingSchema): string {
  const codes = [...thingsOf(schema).values()].flatMap((things) => [...things.values()]);
  const loss = codes.find(({ noChips, caution }) => noChips === true && caution?.kind !== 'void');
  return loss?.caution?.words ?? LOSS_WORDS;
}

/** The rules ask each row of a hole again at each row that is logged. */
const thingsIn = byReference((schema: LoggingSchema, cells: Cells): readonly Thing[] =>
  [...thingsOf(schema)].flatMap(([field, things]) => {
    const cell = cells[field];
    if (cell === undefined || 'absent' in cell) return [];
    return namesIn(cell).flatMap((name) => things.get(name) ?? []);
  }),
);

const ITSELF = 'field';
const named = (code: string): string => `code ${code}`;
const quality = (list: string, code: string): string => `quality ${list} ${code}`;
const reached = (level: number): string => `level ${level}`;

/** What a cell names: its field, its codes, its levels. */
function namesIn(cell: Cell): readonly string[] {
  const levels = 'level' in cell ? [cell.level] : 'levels' in cell ? Object.values(cell.levels) : [];
  const qualities = Object.values(qualifiedIn(cell)).flatMap(Object.entries<string>);
  return [
    ...new Set([
      ITSELF,
      ...codesIn(cell).map(named),
      ...levels.map(reached),
      ...qualities.map(([list, code]) => quality(list, code)),
    ]),
  ];
}

const made = new WeakMap<LoggingSchema, Things>();

/** Things of a schema that matter for people, found once: every row that is typed asks for them. */
function thingsOf(schema: LoggingSchema): Things {
  const known = made.get(schema);
  if (known !== undefined) return known;
  const fields = schema.fields.map((field) => [field.name, fieldThings(schema, field)] as const);
  const things = new Map(fields.filter(([, each]) => each.size > 0));
  made.set(schema, things);
  return things;
}

function fieldThings(schema: LoggingSchema, field: Field): ReadonlyMap<string, Thing> {
  const codes = (listOf(schema, field)?.codes ?? []).filter(
    ({ caution, noChips }) => caution !== undefined || noChips === true,
  );
  const levels = (scaleOf(schema, field)?.levels ?? []).filter(({ caution }) => caution !== undefined);
  const qualities = qualifiersOf(field).flatMap(({ list }) =>
    (schema.lists[list]?.codes ?? [])
      .filter(({ caution }) => caution !== undefined)
      .map((code) => ({ list, code })),
  );
  return new Map<string, Thing>([
    // The caution of a column of readings is for whoever takes them, and is shown where they are taken.
    ...(field.caution === undefined || isColumn(field)
      ? []
      : [[ITSELF, { about: field.label, caution: field.caution }] as const]),
    ...codes.map((code) => [named(code.code), { ...code, about: code.label }] as const),
    ...qualities.map(({ list, code }) => [quality(list, code.code), { ...code, about: code.label }] as const),
    ...levels.map(
      (each) => [reached(each.level), { ...each, about: `${field.label} ${each.label}` }] as const,
    ),
  ]);
}

function isColumn(field: Field): boolean {
  return field.kind === 'number' && field.column;
}

function cautioned({ about, caution, noChips }: Thing): readonly Cautioned[] {
  if (caution === undefined) return [];
  return [{ about, caution, ...(noChips === true ? { noChips } : {}) }];
}

function namesOf(cautions: readonly Cautioned[]): string {
  return [...new Set(cautions.map((each) => each.about))].join(', ');
}

function keyOf(each: Cautioned): string {
  return `${each.about} ${each.caution.kind}`;
}

/** Words of a caution until the project has its own: plain, and leaving the ruling to the site. */
const USUAL_WORDS: Readonly<Record<Caution['kind'], string>> = {
  void: 'Tell the driller and call at once, as site procedures say. Ground over a void can give way: keep back.',
  fibre: 'May hold fibre. Follow site procedures for fibre; no warning is no clearance.',
  radiation: 'May be radioactive. Go by the radiation rules of the place and site procedures.',
  'silica dust':
    'Dust from this holds fine silica. Wear what site procedures ask for, and keep out of the dust.',
  other: 'This can hurt: go by site procedures, and ask camp for the words of this caution.',
};

/** Words for a code that gives no chips, until the project has its own. */
const LOSS_WORDS = 'Broken ground or a void may be near. Tell the driller, and go by site procedures.';

/** What a code means for people, as a library says it in one cell. */
export type DangerTyped = { readonly caution: Caution; readonly noChips?: true };

/** `void`, `fibre`, `silica dust`, `loss of return`, perhaps with words of its own after a colon; undefined for anything else. */
export function dangerTyped(typed: string): DangerTyped | undefined {
  const [kind = '', ...more] = typed.split(':');
  const own = more.join(':').trim();
  const noChips = ['loss of return', 'no return'].includes(kind.trim().toLowerCase());
  const caution = noChips ? { kind: 'other' as const, words: LOSS_WORDS } : cautionTyped(kind);
  if (caution === undefined || own.length > 200) return undefined;
  return {
    caution: own === '' ? caution : { ...caution, words: own },
    ...(noChips ? { noChips: true as const } : {}),
  };
}

/** Names of dangers in the words of a code: a code called so that has no caution is most likely missing one. */
const NAMES: readonly (readonly [Caution['kind'], RegExp])[] = [
  ['void', /\b(voids?|stopes?|cavity|cavities|old workings)\b/i],
  ['fibre', /\b(asbestos|fibrous|amphibolite|serpentinite|crocidolite|chrysotile)\b/i],
  ['silica dust', /\b(chert|silcrete)\b/i],
];

/** The kind of danger that words of a code name, `old stope or void`; undefined for any other words. */
export function dangerNamed(label: string): Caution['kind'] | undefined {
  return NAMES.find(([, name]) => name.test(label))?.[0];
}

/** A caution by its kind as someone types it (`void`, `silica`), in the usual words; undefined for no kind. */
export function cautionTyped(typed: string): Caution | undefined {
  const word = typed.trim().toLowerCase();
  const kind = CAUTION_KINDS.find((each) => each === word || each.split(' ')[0] === word);
  return kind === undefined ? undefined : { kind, words: USUAL_WORDS[kind] };
}
