import { tickBags } from '../../acts/tick.ts';
import type { Bag } from '../../hole/bags.ts';
import { isOver } from '../../hole/header.ts';
import { headerOf, holeNouns } from '../../hole/hole.ts';
import type { Project } from '../../project/project.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { Document } from '../../record/document.ts';
import { nameOf } from '../../sampling/rod/unmended.ts';
import { stockOf } from '../../sampling/scheme/stock.ts';
import { checkTrays, compartmentAt } from '../../sampling/trays/trays.ts';
import { waitingMismatches } from '../../standing/mismatches.ts';
import { proposedOf } from '../../standing/proposed.ts';
import { bagsOnGround, type Coming, streamAheadOf } from '../../standing/stream.ts';
import { trayedHole, traysOf } from '../../standing/trays.ts';
import { found, type Listed, type ListSection } from '../lists/listed.ts';
import { chooseWord, upcomingLine } from '../log/panels/bags-panel.ts';
import { holeInHand, type State } from '../state.ts';
import { type Step, saying, still, submittingResult, type World } from '../step.ts';
import { type Theme, themeFor } from '../theme.ts';
import { type Line, line, spans } from '../widgets/line.ts';
import { ratesSection } from './rates-section.ts';
import { recoverySection, standsOutSection } from './recovery-section.ts';

/** The sample stream of a hole: what waits, the bags that come, ready to tick off, those issued, trays, stock, recovery by metre. */
export function bagsList(state: State, hole: Document, width: number, theme: Theme): Listed {
  const { project } = state;
  const ahead = streamAheadOf(project, hole, 400);
  const issued = bagsOnGround(hole);
  const last = issued.findLast((bag) => bag.byHand !== true)?.number;
  const standsOut = standsOutSection(project, hole, width);
  const sections = [
    whereSection(standsOut.items.length),
    waitsSection(project, hole, ahead.putOff),
    comingSection(project, hole, ahead.coming, width, theme),
    standsOut,
    issuedSection(issued, theme),
    traysSection(project, hole, theme),
    stockSection(state),
    ratesSection(state),
    recoverySection(project, hole, theme),
  ];
  return {
    title: `bags · ${issued.length} issued${last === undefined ? '' : `, last ${last}`} · ${ahead.numberedLeft} numbered left`,
    sections: sections.filter((each) => each.head.length + each.items.length > 0),
  };
}

/** The number in hand on the screen of bags; undefined where the cursor is on none that can be ticked off. */
export function numberInHand(state: State): string | undefined {
  const { screen } = state;
  const hole = holeInHand(state);
  if (screen.name !== 'bags' || hole === undefined) return undefined;
  const { sections } = found(
    bagsList(state, hole, 200, themeFor({ colour: false, ascii: true })),
    screen.find,
  );
  return sections.flatMap(({ items, about }) => items.map((_, index) => about?.[index]))[screen.cursor];
}

/** What is further down, by the words that find it. */
function whereSection(standOut: number): ListSection {
  const some = standOut === 0 ? '' : `${standOut} to look at`;
  return {
    head: [],
    items: [
      [
        spans(
          [' type to see: issued · chip trays · in stock · rates · recovery by metre', 'faint'],
          [some === '' ? '' : ` · ${some}`, 'warn'],
        ),
      ],
    ],
  };
}

/** Mismatches noted and not mended, controls put off, and controls that the log asks for. */
function waitsSection(
  project: Project,
  hole: Document,
  putOff: readonly {
    readonly number: string;
    readonly kind: string;
    readonly of?: string | undefined;
    readonly reason: string;
  }[],
): ListSection {
  const asked = proposedOf(project, hole).map((each) => [
    line(
      `${each.kind} wanted at ${each.number}, seen at ${formatInterval(each)}: ${each.why}; ;choose ${chooseWord(each.kind)}`,
      'accent',
    ),
  ]);
  const waits = putOff.map((put) => [
    line(
      `put off: ${put.kind} ${put.number}${put.of === undefined ? '' : ` of ${put.of}`} (${put.reason}); ;place puts it in`,
      'warn',
    ),
  ]);
  const noted = waitingMismatches(hole).map(([, rod]) => [
    line(
      `rod ${rod.rod} at ${formatDepth(rod.depthMm)} m: the bags don’t match, ${nameOf(rod)}? ;fix shows the ways`,
      'alert',
    ),
  ]);
  return { head: [], items: [...noted, ...waits, ...asked] };
}

