import { noteDeed } from '../acts/crew-note.ts';
import type { Outside } from '../desk/outside.ts';
import { htmlText } from '../finding/sheet-text.ts';
import { WHAT_IT_IS_NOT_HTML } from '../finding/what-it-is-not.ts';
import { isDay, localDate, localTime } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { latestShift } from '../standing/activity.ts';
import { type CompletedNote, completedNotes, isOfSwing } from '../standing/completed-notes.ts';
import { crewNote, type NotePart } from '../standing/crew-note.ts';
import { swingStart } from '../standing/swing.ts';
import { shiftNamed } from './activity.ts';
import { type AtProject, atProject, type Shared } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { makerOf } from './lines/submit-made.ts';
import { EXIT, refuse, say, sayFile, sayJson, sayTrouble } from './say.ts';
import { submitOn } from './submit.ts';

/**
 * The note for the next crew: what was handed over last and is not acknowledged yet, so that whoever comes can read it after beginning a
 * shift of their own; else the one completed in this shift, else the draft as it would be now.
 */
export function note(
  outside: Outside,
  asked: Shared & {
    readonly as: 'text' | 'json' | 'html';
    /** First day of the swing that is handed over, or `true` for the one that goes on; one shift where it is not given. */
    readonly swing?: string | true | undefined;
    /** Whole name of the shift that the note was completed on. */
    readonly shift?: string | undefined;
  },
): Promise<number> {
  return atProject(outside, asked, async (at) => {
    const { desk, project } = at;
    const rig = rigOf(at);
    const documents = [...desk.documents().values()];
    const swingFrom = asked.swing === true ? swingStart(documents, rig) : asked.swing;
    if (swingFrom !== undefined && !isDay(swingFrom))
      return refuse(
        outside,
        wrongUse.at(
          { thing: `--swing ${swingFrom}` },
          { problem: 'it is not a day', remedy: 'Give the first day of the swing: 2026-03-10.' },
        ),
      );
    const named = shiftNamed(at, asked.shift);
    if (!named.ok) return refuse(outside, ...named.findings);
    const draft = crewNote(project, documents, rig, desk.now(), swingFrom);
    const found = noteShown(at, named.value?.id, asked.swing);
    if (found === undefined && named.value !== undefined)
      return refuse(
        outside,
        wrongUse.at(
          { thing: `shift ${named.value.id}` },
          {
            problem: 'no such note was completed in it',
            remedy: 'Leave --shift out for the draft as it is now.',
          },
        ),
      );
    const completed = found?.note;
    const title = `${project.settings.name}, ${rig}: note for the next crew${asked.swing === undefined ? '' : ', swing'}, ${localDate(desk.now())} ${localTime(desk.now())}`;
    const signed = signedText(found);
    const added = completed?.added === undefined ? [] : [{ title: 'Added', lines: [completed.added] }];
    const parts = [...(completed?.draft ?? draft), ...added];
    if (asked.as === 'json') sayJson(outside, { draft, completed });
    else if (asked.as === 'html') sayFile(outside, page(title, signed, parts));
    else say(outside, [title, signed, ...parts.flatMap(partText)].join('\n'));
    return EXIT.fine;
  });
}

/** The note that was completed, in the shift named or as {@link note} says; undefined where the draft is to be shown. */
function noteShown(
  at: AtProject,
  shift: string | undefined,
  swing: string | true | undefined,
): CompletedNote | undefined {
  const { desk } = at;
  const rig = shift?.split('_')[0] ?? rigOf(at);
  const alike = completedNotes(desk.documents().values(), rig).filter(
    (each) =>
      isOfSwing(each) === (swing !== undefined) &&
      (typeof swing !== 'string' || each.note.swingFrom === swing),
  );
  if (shift !== undefined) return alike.findLast((each) => each.shift.id === shift);
  const last = alike.at(-1);
  const isShown = last?.shift.id === shiftOf(at)?.id || last?.note.acknowledgedBy === undefined;
  return isShown ? last : undefined;
}

function signedText(found: CompletedNote | undefined): string {
  if (found === undefined) return 'Draft: not completed yet.';
  const { shift, note } = found;
  const read =
    note.acknowledgedBy === undefined
      ? 'not acknowledged yet: offsider note acknowledge'
      : `acknowledged by ${note.acknowledgedBy}`;
  return `Completed by ${note.by} in ${shift.id}, ${localDate(note.at)} ${localTime(note.at)}; ${read}.`;
}

/** Completes or acknowledges the note, as the same line in the console does. */
export function noteLine(outside: Outside, asked: Shared & { readonly line: string }): Promise<number> {
  return atProject(outside, { ...asked, write: true }, async (at) => {
    const { desk, project } = at;
    const shift = shiftOf(at);
    if (shift === undefined)
      return refuse(
        outside,
        wrongUse.at(
          { thing: `rig ${rigOf(at)}` },
          { problem: 'no shift is recorded', remedy: 'Begin one: offsider activity begin 06:00.' },
        ),
      );
    const made = noteDeed(project, [...desk.documents().values()], shift, asked.line, makerOf(desk));
    if (made === undefined) throw new Error(`not about the note: ${asked.line}`);
    if (!made.ok) {
      sayTrouble(outside, { findings: made.findings });
      return EXIT.findings;
    }
    const failed = await submitOn(at, made.value);
    if (failed !== undefined) return failed;
    say(outside, `${made.value.document.id}: ${made.value.made.what}`);
    return EXIT.fine;
  });
}

const rigOf = ({ project }: AtProject): string => project.settings.rigs[0]?.name ?? '';

/** The latest shift of the rig as it is stored. */
function shiftOf(at: AtProject): Document | undefined {
  const latest = latestShift(at.project, at.desk.documents().values(), rigOf(at), at.desk.now());
  return latest === undefined ? undefined : at.desk.get({ kind: 'shift', id: latest.id });
}

const partText = ({ title, lines }: NotePart): readonly string[] => [
  '',
  title,
  ...lines.map((each) => `  ${each}`),
];

/** A page to print, with room for two signatures. */
function page(title: string, signed: string, parts: readonly NotePart[]): string {
  const sections = parts.map(
    (part) =>
      `<section><h2>${htmlText(part.title)}</h2><ul>${part.lines.map((each) => `<li>${htmlText(each)}</li>`).join('')}</ul></section>`,
  );
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>${htmlText(title)}</title>
<style>body { font: 11pt sans-serif; margin: 1.5cm; color: #000; background: #fff } section { break-inside: avoid }
h2 { font-size: 12pt; margin: 0.8em 0 0.2em } ul { margin: 0 }</style></head><body>
<h1>${htmlText(title)}</h1><p>${htmlText(signed)}</p>
${sections.join('\n')}
<p>Outgoing: ______________________ Incoming: ______________________</p>
${WHAT_IT_IS_NOT_HTML}
</body></html>
`;
}
