import type { Finding } from '../finding/finding.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import { type Certificate, certificateOf } from '../sampling/laboratory/results-noun.ts';
import { checkReturned, type Returned, returnedResults } from '../sampling/laboratory/returned.ts';
import { bagsOfHoles, dispatchesOf } from './dispatches.ts';

/** Every certificate of a project, superseded ones too. */
export function certificatesOf(documents: Iterable<Document>): readonly Certificate[] {
  return [...documents].filter((document) => document.kind === 'results').map(certificateOf);
}

/** What came back from the laboratory, as the project reads it. */
export function returnedOf(project: Project, documents: Iterable<Document>): Returned {
  return returnedResults(project.sampling, certificatesOf(documents));
}

/** What is wrong with it, and what the controls say. */
export function returnedFindings(project: Project, documents: Iterable<Document>): readonly Finding[] {
  const all = [...documents];
  return checkReturned(project.sampling, bagsOfHoles(all), dispatchesOf(all), certificatesOf(all));
}