function comingSection(
  project: Project,
  hole: Document,
  upcoming: readonly Coming[],
  width: number,
  theme: Theme,
): ListSection {
  const { logFromMm, state } = headerOf(hole);
  if (isOver(state)) return { head: [line(`the hole is ${state}: no bag comes`, 'strong')], items: [] };
  const ticked = new Set(holeNouns(hole, 'ticks').map(({ number }) => number));
  const lines = upcoming.map((bag): readonly Line[] => {
    const place =
      bag.fromMm === undefined || bag.kind !== 'primary' || bag.empty === true
        ? undefined
        : compartmentAt(project.sampling, logFromMm, bag.fromMm);
    const tray = place === undefined ? '' : `   tray ${place.tray}, ${place.compartment}`;
    const put = bag.material ?? (bag.of === undefined ? '' : `of ${bag.of}`);
    const late =
      bag.oneOf.length === 0
        ? ''
        : bag.chosen
          ? ' (chosen)'
          : ` (or ${bag.oneOf.filter((each) => each !== bag.kind).join(', ')})`;
    return [
      [
        ...spans(` [${ticked.has(bag.number) ? theme.signs.tick : ' '}] `),
        ...upcomingLine(bag, width),
        ...spans([`${tray}  ${put}${late}`.trimEnd(), 'faint']),
      ],
    ];
  });
  const none = [line('No numbered bags: ;numbered and the first and last number.', 'warn')];
  const left = upcoming.filter(({ number }) => !ticked.has(number)).length;
  const head = [line(`to tick off with Enter, ${left} of ${upcoming.length} left`, 'strong')];
  if (lines.length === 0) return { head, items: [none] };
  return { head, items: lines, about: upcoming.map(({ number }) => number) };
}

/** Bags as issued, the latest first: facts, that no amendment of the log renumbers. */
function issuedSection(issued: readonly Bag[], theme: Theme): ListSection {
  if (issued.length === 0) return { head: [], items: [] };
  const lines = [...issued].reverse().map((bag): readonly Line[] => {
    const { fromMm, toMm } = bag;
    const metre = fromMm === undefined || toMm === undefined ? '' : formatInterval({ fromMm, toMm });
    const more = [bag.of === undefined ? undefined : `of ${bag.of}`, bag.method, bag.material, bag.reason];
    return [
      spans(
        `[${theme.signs.tick}] ${bag.number}  ${metre.padEnd(10)} `,
        [
          bag.kind,
          bag.kind === 'primary'
            ? 'plain'
            : bag.kind === 'spoiled' || bag.kind === 'no sample'
              ? 'alert'
              : 'accent',
        ],
        [`  ${more.filter((each) => each !== undefined).join(', ')}`.trimEnd(), 'faint'],
      ),
    ];
  });
  return { head: [line('issued, the latest first', 'strong')], items: lines };
}

function traysSection(project: Project, hole: Document, theme: Theme): ListSection {
  const trays = traysOf(project, hole);
  if (trays.length === 0) return { head: [], items: [] };
  const lines = trays.map((tray): readonly Line[] => {
    const photo =
      tray.photo === undefined
        ? tray.done
          ? `NO photograph: ;photo ${tray.tray} and its file`
          : 'being filled'
        : `${theme.signs.tick} ${tray.photo}`;
    return [spans(`  ${tray.label}  `, [photo, tray.photo === undefined && tray.done ? 'warn' : 'faint'])];
  });
  const wrong = checkTrays(project.sampling, trayedHole(hole))
    .filter((each) => each.code !== 'tray-without-photo')
    .map((each) => [line(`  ${each.place.thing ?? ''}: ${each.problem} ${each.remedy}`, 'warn')]);
  return { head: [line('chip trays', 'strong')], items: [...lines, ...wrong] };
}

function stockSection(state: State): ListSection {
  const bags = [...state.documents.values()]
    .filter((each) => each.kind === 'hole')
    .flatMap((each) => holeNouns(each, 'bags'));
  const stock = stockOf(state.project.sampling, bags);
  return {
    head: stock.length === 0 ? [] : [line('controls in stock', 'strong')],
    items: stock.map((each) => [
      line(
        `  ${each.kind} ${each.material}: ${each.left} left of ${each.came}`,
        each.left <= 5 ? 'warn' : 'plain',
      ),
    ]),
  };
}

/** Enter on the screen of bags: the calico in hand is ticked off, or its tick taken away, and the next one is in hand. */
export function tickInHand(state: State, world: World): Step {
  const hole = holeInHand(state);
  const number = numberInHand(state);
  if (hole === undefined || number === undefined || state.screen.name !== 'bags')
    return still(saying(state, 'Enter ticks a bag that comes: go down to one.', 'warn'));
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const after = { ...state, screen: { ...state.screen, cursor: state.screen.cursor + 1 } };
  return submittingResult(state, hole, tickBags(state.project, hole, { first: number }, maker), after);
}
