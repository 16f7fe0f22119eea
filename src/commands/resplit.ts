import type { RunLabelled } from '../acts/number-bags.ts';
import { makeResplit, proposeResplit } from '../acts/resplit.ts';
import type { Outside } from '../desk/outside.ts';
import { csvText } from '../finding/sheet-text.ts';
import { headerOf } from '../hole/hole.ts';
import { resplitTable } from '../sampling/laboratory/resplit-list.ts';
import { atProject, holeNamed, type Shared } from './at-project.ts';
import { makerOf } from './lines/submit-made.ts';
import { EXIT, refuse, say, sayFile } from './say.ts';
import { submitOn } from './submit.ts';
import { tableText } from './table-text.ts';

/** What `offsider resplit` is given. */
export interface ResplitAsked extends Shared {
  readonly hole: string;
  readonly numbers?: RunLabelled | undefined;
  /** Number the metres; else they are only listed. */
  readonly take: boolean;
  readonly csv: boolean;
}

/** Lists the single metres that composites ask for: where they lie, how they are kept, which numbers and controls they get; numbers them where that is asked. */
export function resplit(outside: Outside, asked: ResplitAsked): Promise<number> {
  return atProject(outside, { ...asked, write: asked.take }, async (at) => {
    const hole = holeNamed(at, asked.hole);
    if (!hole.ok) return refuse(outside, ...hole.findings);
    const { desk, project } = at;
    const proposed = proposeResplit(project, desk.documents().values(), hole.value, asked.numbers);
    if (!proposed.ok) return refuse(outside, ...proposed.findings);
    if (asked.take) {
      const made = makeResplit(project, hole.value, proposed.value, makerOf(desk));
      if (!made.ok) return refuse(outside, ...made.findings);
      const failed = await submitOn(at, { document: hole.value, made: made.value });
      if (failed !== undefined) return failed;
    }
    const table = resplitTable(proposed.value);
    if (asked.csv) sayFile(outside, csvText(table));
    else if (table.length === 1)
      say(outside, `No composite of ${headerOf(hole.value).name} asks for single metres.`);
    else {
      const { unnumbered } = proposed.value;
      const next = asked.take
        ? 'Numbered, in one edit.'
        : unnumbered > 0
          ? `${unnumbered} metres have no numbered bag left: give --numbers with bags that are labelled.`
          : 'Nothing is numbered yet: --take numbers them.';
      say(outside, [tableText(table.map((row) => row.map(String))), next].join('\n'));
    }
    return EXIT.fine;
  });
}
