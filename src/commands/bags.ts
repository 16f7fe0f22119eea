import type { Outside } from '../desk/outside.ts';
import { headerOf, holeNouns } from '../hole/hole.ts';
import { formatInterval } from '../quantity/interval.ts';
import type { Document } from '../record/document.ts';
import { stockOf } from '../sampling/stock.ts';
import { streamAhead } from '../sampling/stream.ts';
import { streamStateOf } from '../standing/stream.ts';
import { type AtProject, atProject, holeNamed, holesOf } from './at-project.ts';
import { EXIT, refuse, say, sayJson } from './say.ts';
import { upcomingText } from './state-text.ts';
import { tableText } from './table-text.ts';

/** What `offsider bags` is given. */
export interface BagsAsked {
  readonly folder: string;
  readonly hole: string;
  readonly json: boolean;
}

/** Bags listed ahead of the drilled head. */
const AHEAD = 20;

/** Lists the bags of a hole as issued, what comes next, what is put off, and the controls left in stock. */
export function bags(outside: Outside, asked: BagsAsked): Promise<number> {
  return atProject(outside, { folder: asked.folder }, async (at) => {
    const hole = holeNamed(at, asked.hole);
    if (!hole.ok) return refuse(outside, ...hole.findings);
    const facts = bagFacts(at, hole.value);
    if (asked.json) sayJson(outside, facts);
    else say(outside, bagsText(facts));
    return EXIT.fine;
  });
}

function bagFacts({ desk, project }: AtProject, hole: Document) {
  const rodMm = headerOf(hole).rodMm;
  const ahead = streamAhead(project.sampling, streamStateOf(hole), { count: AHEAD, rodMm });
  return {
    issued: holeNouns(hole, 'bags'),
    upcoming: ahead.upcoming,
    putOff: ahead.putOff,
    numberedLeft: ahead.numberedLeft,
    stock: stockOf(
      project.sampling,
      holesOf(desk).flatMap((each) => holeNouns(each, 'bags')),
    ),
  };
}

function bagsText({ issued, upcoming, putOff, numberedLeft, stock }: ReturnType<typeof bagFacts>): string {
  const rows = issued.map(({ number, kind, fromMm, toMm, of, method, material, reason }) => [
    number,
    kind,
    fromMm === undefined || toMm === undefined ? '' : formatInterval({ fromMm, toMm }),
    [of === undefined ? undefined : `of ${of}`, method, material, reason]
      .filter((part) => part !== undefined)
      .join(', '),
  ]);
  return [
    tableText([['number', 'kind', 'metres', ''], ...rows]),
    '',
    'Next:',
    ...upcoming.map((each) => `  ${upcomingText(each)}`),
    ...putOff.map((put) => `  ${put.number}  ${put.kind} put off: ${put.reason}`),
    `  ${numberedLeft} numbered bags left`,
    '',
    'Stock of controls:',
    ...stock.map((each) => `  ${each.kind} ${each.material}: ${each.left} of ${each.came} left`),
  ].join('\n');
}
