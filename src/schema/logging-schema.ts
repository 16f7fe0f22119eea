import type { Condition } from '../condition/condition.ts';
import type { Absence, ValueKind } from '../value/cell.ts';

/** Kinds of what can hurt someone, in the order they are shown in. A void is a cavity in the ground and nothing else. */
export const CAUTION_KINDS = ['void', 'fibre', 'radiation', 'silica dust', 'other'] as const;

/** One step of an ordinal scale, from 1 up. 0 is never a step: it is how "none" is typed. */
type Level = {
  readonly level: number;
  /** A code for the level where the project has one (`frs`), unique in its scale. */
  readonly code?: string;
  readonly label: string;
  /** What it looks like in washed chips. */
  readonly look: string;
  /** What can hurt someone where this level is seen. */
  readonly caution?: Caution;
};

/** An ordinal scale: its levels in order, without gaps, from 1. */
export type Scale = { readonly name: string; readonly label: string; readonly levels: readonly Level[] };

/** What can hurt someone where a code is seen: shown in plain words, deferring to site procedures. */
export type Caution = {
  readonly kind: (typeof CAUTION_KINDS)[number];
  readonly words: string;
};

/** Figures by the name of a level field, then by its level. */
export type ByLevel = { readonly [field: string]: { readonly [level: string]: number } };

/** What is measured of an event: its unit and limits. */
export type Measure = {
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly decimals: number;
};

/** One code of a list. The code and the strokes that type it are separate things, each chosen by the author. */
export type Code = {
  readonly code: string;
  readonly label: string;
  readonly look: string;
  /** Two different letters that type it anywhere. A code without a pair is said by its field (`rock'BST`). */
  readonly pair?: string;
  /** One letter that types it where it is in the row above. */
  readonly key?: string;
  /** Id of a term of the CGI vocabularies (IUGS), as a cross-reference. */
  readonly cgi?: string;
  /** Mineral symbol after Warr (2021), as a cross-reference. */
  readonly mineral?: string;
  readonly densityGcm3?: number;
  /** Its density where it is weathered or oxidised, g/cm³, by field and level: instead of what {@link CodeList.densityShares} makes of it. */
  readonly densityAtLevels?: ByLevel;
  /** What is measured of it where it is an event: the flow of a water strike. */
  readonly measure?: Measure;
  readonly caution?: Caution;
  /** No chips come up where it is logged (a loss of return): nothing carries into the row or out of it, as with a void. */
  readonly noChips?: true;
  /** Local date since when it can't be used again; old logs still decode. */
  readonly retiredSince?: string;
  /** Added on the rig, not yet agreed with camp. */
  readonly provisional?: true;
};

/** A list of codes, in the order in which the pick list shows them. */
export type CodeList = {
  readonly name: string;
  readonly label: string;
  /** The rule that its codes are formed by, where there is one. */
  readonly formedBy?: string;
  /** What weathering leaves of the density of its rocks, as a share of 1, by field and level. */
  readonly densityShares?: ByLevel;
  readonly codes: readonly Code[];
  /** The style that a file took the list from. */
  readonly from?: string;
  /** No file has it yet: only a field names it. */
  readonly notThere?: true;
};

/** What every field has, whatever it holds. */
type FieldBase = {
  /** Lower-case letters and digits, a letter first, unique: types as `name'…`. */
  readonly name: string;
  readonly label: string;
  readonly required: boolean;
  /** The field applies only to rows of which this holds; it may ask only fields above it. */
  readonly onlyWhen?: Condition;
  /** Unsaid, it carries from the last observed row above. */
  readonly carry: boolean;
  /** Fields above it: where one of them is not as in the row above, this one doesn't carry. */
  readonly notAcross?: readonly string[];
  /** What leaving it unsaid means where nothing carries: in a first row, and always when it isn't carried. Required fields are refused instead. */
  readonly unsaid: Absence;
  /** Looked and saw none can be said of it. False for what always is something: a rock, a weathering grade. */
  readonly canBeNone: boolean;
  /** What can hurt someone where anything is seen in it; of a column of readings, who takes them. */
  readonly caution?: Caution;
};

/** Strokes that name an amount field itself (`vn5`, `v5`), as a pair and a key name a code. */
type Strokes = { readonly pair?: string; readonly key?: string };

/**
 * Where the readings of an instrument stand in its CSV, by the headings of its columns: the interval (`from` and `to`) or one
 * depth (`depth`), the reading, and in a file of several holes the hole. `unit` is what the file counts in.
 */
export type ReadingColumns = {
  readonly from?: string;
  readonly to?: string;
  readonly depth?: string;
  readonly reading?: string;
  readonly hole?: string;
  readonly unit?: string;
};

/** Limits of an amount in percent. */
type PercentLimits = {
  /** The steps that estimates by eye are given in; off it is asked. Ascending, each over 0 and at most 100. */
  readonly ladder: readonly number[];
  /** Where a trace may be said: what it counts as in sums and conditions, in percent. */
  readonly traceCountsAsPercent?: number;
};

/** A list whose codes say more of one code of a field: how an alteration sits in the rock, the habit of a sulphide, the shade of a colour. */
export type Qualifier = {
  readonly list: string;
  /** The codes that it can be said of; of every one where this is missing. */
  readonly of?: readonly string[];
};

/** A field of codes of which more can be said. Of several rocks or colours it is said of the first. */
type MayBeQualified = { readonly qualifiers?: readonly Qualifier[] };

