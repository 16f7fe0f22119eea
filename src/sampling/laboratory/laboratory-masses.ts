import type { Finding } from '../../finding/finding.ts';
import { massInGrams } from '../findings.ts';
import { readMass } from '../recovery/mass-typed.ts';
import type { Certificate } from './results-noun.ts';
import type { ResultColumns } from './results-read.ts';

/** The mass of a calico as the laboratory received it, in kilograms as it would be typed. */
export interface ReceivedMass {
  readonly number: string;
  readonly kg: string;
}

/** Masses of calicos on certificates, in the unit that the project maps the column with; what can't be one is named. */
export function receivedMasses(
  mapped: ResultColumns['mass'],
  certificates: readonly Certificate[],
): { readonly masses: readonly ReceivedMass[]; readonly findings: readonly Finding[] } {
  const masses: ReceivedMass[] = [];
  const findings: Finding[] = [];
  for (const { lines, file } of mapped === undefined ? [] : certificates) {
    for (const { line, number, reported } of lines) {
      const column = mapped?.column ?? '';
      const text = Object.hasOwn(reported, column) ? (reported[column] ?? '') : '';
      if (text === '') continue;
      const kg = mapped?.unit === 'g' ? inKg(text) : text;
      const read = readMass(kg, 'calico');
      if (read.ok) masses.push({ number, kg });
      else
        findings.push(
          ...read.findings.map((each) => placed(each, { file, line, thing: `sample ${number}` })),
        );
    }
  }
  return { masses, findings };
}

/** Grams as written, in kilograms to the gram; what is no figure stays as it is. */
function inKg(text: string): string {
  return /^\d{1,6}(\.\d{1,3})?$/.test(text) ? (Number(text) / 1000).toFixed(3) : text;
}

/** A finding of a typed mass, at its line of the certificate: there the mapping is corrected, not the figure. */
function placed(finding: Finding, place: Finding['place']): Finding {
  const remedy =
    finding.code === massInGrams.code
      ? 'Where the column is in grams, say so in project.json: sampling.results.mass, "unit": "g".'
      : 'Ask the laboratory what it weighed. This mass is left out.';
  return { ...finding, place, remedy };
}
