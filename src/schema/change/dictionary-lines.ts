import { dangerTyped } from '../cautions.ts';
import type { CodeEntry, FieldEntry, ScaleEntry } from '../read/file-entries.ts';

/** A list or scale while its lines are read. */
export type Lined = { label: string; readonly codes: CodeEntry[]; readonly levels: ScaleEntry['levels'] };

/** The list or scale of a name; made where no line has named it before, since its codes may stand before it. */
export function partOf(parts: Map<string, Lined>, name: string): Lined {
  const part = parts.get(name) ?? { label: name, codes: [], levels: [] };
  parts.set(name, part);
  return part;
}

/** What is usual of a field by its kind, where its line doesn't say: whether it carries, whether none can be seen, and what unsaid means. */
const USUAL: Readonly<Record<string, Pick<FieldEntry, 'carry' | 'canBeNone' | 'unsaid'>>> = {
  code: { carry: true, canBeNone: false, unsaid: 'not observed' },
  level: { carry: true, canBeNone: true, unsaid: 'not observed' },
  levels: { carry: true, canBeNone: true, unsaid: 'none' },
  percents: { carry: true, canBeNone: true, unsaid: 'none' },
  percent: { carry: true, canBeNone: true, unsaid: 'none' },
  codes: { carry: true, canBeNone: true, unsaid: 'not observed' },
  events: { carry: false, canBeNone: true, unsaid: 'none' },
  flag: { carry: false, canBeNone: true, unsaid: 'none' },
  number: { carry: false, canBeNone: false, unsaid: 'not observed' },
  text: { carry: false, canBeNone: false, unsaid: 'not observed' },
};

/** Steps of percents where a line gives none. */
const USUAL_STEPS = [0.5, 1, 2, 3, 5, 7, 10, 15, 20, 30, 50, 75, 100];

/** A field of a line, or what is wrong with it. */
export function fieldOf(at: (heading: string) => string, kinds: readonly string[]): FieldEntry | string {
  const kind = at('kind').toLowerCase();
  const usual = USUAL[kind];
  const name = at('name');
  if (usual === undefined || !kinds.includes(kind))
    return `the kind of ${name} is "${at('kind')}"; it is one of ${kinds.join(', ')}`;
  for (const heading of ['required', 'carry', 'none', 'second'])
    if (!['', 'yes', 'no'].includes(at(heading).toLowerCase()))
      return `"${heading}" of ${name} is "${at(heading)}"; it is yes, no or empty`;
  const danger = dangerTyped(at('caution'))?.caution;
  if (at('caution') !== '' && danger === undefined)
    return `${name} has the caution ${at('caution').slice(0, 30)}; it is void, fibre, radiation, silica dust or other`;
  const yes = (heading: string, otherwise: boolean): boolean =>
    at(heading) === '' ? otherwise : at(heading).toLowerCase() === 'yes';
  const own = membersOf(kind, at, yes('second', false));
  if (typeof own === 'string') return `${name}: ${own}`;
  return {
    name,
    label: at('label') || name,
    kind: kind as NonNullable<FieldEntry['kind']>,
    ...own,
    required: yes('required', false),
    carry: yes('carry', usual.carry ?? false),
    unsaid: usual.unsaid,
    canBeNone: yes('none', usual.canBeNone ?? false),
    ...(danger === undefined ? {} : { caution: danger }),
    ...(at('pair') === '' ? {} : { pair: at('pair') }),
    ...(at('key') === '' ? {} : { key: at('key') }),
  };
}

/** What only fields of this kind have; or which column is missing. */
function membersOf(
  kind: string,
  at: (heading: string) => string,
  second: boolean,
): Partial<FieldEntry> | string {
  const needsList = ['code', 'codes', 'levels', 'percents', 'events'].includes(kind);
  const needsScale = kind === 'level' || kind === 'levels';
  if (needsList && at('list') === '') return 'the list that it takes codes from is missing (column list)';
  if (needsScale && at('scale') === '') return 'the scale of its levels is missing (column scale)';
  const steps = at('steps') === '' ? USUAL_STEPS : at('steps').split(/[ ;]+/).map(Number);
  if (steps.some((step) => !(step > 0 && step <= 100)))
    return `the steps are "${at('steps')}"; they are percents like 1 2 5 10`;
  const isPercent = kind === 'percents' || kind === 'percent';
  const number = kind === 'number' ? numberOf(at) : {};
  if (typeof number === 'string') return number;
  return {
    ...(needsList ? { list: at('list') } : {}),
    ...(needsScale ? { scale: at('scale') } : {}),
    ...(kind === 'code' ? { second } : {}),
    ...(isPercent ? { ladder: steps, traceCountsAsPercent: 0.1 } : {}),
    ...(kind === 'percents' ? { sumLimitPercent: 100 } : {}),
    ...number,
  };
}

/** What a number has: it can be typed down a column of metres and read from an instrument's CSV. */
function numberOf(at: (heading: string) => string): Partial<FieldEntry> | string {
  const missing = ['unit', 'min', 'max'].filter((heading) => at(heading) === '');
  if (missing.length > 0) return `a number needs ${missing.join(', ')}`;
  const [min, max, decimals] = ['min', 'max', 'decimals'].map((heading) => Number(at(heading) || 0));
  if (![min, max, decimals].every(Number.isFinite)) return 'min, max or decimals is no number';
  return { unit: at('unit'), min, max, decimals, column: true } as Partial<FieldEntry>;
}
