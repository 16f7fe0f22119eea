import { headerOf } from '../../hole/hole.ts';
import type { Document } from '../../record/document.ts';
import { projectForHole } from '../../standing/hole-schema.ts';
import { type OpenQuestion, questionWords, sidesOf } from '../../standing/questions.ts';
import type { State } from '../state.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import { found, type Listed, type ListSection, oneSection } from './listed.ts';

/** The questions that merges left open, by document: what it is about, what each copy says, what stands. */
export function questionsList(state: State, width: number): Listed {
  const sections = asked(state).map(
    ({ document, questions }): ListSection => ({
      head: [line(nameOf(document), 'strong')],
      items: questions.map((question) => questionLines(question, width)),
      about: questions.map(({ id }) => `${document.kind} ${document.id} ${id}`),
    }),
  );
  if (sections.length === 0)
    return oneSection('questions', [[line('Nothing is open: no question waits to be settled.', 'good')]]);
  const count = sections.reduce((sum, { items }) => sum + items.length, 0);
  return { title: `two copies say different things · ${count} open`, sections };
}

/** The question that the cursor is on, among those that hold what is searched for. */
export function questionInHand(state: State): OpenQuestion | undefined {
  const { screen } = state;
  if (screen.name !== 'questions') return undefined;
  // Which of them are found does not hang on where their lines break.
  const { sections } = found(questionsList(state, 200), screen.find);
  const about = sections.flatMap((section) => section.about ?? [])[screen.cursor];
  return asked(state)
    .flatMap(({ questions }) => questions)
    .find(({ document, id }) => `${document.kind} ${document.id} ${id}` === about);
}

function asked(state: State) {
  return [...state.documents.values()]
    .map((document) => {
      const { schema } = document.kind === 'hole' ? projectForHole(state.project, document) : state.project;
      return { document, questions: questionWords(schema, document) };
    })
    .filter(({ questions }) => questions.length > 0);
}

function nameOf(document: Document): string {
  return document.kind === 'hole' ? headerOf(document).name : `${document.kind} ${document.id}`;
}

function questionLines(question: OpenQuestion, width: number): readonly Line[] {
  const { cell, labels, now, stands, twice } = question;
  const [one, other] = sidesOf(question);
  return [
    spans('  ', [cell, 'strong']),
    ...said(`← ${labels[0].padEnd(8)}`, one, width),
    ...said(`→ ${labels[1].padEnd(8)}`, other, width),
    ...(twice !== 'rows' ? [] : said('Ctrl-B both  ', 'split the metre between them', width)),
    ...(now === 'ours' ? [] : said('changed since, now  ', stands, width)),
  ];
}

function said(label: string, text: string, width: number): readonly Line[] {
  const indent = 4 + label.length;
  return wrap(text, width - indent).map(
    (each, index): Line =>
      index === 0
        ? [{ text: '    ' }, { text: label, tone: 'accent' }, ...each]
        : [{ text: ' '.repeat(indent) }, ...each],
  );
}
