import { type Chosen, settleQuestion } from '../acts/settle.ts';
import type { Outside } from '../desk/outside.ts';
import { headerOf } from '../hole/hole.ts';
import type { Document } from '../record/document.ts';
import { projectForHole } from '../standing/hole-schema.ts';
import { type OpenQuestion, questionWords, sidesOf } from '../standing/questions.ts';
import { type AtProject, atProject, type Shared } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { EXIT, refuse, say, sayJson } from './say.ts';
import { submitOn } from './submit.ts';

/** What `offsider questions` is given. */
export interface QuestionsAsked extends Shared {
  /** The question to settle by its number in the list; none lists them. */
  readonly number?: string | undefined;
  readonly chosen?: Chosen | undefined;
  readonly json: boolean;
}

/** Lists the questions that merges left open in any document, or settles one of them and lists the rest. 1 where any is open still. */
export function questions(outside: Outside, asked: QuestionsAsked): Promise<number> {
  const { number, chosen } = asked;
  const isSettling = number !== undefined || chosen !== undefined;
  return atProject(outside, { ...asked, write: isSettling }, async (at) => {
    if (isSettling) {
      const failed = await settle(at, number, chosen);
      if (failed !== undefined) return failed;
    }
    const open = openIn(at);
    const listed = open.map(({ document, question }, index) => ({
      number: index + 1,
      document: nameOf(document),
      cell: question.cell,
      [question.labels[0]]: question.ours,
      [question.labels[1]]: question.theirs,
      writtenBy: question.writers,
      stands: question.stands,
    }));
    if (asked.json) sayJson(outside, { questions: listed });
    else if (listed.length === 0) say(outside, 'No question is open.');
    if (!asked.json)
      for (const [index, { document, question }] of open.entries())
        say(outside, `${index + 1}: ${nameOf(document)}, ${oneLine(question)}`);
    return listed.length === 0 ? EXIT.fine : EXIT.findings;
  });
}

/** A question with its two sides in one line. */
export function oneLine(question: OpenQuestion): string {
  const { cell, labels, now, stands, twice } = question;
  const [one, other] = sidesOf(question);
  const since = twice !== undefined || now === 'ours' ? '' : `, now ${stands}`;
  return `${cell}: ${labels[0]} ${one}, ${labels[1]} ${other}${since}`;
}

async function settle(
  at: AtProject,
  number: string | undefined,
  chosen: Chosen | undefined,
): Promise<number | undefined> {
  const wanted = /^[0-9]{1,6}$/.test(number ?? '') ? openIn(at)[Number(number) - 1] : undefined;
  if (wanted === undefined || chosen === undefined)
    return refuse(
      at.outside,
      wrongUse.at(
        { thing: `question ${number ?? ''}`.trim() },
        {
          problem: wanted === undefined ? 'no open question has that number' : 'which one to keep is missing',
          remedy:
            'offsider questions lists them; settle one like: offsider questions 1 --with theirs, or first or second of two rows or rods',
        },
      ),
    );
  const { document, question } = wanted;
  const documents = at.desk.documents().values();
  const made = settleQuestion(at.project, document, question.id, chosen, at.desk.newId, documents);
  if (!made.ok) return refuse(at.outside, ...made.findings);
  const failed = await submitOn(at, { document: wanted.document, made: made.value });
  if (failed === undefined) say(at.outside, `${nameOf(wanted.document)}: ${made.value.what}`);
  return failed;
}

/** Open questions of every document in the order of their keys. */
function openIn({ desk, project }: AtProject): readonly {
  readonly document: Document;
  readonly question: OpenQuestion;
}[] {
  return [...desk.documents()]
    .sort(([a], [b]) => a.localeCompare(b, 'en', { numeric: true }))
    .flatMap(([, document]) => {
      const { schema } = document.kind === 'hole' ? projectForHole(project, document) : project;
      return questionWords(schema, document).map((question) => ({ document, question }));
    });
}

function nameOf(document: Document): string {
  return document.kind === 'hole' ? headerOf(document).name : `${document.kind} ${document.id}`;
}
