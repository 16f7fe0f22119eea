import { waitingDown } from '../../hole/commands/waiting-events.ts';
import type { LineUp } from '../../hole/direction.ts';
import { holeThings } from '../../hole/hole.ts';
import { formatDepth, metres } from '../../quantity/depth.ts';
import { formatInterval } from '../../quantity/interval.ts';
import { instantMs, type Stamp } from '../../quantity/stamp.ts';
import type { Document } from '../../record/document.ts';
import { shiftThings } from '../../shift/shift.ts';
import { rodsDown } from '../../standing/hygiene.ts';
import { waitingWords } from '../../standing/waiting-words.ts';
import { depth, instant, integer, metresOf, optional, text, yesNo } from './column.ts';
import { HOLE } from './holes.ts';
import { defineTable, holesOf, type Source } from './table.ts';

const NOT_LOOKED = 'no one looked';

/** Rods as they were done. */
export const RODS = defineTable({
  name: 'rods',
  about: 'Rods done, from the top down, with the check of the bags and what was seen of the hygiene.',
  key: ['hole', 'depth_m', 'rod_id'],
  columns: {
    hole: HOLE,
    depth_m: depth('Depth drilled'),
    rod_id: text('Permanent id of the event'),
    from_m: depth('Bottom of the rod above, or where logging starts'),
    rod: integer('Rods in the hole'),
    done_at: instant('When it was done'),
    last_bag: optional(text('Number on the last calico'), 'not read'),
    bags: optional(integer('Bags counted since the rod before'), 'not counted'),
    bags_read: yesNo('The last calico or the count was read, and agreed or was settled'),
    mismatch: optional(text('What the check of the bags found'), 'they matched, or were not read'),
    mismatch_open: yesNo('The mismatch is noted and not fixed yet'),
    cyclone_clean: optional(yesNo('The cyclone was clean'), NOT_LOOKED),
    splitter_clean: optional(yesNo('The splitter was clean'), NOT_LOOKED),
    splitter_level: optional(yesNo('The splitter was level'), NOT_LOOKED),
    hole_blown_clean: optional(yesNo('The hole was blown clean'), NOT_LOOKED),
  },
  rows: (source) => holesOf(source).flatMap(rodRows),
});

function rodRows(hole: Document) {
  const rods = new Map(holeThings(hole, 'rods'));
  return rodsDown(hole).flatMap(({ id, fromMm, hygiene }) => {
    const rod = rods.get(id);
    if (rod === undefined) return [];
    return [
      {
        hole: hole.id,
        depth_m: metres(rod.depthMm),
        rod_id: id,
        from_m: metres(fromMm),
        rod: rod.rod,
        done_at: rod.at,
        last_bag: rod.lastBag,
        bags: rod.bags,
        bags_read: rod.read === true,
        mismatch: rod.mismatch,
        mismatch_open: rod.unmended === true,
        cyclone_clean: hygiene?.cycloneClean,
        splitter_clean: hygiene?.splitterClean,
        splitter_level: hygiene?.splitterLevel,
        hole_blown_clean: hygiene?.holeBlownClean,
      },
    ];
  });
}

/** What happened to a hole, besides its rods and shots. */
export const EVENTS = defineTable({
  name: 'events',
  about:
    'What happened to each hole besides rods and shots, in order: drilling begun, line-ups, stops, what the driller felt, bits, water, decisions with who was called, how the collar was left. Events that a logged row has are in geology_long; one that waits for its row is here.',
  key: ['hole', 'event_id', 'kind'],
  columns: {
    hole: HOLE,
    at: instant('When'),
    kind: text(
      'drilling begun, line-up, driller stopped, driller went on, cavity felt by the driller, no cavity felt by the driller, bit measured, water strike, event ahead of the log, collar left, or the kind of a decision (ended, ended early, extended, held, reopened)',
    ),
    event_id: text('Permanent id of the record'),
    depth_m: optional(depth('Depth that it is about'), 'it is about no depth'),
    words: optional(text('What is recorded of it'), 'nothing more is recorded'),
    by: optional(text('Who recorded or decided it'), 'not recorded'),
  },
  rows: (source) =>
    holesOf(source).flatMap((hole) =>
      [...holeEvents(hole), ...waterEvents(source, hole), ...aheadOfLog(source, hole)].toSorted(
        (a, b) => instantMs(a.at) - instantMs(b.at),
      ),
    ),
});

