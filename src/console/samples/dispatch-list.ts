import { formatPlace } from '../../finding/place.ts';
import { sackRange } from '../../sampling/dispatch/dispatch.ts';
import { checkDispatches } from '../../sampling/dispatch/dispatch-check.ts';
import { type Dispatch, sentNumbers } from '../../sampling/dispatch/dispatch-noun.ts';
import { custodyLines } from '../../sampling/dispatch/dispatch-sheet.ts';
import { bagsOfHoles, toSend } from '../../standing/dispatches.ts';
import type { Listed, ListSection } from '../lists/listed.ts';
import type { State } from '../state.ts';
import type { Tone } from '../theme.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import { latestFirst } from './dispatch.ts';

/** What waits to be sent, what is wrong, and every dispatch with its chain of custody and its sacks, the latest first. */
export function dispatchList(state: State, width: number): Listed {
  const { project, documents } = state;
  const waiting = toSend(project.sampling, documents.values());
  const all = latestFirst(documents.values());
  const findings = checkDispatches(all, bagsOfHoles(documents.values()));
  const found = findings.map((each): readonly Line[] => [
    ...wrap(`${formatPlace(each.place)}: ${each.problem}`, width, 'alert'),
    ...indented(`${each.excerpt ?? ''} ${each.remedy}`.trim(), width, 'accent'),
  ]);
  return {
    title: `dispatch · ${waiting.length === 0 ? 'no bag waits' : `${waiting.length} bags wait`}`,
    sections: [
      { head: waitingHead(waiting, project.sampling.sackBags), items: [] },
      ...(found.length === 0 ? [] : [{ head: [[], line('Found', 'strong')], items: found }]),
      ...all.map((each) => section(state, each, width)),
    ],
  };
}

function waitingHead(waiting: readonly string[], sackBags: number): readonly Line[] {
  if (waiting.length === 0) return [line('Every bag that was issued is sent, or spoiled.', 'good')];
  return [
    spans(
      [`${waiting.length} bags wait`, 'strong'],
      `, ${waiting[0]} to ${waiting.at(-1)}: ${Math.ceil(waiting.length / sackBags)} sacks.`,
    ),
    line('Enter makes a dispatch of them.', 'faint'),
  ];
}

function section({ project }: State, dispatch: Dispatch, width: number): ListSection {
  const holder = dispatch.transfers.at(-1)?.to ?? `${dispatch.madeBy}, on site`;
  const where = dispatch.receipts.length > 0 ? 'received' : `with ${holder}`;
  const counts = `${dispatch.sacks.length} sacks, ${sentNumbers(dispatch).length} bags`;
  return {
    head: [
      [],
      spans([dispatch.name, 'strong'], ` to ${dispatch.laboratory} · ${where}`),
      line(`  ${counts}. Ctrl-G when they are handed over.`, 'faint'),
      ...custodyLines(dispatch).flatMap((each) => indented(each, width, 'plain')),
    ],
    items: dispatch.sacks.map((sack) => [
      spans(`  sack ${String(sack.sack).padStart(3)}  ${sackRange(project.sampling.numbers, sack)}`, [
        sack.seal === undefined ? '' : `  seal ${sack.seal}`,
        'faint',
      ]),
    ]),
  };
}

function indented(text: string, width: number, tone: Tone): readonly Line[] {
  return wrap(text, width - 2, tone).map((each): Line => [{ text: '  ' }, ...each]);
}
