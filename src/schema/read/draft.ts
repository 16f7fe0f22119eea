import type { z } from 'zod';
import { type Finding, ok, type Result, refused } from '../../finding/finding.ts';
import { listNotTaken, shape } from '../findings.ts';
import {
  type Accepted,
  type ByLevel,
  type Code,
  type CodeList,
  type Field,
  type LoggingSchema,
  qualifiersOf,
  type Scale,
  type Unlikely,
} from '../logging-schema.ts';
import { completeCode, completeField, completeUnlikely } from './complete-entries.ts';
import type { CodeEntry, FieldEntry, ListEntry, ScaleEntry, UnlikelyEntry } from './file-entries.ts';
import type { LoggingFile } from './file-schema.ts';
import { type Inherited, inherit } from './inherit.ts';
import { issueInWords, knownParts, pathOf } from './issue-words.ts';
import type { ReadFile } from './json-source.ts';
import { excerptAt, type JsonSource, placeInFile } from './places.ts';

/** Every part of a schema with what it inherited, before it is known to be whole. */
export type Draft = {
  readonly fields: readonly Inherited<FieldEntry>[];
  readonly unlikely: readonly Inherited<UnlikelyEntry>[];
  readonly scales: ReadonlyMap<string, Inherited<ScaleEntry>>;
  readonly lists: ReadonlyMap<string, DraftList>;
  readonly repeatsBeforeLook: number | undefined;
  readonly columns: readonly string[] | undefined;
  /** Warnings accepted in any of the files. */
  readonly accepted: readonly Accepted[];
  /** The files that it was written in, the farthest ancestor first. */
  readonly sources: readonly JsonSource[];
};
type DraftList = {
  readonly label: string | undefined;
  readonly formedBy: string | undefined;
  readonly densityShares: ByLevel | undefined;
  readonly from: string | undefined;
  readonly codes: readonly Inherited<CodeEntry>[];
};

/** Rows alike in a run before the console asks to look again, where no file says. */
const REPEATS_BEFORE_LOOK = 8;

/** A draft with nothing in it. */
export const EMPTY_DRAFT: Draft = {
  fields: [],
  unlikely: [],
  scales: new Map(),
  lists: new Map(),
  repeatsBeforeLook: undefined,
  columns: undefined,
  accepted: [],
  sources: [],
};

/** A list of a style, for a file that takes it; or what of the two is not there. */
export type ListOfStyle = (style: string, list: string) => DraftList | 'no style' | 'no list';

/** One file over what it extends. */
export function over(
  draft: Draft,
  { value, source }: ReadFile<LoggingFile>,
  listOfStyle: ListOfStyle,
): { readonly draft: Draft; readonly findings: readonly Finding[] } {
  const fields = inherit(draft.fields, value.fields ?? [], nameOf, { source, path: ['fields'] });
  const unlikely = inherit(draft.unlikely, value.unlikely ?? [], nameOf, { source, path: ['unlikely'] });
  const lists = listsOver(draft.lists, value.lists ?? {}, source, listOfStyle);
  const scales = new Map(draft.scales);
  for (const [name, entry] of Object.entries(value.scales ?? {}))
    scales.set(name, { entry, origins: [{ source, path: ['scales', name] }] });
  return {
    draft: {
      fields: fields.entries,
      unlikely: unlikely.entries,
      scales,
      lists: lists.lists,
      repeatsBeforeLook: value.repeatsBeforeLook ?? draft.repeatsBeforeLook,
      columns: value.columns ?? draft.columns,
      accepted: [...draft.accepted, ...(value.accepted ?? [])],
      sources: [...draft.sources, source],
    },
    findings: [...fields.findings, ...unlikely.findings, ...lists.findings],
  };
}

function nameOf(entry: { readonly name: string }): string {
  return entry.name;
}