function holeEvents(hole: Document) {
  const event = (
    [event_id, kind]: readonly [string, string],
    at: Stamp,
    more: {
      readonly mm?: number | undefined;
      readonly words?: string | undefined;
      readonly by?: string | undefined;
    },
  ) => ({ hole: hole.id, at, kind, event_id, depth_m: metresOf(more.mm), words: more.words, by: more.by });
  return [
    ...holeThings(hole, 'drilling').map(([id, each]) =>
      event([id, 'drilling begun'], each.startedAt, {
        mm: each.fromMm,
        words: `${each.method}, ${each.rig}`,
      }),
    ),
    ...holeThings(hole, 'lineUps').map(([id, each]) =>
      event([id, 'line-up'], each.at, {
        words: lineUpWords(each),
        by: each.by,
      }),
    ),
    ...holeThings(hole, 'stops').flatMap(([id, each]) => [
      event([id, 'driller stopped'], each.at, { words: each.because, by: each.by }),
      ...(each.endedAt === undefined ? [] : [event([id, 'driller went on'], each.endedAt, {})]),
    ]),
    ...holeThings(hole, 'bits').map(([id, each]) =>
      event([id, 'bit measured'], each.at, { mm: each.depthMm, words: `${each.bitMm} mm`, by: each.by }),
    ),
    ...holeThings(hole, 'decisions').map(([id, each]) =>
      event([id, each.kind], each.at, {
        mm: each.depthMm,
        words: [
          `advice then: ${each.verdict}`,
          ...(each.toMm === undefined ? [] : [`to ${formatDepth(each.toMm)} m`]),
          ...(each.called === undefined ? [] : [`called ${each.called}`]),
          ...(each.reason === undefined ? [] : [each.reason]),
        ].join('; '),
        by: each.by,
      }),
    ),
    ...holeThings(hole, 'feltByDriller').map(([id, each]) =>
      event(
        [id, each.felt === 'cavity' ? 'cavity felt by the driller' : 'no cavity felt by the driller'],
        each.at,
        {
          mm: each.fromMm,
          words: `${formatInterval(each)} m${each.driller === undefined ? '' : `, ${each.driller}`}`,
          by: each.by,
        },
      ),
    ),
    ...holeThings(hole, 'collarStates').map(([id, each]) =>
      event([id, 'collar left'], each.at, { words: each.state, by: each.by }),
    ),
  ];
}

/** Events that no row holds yet: rows take them when they are logged. */
function aheadOfLog({ project }: Source, hole: Document) {
  return waitingDown(hole).map(([id, event]) => ({
    hole: hole.id,
    at: event.at,
    kind: 'event ahead of the log',
    event_id: id,
    depth_m: metres(event.atMm),
    words: waitingWords(project.schema, event),
    by: event.by,
  }));
}

/** How a line-up was set and decided on; one outside its tolerance says so, and why it was accepted. */
function lineUpWords({
  azimuthDeg,
  azimuthNorth,
  dipDeg,
  way,
  accepted,
  because,
  correction,
}: LineUp): string {
  const decided = !accepted
    ? `not accepted${correction === undefined ? '' : `; requested: ${correction}`}`
    : because === undefined
      ? 'accepted'
      : `accepted OUTSIDE tolerance, because: ${because}`;
  return `${azimuthDeg} ${azimuthNorth}, ${dipDeg}, by ${way}: ${decided}`;
}

/** Water strikes stand in the record of the shift; they are of a hole. */
function waterEvents({ documents }: Source, hole: Document) {
  return documents
    .filter(({ kind }) => kind === 'shift')
    .flatMap((shift) => shiftThings(shift, 'waterStrikes'))
    .filter(([, strike]) => strike.hole === hole.id)
    .map(([id, { at, depthMm, remark }]) => ({
      hole: hole.id,
      at,
      kind: 'water strike',
      event_id: id,
      depth_m: metresOf(depthMm),
      words: remark,
      by: undefined,
    }));
}
