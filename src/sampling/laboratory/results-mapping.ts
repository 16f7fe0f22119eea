import type { Finding } from '../../finding/finding.ts';
import { resultColumn, resultUnit } from '../findings.ts';
import type { Sampling } from '../sampling.ts';
import { conversionFactor, unitInHeading } from './units.ts';

const ANALYTES = { file: 'project.json', field: 'sampling.results.analytes' };

/** What is wrong with the column mapping before a result comes: units that can't be converted or deny their heading, analytes no column reports. */
export function checkMapping(sampling: Sampling): readonly Finding[] {
  const { results } = sampling;
  if (results === undefined) return [];
  return [...results.analytes.flatMap(checkUnit), ...unreported(sampling)];
}

type Analyte = NonNullable<Sampling['results']>['analytes'][number];

function checkUnit({ column, unit, countedIn }: Analyte): readonly Finding[] {
  if (countedIn !== undefined && conversionFactor(unit, countedIn) === undefined)
    return [
      resultUnit.at(ANALYTES, {
        excerpt: `${unit} → ${countedIn}`,
        problem: `${column} is in ${unit} and counted in ${countedIn}, and nothing says how many make one.`,
        remedy: 'Use ppb, ppm, g/t or % for both, or count it in the unit that the laboratory reports.',
      }),
    ];
  const said = unitInHeading(column);
  if (said === undefined || conversionFactor(said, unit) === 1 || conversionFactor(said, unit) === undefined)
    return [];
  return [
    resultUnit.at(ANALYTES, {
      excerpt: column,
      problem: `The heading ${column} says ${said}, and the mapping says ${unit}.`,
      remedy: `Ask the laboratory. If it is ${said}: "unit": "${said}", "countedIn": "${unit}".`,
    }),
  ];
}

/** Analytes that a limit or a certified value is given for and no column reports. */
function unreported({ results, standards, blanks, resplit }: Sampling): readonly Finding[] {
  const reported = new Set(results?.analytes.map((each) => each.analyte));
  const wanted = [
    ...standards.flatMap((each) => (each.certified ?? []).map((value) => value.analyte)),
    ...blanks.flatMap((each) => (each.limits ?? []).map((limit) => limit.analyte)),
    ...(resplit === undefined ? [] : [resplit.analyte]),
  ];
  return [...new Set(wanted)]
    .filter((analyte) => !reported.has(analyte))
    .map((analyte) =>
      resultColumn.at(ANALYTES, {
        excerpt: [...reported].join(', '),
        problem: `Limits or certified values are given for ${analyte}, and no column of the results is ${analyte}.`,
        remedy: 'Map its column, or write the analyte as the mapping does.',
      }),
    );
}
