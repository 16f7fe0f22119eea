import { documentPath } from '../../files/document-file.ts';
import { copiesMerged, editedOutside } from '../../files/findings.ts';
import type { Finding, Severity } from '../../finding/finding.ts';
import { formatPlace } from '../../finding/place.ts';
import { isMerge } from '../../record/ancestry.ts';
import type { Entry } from '../../record/document.ts';
import type { LoggingSchema } from '../../schema/logging-schema.ts';
import type { State } from '../state.ts';
import type { Tone } from '../theme.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import { rememberLast } from '../widgets/remember.ts';
import { entryLines } from './history-list.ts';
import { type Listed, oneSection } from './listed.ts';

const TONES: Readonly<Record<Severity, Tone>> = { fault: 'alert', warning: 'warn', note: 'faint' };

/** Findings that an entry of the history records, and how it is told. */
const RECORDED: Readonly<Record<string, (entry: Entry) => boolean>> = {
  [editedOutside.code]: (entry) => entry.outside === true,
  [copiesMerged.code]: isMerge,
};

/** What was found on opening the project and of its files since: where, what is wrong, what to do and what was kept, worst first. */
export function foundList({ found, documents, project }: State, width: number): Listed {
  return foundIn(found, documents, project.schema, width);
}

const foundIn = rememberLast(listFound);

function listFound(
  found: State['found'],
  documents: State['documents'],
  schema: LoggingSchema,
  width: number,
): Listed {
  if (found.length === 0)
    return oneSection('found on opening', [[line('Nothing: every file is as it was left.', 'good')]]);
  const ranked = (['fault', 'warning', 'note'] as const).flatMap((severity) =>
    found.filter((finding) => finding.severity === severity),
  );
  const items = ranked.map((finding) => [
    ...findingLines(finding, width),
    ...changedOutside(documents, schema, finding, width),
  ]);
  return oneSection(`found on opening, worst first · ${found.length}`, items);
}

function findingLines(
  { severity, place, problem, excerpt, remedy }: Finding,
  width: number,
): readonly Line[] {
  return [
    spans([severity.toUpperCase(), TONES[severity]], '  ', [formatPlace(place), 'strong']),
    ...indented(problem, width, 'plain'),
    ...(excerpt === undefined ? [] : indented(excerpt, width, 'faint')),
    ...indented(remedy, width, 'accent'),
  ];
}

function indented(text: string, width: number, tone: Tone): readonly Line[] {
  return wrap(text, width - 4, tone).map((each): Line => [{ text: '    ' }, ...each]);
}

/** Of a file that was edited outside, or that another copy lay over: what came of it, thing by thing, from the entry that records it. */
function changedOutside(
  documents: State['documents'],
  schema: LoggingSchema,
  finding: Finding,
  width: number,
): readonly Line[] {
  const recorded = RECORDED[finding.code];
  if (recorded === undefined) return [];
  const document = [...documents.values()].find((each) => documentPath(each) === finding.place.file);
  const entry = document?.history.findLast(recorded);
  if (document === undefined || entry === undefined) return [];
  return entryLines(schema, document, entry, width).slice(1);
}
