import type { Finding } from '../../finding/finding.ts';
import { labBlankHigh, labPairApart, labRepeatOfNothing, labStandardOff } from '../findings.ts';
import { relativeDifference } from './pairs.ts';
import type { ReportedLine } from './results-noun.ts';
import type { Assay, AssayValue, ResultColumns } from './results-read.ts';

/** How the project recognises one kind of the laboratory's own samples on a certificate. */
export type OwnSampleRule = NonNullable<ResultColumns['ownSamples']>[number];

/** A result of the laboratory's own: the rule that knows it, and of a repeat or a duplicate the number that it repeats. */
export interface OwnAssay extends Assay {
  readonly certificate: string;
  readonly rule: OwnSampleRule;
  readonly of?: string;
}

/** The rule that a reported line is the laboratory's own by, with the number that it repeats; undefined of a sample of the project. */
export function ownSampleOf(
  columns: Pick<ResultColumns, 'ownSamples'>,
  { number, reported }: Pick<ReportedLine, 'number' | 'reported'>,
): { readonly rule: OwnSampleRule; readonly of?: string } | undefined {
  for (const rule of columns.ownSamples ?? []) {
    const left = without(rule, rule.column === undefined ? number : (reported[rule.column] ?? ''));
    if (left === undefined) continue;
    if (rule.is !== 'repeat' && rule.is !== 'duplicate') return { rule };
    return { rule, of: rule.column === undefined ? left : number };
  }
  return undefined;
}

/** The text without the mark of the rule; undefined where it does not hold it. Case and spaces about the mark do not count. */
function without({ at, text }: OwnSampleRule, cell: string): string | undefined {
  const [mark, given] = [text.trim().toUpperCase(), cell.trim()];
  const upper = given.toUpperCase();
  if (at === 'whole') return upper === mark ? '' : undefined;
  if (at === 'start') return upper.startsWith(mark) ? given.slice(mark.length).trim() : undefined;
  return upper.endsWith(mark) ? given.slice(0, given.length - mark.length).trim() : undefined;
}

/** Per cent of their mean that a pair may lie apart where the project says nothing; common practice for a pulp and for a second split. */
const WITHIN_PERCENT = { repeat: 20, duplicate: 30 } as const;

/** What the laboratory's own samples say: repeats and duplicates beside their first result, standards, blanks. Of what has no limit nothing. */
export function checkOwnSamples(
  own: readonly OwnAssay[],
  byNumber: ReadonlyMap<string, Assay>,
): readonly Finding[] {
  return own.flatMap((each) => {
    switch (each.rule.is) {
      case 'standard':
        return standardFindings(each);
      case 'blank':
        return blankFindings(each);
      default:
        return pairFindings(each, byNumber);
    }
  });
}

function standardFindings({ rule, number, values }: OwnAssay): readonly Finding[] {
  return (rule.certified ?? []).flatMap(({ analyte, value: certified, sd }) => {
    const found = values[analyte];
    if (found === undefined) return [];
    const z = (found.value - certified) / sd;
    if (Math.abs(z) < 2) return [];
    return [
      labStandardOff.at(
        { thing: `sample ${number}`, field: analyte },
        {
          excerpt: `${found.value}`,
          problem: `The laboratory's own standard ${rule.lot ?? rule.text} reads ${Math.abs(z).toFixed(1)} SD ${z < 0 ? 'low' : 'high'}${Math.abs(z) >= 3 ? ': it fails' : ''}.`,
          remedy: 'Ask the laboratory what it did about it, before the batch is used.',
        },
      ),
    ];
  });
}

function blankFindings({ rule, number, values }: OwnAssay): readonly Finding[] {
  return (rule.limits ?? []).flatMap(({ analyte, limit }) => {
    const found = values[analyte];
    if (found === undefined || found.belowLimit !== undefined || found.value <= limit) return [];
    return [
      labBlankHigh.at(
        { thing: `sample ${number}`, field: analyte },
        {
          excerpt: `${found.value}`,
          problem: `The laboratory's own blank shows ${found.value}; its limit is ${limit}.`,
          remedy: 'Ask the laboratory what was run before it, and for those samples to be run again.',
        },
      ),
    ];
  });
}

function pairFindings(each: OwnAssay, byNumber: ReadonlyMap<string, Assay>): readonly Finding[] {
  const { rule, of = '', number, values, certificate } = each;
  const first = byNumber.get(of);
  const place = { thing: `sample ${number}` };
  if (first === undefined)
    return [
      labRepeatOfNothing.at(place, {
        excerpt: certificate,
        problem: `The laboratory's own ${rule.is} is of ${of === '' ? 'no number' : of}, and no result has that number.`,
        remedy:
          'Ask the laboratory which sample it repeats, or correct sampling.results.ownSamples in project.json.',
      }),
    ];
  const within =
    rule.withinPercent ?? (rule.is === 'repeat' ? WITHIN_PERCENT.repeat : WITHIN_PERCENT.duplicate);
  return Object.entries(values).flatMap(([analyte, again]) => {
    const apart = percentApart(first.values[analyte], again);
    if (apart === undefined || apart <= within) return [];
    return [
      labPairApart.at(
        { ...place, field: analyte },
        {
          excerpt: `${first.values[analyte]?.value}, ${again.value}`,
          problem: `The laboratory's own ${rule.is} of ${of} lies ${apart.toFixed(0)} % from its first result; ${within} % is allowed.`,
          remedy: 'One says little. Where several are so, ask the laboratory about its pulps.',
        },
      ),
    ];
  });
}

/** Under a detection limit nothing can be told of a pair. */
function percentApart(a: AssayValue | undefined, b: AssayValue): number | undefined {
  if (a === undefined || a.belowLimit !== undefined || b.belowLimit !== undefined) return undefined;
  return relativeDifference({ a: a.value, b: b.value });
}

/** How many of each kind a certificate has, in words; empty where it has none. */
export function ownSampleWords(own: readonly OwnAssay[]): string {
  const counts = (['repeat', 'duplicate', 'standard', 'blank'] as const).flatMap((is) => {
    const count = own.filter(({ rule }) => rule.is === is).length;
    return count === 0 ? [] : [`${count} ${is}${count === 1 ? '' : 's'}`];
  });
  return counts.length === 0 ? '' : `the laboratory's own: ${counts.join(', ')}`;
}