type CodeField = FieldBase &
  MayBeQualified & {
    readonly kind: 'code';
    readonly list: string;
    readonly second: boolean;
    /** Beside the second a third may stand. */
    readonly third?: boolean;
  };
/** Several codes of a list, without amounts. */
type CodesField = FieldBase & MayBeQualified & { readonly kind: 'codes'; readonly list: string };
/** Things at a point inside the row, each of a list, with a depth and perhaps a measure. They never carry. */
type EventsField = FieldBase & { readonly kind: 'events'; readonly list: string };
type LevelField = FieldBase & Strokes & { readonly kind: 'level'; readonly scale: string };
type LevelsField = FieldBase &
  MayBeQualified & {
    readonly kind: 'levels';
    readonly list: string;
    readonly scale: string;
  };
type PercentsField = FieldBase &
  MayBeQualified &
  PercentLimits & { readonly kind: 'percents'; readonly list: string; readonly sumLimitPercent: number };
type PercentField = FieldBase & Strokes & PercentLimits & { readonly kind: 'percent' };
export type NumberField = FieldBase & {
  readonly kind: 'number';
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly decimals: number;
  /** An instrument's reading: typed down the metres as a column or taken from a CSV, never carried. */
  readonly column: boolean;
  /** Which columns of the instrument's CSV hold what, by their headings. */
  readonly csv?: ReadingColumns;
};
type FlagField = FieldBase & Strokes & { readonly kind: 'flag' };
type TextField = FieldBase & { readonly kind: 'text' };

/** One field of a project's log, resolved: nothing left to default. */
export type Field =
  | CodeField
  | LevelField
  | LevelsField
  | PercentsField
  | CodesField
  | EventsField
  | PercentField
  | NumberField
  | FlagField
  | TextField;

/** A field whose kind of value is the given one. */
export type FieldOf<K extends ValueKind> = Extract<Field, { readonly kind: K }>;

/** Things that are seldom seen together in one row: a condition over its fields, and the words of the question. */
export type Unlikely = { readonly name: string; readonly when: Condition; readonly words: string };

/** What a column of the log can show of the sample of a row. A field's name has no space: these are never taken for one. */
export const SAMPLE_COLUMNS = ['bag number', 'sample moisture', 'sample recovery'] as const;
export type SampleColumn = (typeof SAMPLE_COLUMNS)[number];

/** A warning that its author has looked at and lives with, by its kind and its very words: changed words are said again. */
export type Accepted = { readonly finding: string; readonly problem: string };

/** A project's logging schema with its inheritance resolved: what the console, the checks and the handover all read. */
export type LoggingSchema = {
  readonly name: string;
  /** In the order of the log sheet. */
  readonly fields: readonly Field[];
  readonly lists: { readonly [name: string]: CodeList };
  readonly scales: { readonly [name: string]: Scale };
  /** Rows alike in a run before the console asks to look again, once. */
  readonly repeatsBeforeLook: number;
  /** What is seldom seen together in one row: worth a question, never refused. */
  readonly unlikely?: readonly Unlikely[];
  /** The columns of the log on screen, from the left: fields and {@link SAMPLE_COLUMNS}. Required fields are there in any case. */
  readonly columns?: readonly string[];
  /** Warnings that are not said again. */
  readonly accepted?: readonly Accepted[];
};

/** The field of that name, or undefined. */
export function fieldNamed(schema: LoggingSchema, name: string): Field | undefined {
  return schema.fields.find((field) => field.name === name);
}

/** True of a field that can be a column of the log on screen: readings are read down, not along, and texts are too long. */
export function canBeColumn(field: Field): boolean {
  return !(field.kind === 'number' && field.column) && field.kind !== 'text';
}

/** The list that a field takes its codes from; undefined for a field without codes. Throws where the schema names no such list. */
export function listOf(schema: LoggingSchema, field: Field): CodeList | undefined {
  if (!('list' in field)) return undefined;
  const list = schema.lists[field.list];
  if (list === undefined)
    throw new Error(`field ${field.name} names a list that is not there: ${field.list}`);
  return list;
}

/** The lists that can say more of a field's codes. */
export function qualifiersOf(field: Field): readonly Qualifier[] {
  return 'qualifiers' in field ? (field.qualifiers ?? []) : [];
}

/** The list of a field's qualifiers that can be said of a code, or undefined. */
export function qualifierFor(field: Field, list: string, code: string | undefined): Qualifier | undefined {
  return qualifiersOf(field).find(
    (each) => each.list === list && (code === undefined || each.of === undefined || each.of.includes(code)),
  );
}

/** The scale that a field's levels are on; undefined for a field without one. Throws where the schema names no such scale. */
export function scaleOf(schema: LoggingSchema, field: Field): Scale | undefined {
  if (!('scale' in field)) return undefined;
  const scale = schema.scales[field.scale];
  if (scale === undefined)
    throw new Error(`field ${field.name} names a scale that is not there: ${field.scale}`);
  return scale;
}

/** A code of a field's list, or undefined. */
export function codeOf(schema: LoggingSchema, field: Field, code: string): Code | undefined {
  return listOf(schema, field)?.codes.find((each) => each.code === code);
}

/** Every code that can say more of one code of a field (of any one, where none is given), whatever list it is from. */
export function qualitiesOf(schema: LoggingSchema, field: Field, of?: string): readonly string[] {
  return qualifiersOf(field)
    .filter(({ list }) => qualifierFor(field, list, of) !== undefined)
    .flatMap(({ list }) => schema.lists[list]?.codes.map(({ code }) => code) ?? []);
}
