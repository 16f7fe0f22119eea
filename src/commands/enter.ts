import { beginsUnlined, startWithRig } from '../acts/start.ts';
import type { Outside } from '../desk/outside.ts';
import { type Finding, ok, type Result } from '../finding/finding.ts';
import { headerOf } from '../hole/hole.ts';
import { type AtProject, atProject, holeNamed, type Shared } from './at-project.ts';
import { lineAsked, lineNotTaken, wrongUse } from './findings.ts';
import { linesOf } from './lines/lines-of.ts';
import { holeOf, type LinesAt, makerOf, submitMade, type Taken } from './lines/submit-made.ts';
import { takeLine } from './lines/take-line.ts';
import { rigNamed } from './rig-named.ts';
import { EXIT, refuse, say, sayTrouble } from './say.ts';

/** What `offsider enter` is given. */
export interface EnterAsked extends Shared {
  readonly hole: string;
  /** Start drilling the hole with this rig, where it is planned or suspended. */
  readonly rig?: string | undefined;
  /** Go on behind a line that is not taken, and record a rod whose bags do not agree, with the mismatch noted. */
  readonly keepGoing: boolean;
}

/**
 * Takes lines of the shorthand from stdin, as the entry line does. Each is durable before it is reported. Stops at the first line that is
 * not taken, with its number and what to do. Gives 1 where a line was not taken or was saved marked.
 */
export function enter(outside: Outside, asked: EnterAsked): Promise<number> {
  return atProject(outside, { ...asked, write: true }, async (at) => {
    const hole = holeNamed(at, asked.hole);
    if (!hole.ok) return refuse(outside, ...hole.findings);
    const { kind, id } = hole.value;
    const lines = { desk: at.desk, project: at.project, hole: { kind, id }, noteMismatches: asked.keepGoing };
    if (asked.rig !== undefined) {
      const unlined = beginsUnlined(at.project, hole.value, at.desk.documents().values());
      const started = await startDrillingWith(lines, asked.rig);
      if (!started.ok) return refuse(outside, ...started.findings);
      if (started.value.kind === 'done') say(outside, [started.value.said, ...unlined].join('\n'));
    }
    return takeLines(at, lines, asked.rig !== undefined);
  });
}

async function takeLines({ outside }: AtProject, at: LinesAt, mayBeNone: boolean): Promise<number> {
  let number = 0;
  let code: number = EXIT.fine;
  let unsaved: { readonly number: number; readonly text: string } | undefined;
  for await (const text of linesOf(outside.stdin)) {
    number += 1;
    // Given again because the disk had not taken it: it is in memory, and a second one would log the metre below.
    if (unsaved !== undefined && unsaved.text === text) {
      const { unsafeEdits } = await at.desk.retry();
      if (unsafeEdits > 0) continue;
      say(outside, `${number}: line ${unsaved.number} given again: it is saved, once`);
      unsaved = undefined;
      continue;
    }
    const taken = UNREADABLE.test(text) ? otherCoding(text) : await takeLine(at, text);
    unsaved = taken.kind === 'unsaved' ? { number, text } : unsaved;
    if (taken.kind === 'leave') break;
    if (taken.kind === 'nothing') continue;
    if (taken.kind === 'done') {
      say(outside, `${number}: ${taken.said}`);
      continue;
    }
    code = EXIT.findings;
    if (taken.kind === 'asked') say(outside, `${number}: ${taken.said}`);
    sayTrouble(outside, { findings: [lineFinding(at, number, text, taken)] });
    if (taken.kind !== 'asked' && !at.noteMismatches) break;
  }
  if (number === 0 && !mayBeNone) {
    const problem = 'no line came: nothing was logged';
    sayTrouble(outside, { findings: [wrongUse.at({ hole: at.hole.id }, { problem, remedy: WHERE_LINES })] });
    return EXIT.findings;
  }
  return code;
}

const WHERE_LINES =
  'Give the lines on standard input: offsider enter ZQRC014 < lines.txt. If that is what was done, look at the file: it is empty, or a folder.';

/** What stands for bytes that are no character of the encoding, and a character that no text holds. */
const UNREADABLE = /[\uFFFD\0]/;

/** A line with bytes of another encoding: logged as it is, each of its accented letters would be lost. */
function otherCoding(text: string): Extract<Taken, { readonly kind: 'refused' }> {
  return {
    kind: 'refused',
    problem: 'it holds bytes that are no text in UTF-8: the file was saved in another encoding',
    remedy: 'Save it as UTF-8, and give it again from this line on.',
    position: text.search(UNREADABLE),
  };
}

function lineFinding(
  at: LinesAt,
  line: number,
  excerpt: string,
  taken: Extract<Taken, { readonly kind: 'asked' | 'refused' | 'unsaved' }>,
): Finding {
  if (taken.kind === 'asked')
    return lineAsked.at(
      { file: 'line', line, hole: at.hole.id },
      {
        excerpt,
        problem: `${taken.reasons.join('; ')}${taken.marked === false ? '' : ': saved, marked ?'}`,
        remedy:
          taken.remedy ??
          'If it is so, a line with = alone settles the oldest; another time put a space and = at its end: a = glued to an item insists on that item alone.',
      },
    );
  const column = !('position' in taken) || taken.position === undefined ? {} : { column: taken.position + 1 };
  return lineNotTaken.at(
    { file: 'line', line, ...column, hole: at.hole.id },
    { excerpt, problem: taken.problem, remedy: taken.remedy },
  );
}

/** Starts drilling a planned or suspended hole with a rig, as opening it in the console does; a hole that is being drilled is left as it is. */
export async function startDrillingWith(at: LinesAt, rig: string): Promise<Result<Taken>> {
  const hole = holeOf(at);
  const name = rigNamed(at.project, rig);
  if (!name.ok) return name;
  const { state } = headerOf(hole);
  if (state !== 'planned' && state !== 'suspended') return ok({ kind: 'nothing' });
  const made = startWithRig(at.project, hole, name.value, makerOf(at.desk));
  return ok(await submitMade(at, made));
}