function listsOver(
  inherited: Draft['lists'],
  written: { readonly [name: string]: ListEntry },
  source: JsonSource,
  listOfStyle: ListOfStyle,
): { readonly lists: Draft['lists']; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  const lists = new Map(inherited);
  for (const [name, entry] of Object.entries(written)) {
    const taken = entry.from === undefined ? lists.get(name) : listOfStyle(entry.from, name);
    const old = typeof taken === 'string' ? undefined : taken;
    if (typeof taken === 'string') findings.push(notTaken(source, name, entry.from ?? '', taken));
    const path = ['lists', name, 'codes'];
    const codes = inherit(old?.codes ?? [], entry.codes ?? [], (each) => each.code, { source, path });
    findings.push(...codes.findings);
    lists.set(name, {
      label: entry.label ?? old?.label,
      formedBy: entry.formedBy ?? old?.formedBy,
      densityShares: entry.densityShares ?? old?.densityShares,
      from: entry.from ?? old?.from,
      codes: codes.entries,
    });
  }
  return { lists, findings };
}

function notTaken(source: JsonSource, list: string, style: string, what: 'no style' | 'no list'): Finding {
  const path = ['lists', list, 'from'];
  return listNotTaken.at(placeInFile(source, path), {
    problem:
      what === 'no style' ? `no style is called ${style}` : `the style ${style} has no list called ${list}`,
    remedy:
      what === 'no style'
        ? 'Name a style that comes with offsider: offsider new --style lists them.'
        : 'Name the list as that style does, or take "from" out and write its codes here.',
    ...excerptAt(source, path),
  });
}

/** The draft as a schema, or which entries are not whole. */
export function complete(name: string, draft: Draft): Result<LoggingSchema> {
  const findings: Finding[] = [];
  const whole = <T>(inherited: Inherited<object>, type: z.ZodType<T>): readonly T[] => {
    const checked = type.safeParse(inherited.entry, { reportInput: true, jitless: true });
    if (checked.success) return [checked.data];
    findings.push(...notWhole(inherited, checked.error));
    return [];
  };
  const fields = kept(draft.fields).flatMap((field): readonly Field[] => whole(field, completeField));
  const unlikely = kept(draft.unlikely).flatMap((each): readonly Unlikely[] => whole(each, completeUnlikely));
  const lists: Record<string, CodeList> = {};
  for (const [list, { label, formedBy, densityShares, from, codes }] of draft.lists)
    lists[list] = {
      name: list,
      label: label ?? list,
      ...(formedBy === undefined ? {} : { formedBy }),
      ...(densityShares === undefined ? {} : { densityShares }),
      ...(from === undefined ? {} : { from }),
      codes: codes.flatMap((code): readonly Code[] => whole(code, completeCode)),
    };
  for (const list of listsNamed(fields))
    lists[list] ??= { name: list, label: list, codes: [], notThere: true };
  const scales: Record<string, Scale> = {};
  for (const [scale, { entry }] of draft.scales) scales[scale] = { name: scale, ...entry } as Scale;
  if (findings.length > 0) return refused(...findings);
  return ok({
    name,
    fields,
    lists,
    scales,
    ...(unlikely.length === 0 ? {} : { unlikely }),
    ...(draft.columns === undefined ? {} : { columns: draft.columns }),
    ...(draft.accepted.length === 0 ? {} : { accepted: draft.accepted }),
    repeatsBeforeLook: draft.repeatsBeforeLook ?? REPEATS_BEFORE_LOOK,
  });
}

/** The lists that fields take codes from, or are qualified by. A field may be written before its list. */
function listsNamed(fields: readonly Field[]): readonly string[] {
  return fields.flatMap((field) => [
    ...('list' in field ? [field.list] : []),
    ...qualifiersOf(field).map(({ list }) => list),
  ]);
}

/** What is not retired, by either word. */
function kept<
  T extends { readonly retired?: true | undefined; readonly retiredSince?: string | null | undefined },
>(entries: readonly Inherited<T>[]): readonly Inherited<T>[] {
  return entries.filter(({ entry }) => entry.retired !== true && typeof entry.retiredSince !== 'string');
}

function notWhole(inherited: Inherited<object>, error: z.core.$ZodError): readonly Finding[] {
  const origin = inherited.origins.at(-1);
  if (origin === undefined) throw new Error('an entry without an origin');
  return error.issues.flatMap(knownParts).map((issue) => {
    const path = [...origin.path, ...pathOf(issue)];
    return shape.at(placeInFile(origin.source, path), {
      ...issueInWords(issue),
      ...excerptAt(origin.source, path),
    });
  });
}
