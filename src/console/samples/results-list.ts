import { formatPlace } from '../../finding/place.ts';
import { qualityLines } from '../../sampling/laboratory/charts-text.ts';
import { ownSampleWords } from '../../sampling/laboratory/own-samples.ts';
import { qualityOf } from '../../sampling/laboratory/quality.ts';
import type { Certificate } from '../../sampling/laboratory/results-noun.ts';
import { notReturned, type Returned } from '../../sampling/laboratory/returned.ts';
import { bagsOfHoles, dispatchesOf } from '../../standing/dispatches.ts';
import { certificatesOf, returnedFindings, returnedOf } from '../../standing/returned.ts';
import { type Listed, oneSection } from '../lists/listed.ts';
import type { State } from '../state.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import { rememberLast } from '../widgets/remember.ts';

/** What the laboratory returned: certificates, what was found, the charts of the controls. */
export function resultsList(state: State, width: number): Listed {
  return listed(state.project, state.documents, width);
}

const listed = rememberLast(
  (project: State['project'], documents: State['documents'], width: number): Listed => {
    const certificates = certificatesOf(documents.values());
    if (certificates.length === 0)
      return oneSection('returned results', [
        [line('No results came back yet.')],
        [line('offsider results <file.csv> takes a certificate of the laboratory in.', 'faint')],
      ]);
    const returned = returnedOf(project, documents.values());
    const dispatches = dispatchesOf(documents.values());
    const found = returnedFindings(project, documents.values());
    const bags = bagsOfHoles(documents.values());
    const controls = qualityLines(qualityOf(project.sampling, bags, [...returned.byNumber.values()]));
    return {
      title: `returned results · ${found.length === 0 ? 'nothing found' : `${found.length} found`}`,
      sections: [
        { head: [], items: certificates.map((each) => [certificateLine(each, returned)]) },
        { head: [line(waitingWords(notReturned(dispatches, returned)))], items: [] },
        {
          head: found.length === 0 ? [] : [[], line('Found', 'strong')],
          items: found.map((each) => [
            ...wrap(
              `${each.severity}: ${formatPlace(each.place)}: ${each.problem}`,
              width,
              each.severity === 'note' ? 'plain' : 'warn',
            ),
            ...wrap(each.remedy, width - 2, 'accent').map((words): Line => [{ text: '  ' }, ...words]),
          ]),
        },
        { head: [[]], items: controls.map((each) => [chartLine(each)]) },
      ],
    };
  },
);

function certificateLine(
  { id, lines, takenInAt, takenInBy }: Certificate,
  { certificates, own }: Returned,
): Line {
  const theirs = own.filter(({ certificate }) => certificate === id);
  const counts = certificates.some((each) => each.id === id);
  return spans(
    [id, counts ? 'strong' : 'faint'],
    `  ${lines.length - theirs.length} samples${theirs.length === 0 ? '' : `; ${ownSampleWords(theirs)}`}, taken in ${takenInAt.slice(0, 10)} by ${takenInBy}`,
    [counts ? '' : '  superseded: kept, does not count', 'faint'],
  );
}

function waitingWords(missing: readonly string[]): string {
  return missing.length === 0
    ? 'Every bag that was sent has a result.'
    : `${missing.length} bags sent have no result yet, ${missing[0]} the first of them.`;
}

/** A line of the charts; one that tells of something off stands out too. */
function chartLine(text: string): Line {
  return line(text, / {2}(?:warn|fail|OVER|can't tell)$|^ {2}run /.test(text) ? 'warn' : 'plain');
}
