import { allMeanings } from '../legend.ts';
import type { LoggingSchema } from '../logging-schema.ts';

/** One thing that two schemas say differently: only in the first, only in the second, or in both with what differs. */
export type SchemaDifference = {
  readonly thing: string;
  readonly label: string;
  readonly only?: 'first' | 'second';
  readonly differs?: readonly { readonly member: string; readonly first: string; readonly second: string }[];
};

type Named = { readonly [name: string]: { readonly label: string } };

/** What two schemas say differently: fields, scales and codes, their words, kinds and strokes. Order, hints and cautions are not compared. */
export function schemaDiff(first: LoggingSchema, second: LoggingSchema): readonly SchemaDifference[] {
  const [one, other] = [allMeanings(first), allMeanings(second)];
  return [
    ...between('field', one.fields, other.fields),
    ...between('scale', one.scales, other.scales),
    ...between('code', one.codes, other.codes),
  ];
}

/** One difference in a line; what is only in one is said to be in that, by the name given it. */
export function differenceLine(
  { thing, label, only, differs = [] }: SchemaDifference,
  names: { readonly first: string; readonly second: string },
): string {
  if (only !== undefined)
    return `${thing} (${label}): only in ${only === 'first' ? names.first : names.second}`;
  const members = differs.map(({ member, first, second }) => `${member} ${first} → ${second}`);
  return `${thing} (${label}): ${members.join('; ')}`;
}

function between(kind: string, first: Named, second: Named): readonly SchemaDifference[] {
  const names = [...new Set([...Object.keys(first), ...Object.keys(second)])];
  return names.flatMap((name): readonly SchemaDifference[] => {
    const thing = `${kind} ${name}`;
    const [a, b] = [first[name], second[name]];
    if (a === undefined) return [{ thing, label: b?.label ?? name, only: 'second' }];
    if (b === undefined) return [{ thing, label: a.label, only: 'first' }];
    const differs = membersThatDiffer(a, b);
    return differs.length === 0 ? [] : [{ thing, label: a.label, differs }];
  });
}

function membersThatDiffer(a: object, b: object): NonNullable<SchemaDifference['differs']> {
  const said = (thing: object, member: string): string => {
    const value = (thing as { readonly [member: string]: unknown })[member];
    if (value === undefined) return 'nothing';
    return Array.isArray(value) ? levelsInWords(value) : String(value);
  };
  const members = [...new Set([...Object.keys(a), ...Object.keys(b)])];
  return members.flatMap((member) => {
    const [first, second] = [said(a, member), said(b, member)];
    return first === second ? [] : [{ member, first, second }];
  });
}

function levelsInWords(levels: readonly { readonly level?: number; readonly label?: string }[]): string {
  return levels.map(({ level, label }) => `${level} ${label}`).join(', ');
}
