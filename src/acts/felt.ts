import { ok, type Result, refused } from '../finding/finding.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { closedRefusal } from '../hole/commands/open-hole.ts';
import type { FeltByDriller } from '../hole/drilled.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, holeNouns, holeThings, rowsDown } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { depthFromMm, formatDepth } from '../quantity/depth.ts';
import { formatInterval, type Interval } from '../quantity/interval.ts';
import type { Change, Document, Thing } from '../record/document.ts';
import { holdsVoid } from '../schema/cautions.ts';
import type { LoggingSchema } from '../schema/logging-schema.ts';
import { feltWords } from '../standing/felt.ts';
import { bitAtLeastMm, headsOf } from '../standing/heads.ts';
import { rodsDown } from '../standing/hygiene.ts';
import { speakerProblem } from './speakers.ts';

type People = Project['settings']['people'];

/** What was felt, where it is said over which metres, and who said it. */
type Felt = Pick<FeltByDriller, 'felt' | 'driller'> & { readonly over?: Interval };

/**
 * The driller's word, as an observation of its own. Without metres it is of now: from the last rod done to the deepest row. Where nothing is
 * logged below the last rod a cavity may be of now or of that rod, and the metres are asked; that none was felt is of that rod. A cavity may be felt up to a rod's length below
 * what is known of the bit: the rods drop before anybody counts them. That none was felt counts for metres that are known to be drilled only.
 */
export function recordFelt(
  { schema, settings }: Project,
  hole: Document,
  { over, felt: what, driller }: Felt,
  maker: Maker,
  insisted = false,
): Result<Made> {
  const closed = closedRefusal(hole) ?? notTheDriller(settings.people, hole, { felt: what, driller }, maker);
  if (closed) return refused(closed);
  const { name, logFromMm, rodMm } = headerOf(hole);
  const bitMm = bitAtLeastMm(hole);
  const metres = over ?? metresMeant(hole, what);
  if (metres === undefined) return refused(whichMetres(hole, what));
  const lowestMm = what === 'cavity' ? bitMm + rodMm : bitMm;
  if (metres.toMm > lowestMm || metres.fromMm < logFromMm)
    return refused(
      REFUSALS.badInterval.at(
        { hole: name, fromMm: metres.fromMm, toMm: metres.toMm },
        {
          problem: `${formatInterval(metres)} is not all in the hole: it runs from ${formatDepth(logFromMm)} m, and the bit is at ${formatDepth(bitMm)} m by the rods and the log`,
          remedy:
            what === 'cavity'
              ? `Give metres from ${formatDepth(logFromMm)} to ${formatDepth(lowestMm)} m, a rod below that at most.`
              : 'Give metres that are drilled, like ;solid 44-50; of the rod in hand, say it when the rod is done (F2).',
        },
      ),
    );
  const voids = what === 'solid' ? voidsLogged(schema, hole, metres) : [];
  if (voids.length > 0 && (driller === undefined || !insisted))
    return refused(solidOverVoid(settings.people, hole, metres, voids));
  const said = { felt: what, ...(driller === undefined ? {} : { driller }) };
  const { change, felt } = feltChange(said, metres, maker);
  return ok({ what: `${feltWords(felt)}${cavitiesLeft(schema, hole, felt)}`, changes: [change] });
}

/** A name that can't be the driller's is refused: what the hole rests on is the driller's own word. */
function notTheDriller(
  people: People,
  hole: Document,
  { felt: word, driller }: Pick<Felt, 'felt' | 'driller'>,
  maker: Maker,
) {
  const problem = driller === undefined ? undefined : speakerProblem(people, maker.by, driller, 'driller');
  return problem === undefined
    ? undefined
    : REFUSALS.asked.at(
        { hole: headerOf(hole).name },
        {
          problem,
          remedy: `Give the driller’s name behind the metres; without one ;${word} means the driller at the rig.`,
        },
      );
}

function solidOverVoid(people: People, hole: Document, metres: Interval, voids: readonly Interval[]) {
  const name = people.find(({ role }) => role === 'driller')?.name ?? 'and the driller’s name';
  return REFUSALS.asked.at(
    { hole: headerOf(hole).name, ...metres },
    {
      problem: `a void is logged at ${voids.map(formatInterval).join(', ')}`,
      remedy: `Ask the driller which metres were solid. If all were: ;solid ${typed(metres)} ${name} =`,
    },
  );
}

/** Metres logged as a void within an interval, rows that touch as one. */
function voidsLogged(schema: LoggingSchema, hole: Document, { fromMm, toMm }: Interval): readonly Interval[] {
  const found: Interval[] = [];
  for (const [, row] of rowsDown(hole)) {
    if (row.fromMm >= toMm || row.toMm <= fromMm || !holdsVoid(schema, row.cells)) continue;
    const last = found.at(-1);
    if (last?.toMm === row.fromMm) found[found.length - 1] = { fromMm: last.fromMm, toMm: row.toMm };
    else found.push({ fromMm: row.fromMm, toMm: row.toMm });
  }
  return found;
}

/** What a word that none was felt does not take back: a cavity felt on some of its metres, a void logged there. Both stand, and the danger with them. */
export function cavitiesLeft(
  schema: LoggingSchema,
  hole: Document,
  felt: Pick<FeltByDriller, 'fromMm' | 'toMm' | 'felt'>,
): string {
  if (felt.felt === 'cavity') return '';
  const isIn = (each: Pick<Interval, 'fromMm' | 'toMm'>) =>
    each.fromMm < felt.toMm && each.toMm > felt.fromMm;
  const left = holeNouns(hole, 'feltByDriller').filter((each) => each.felt === 'cavity' && isIn(each));
  const cavities = left.map(
    (each) =>
      `; the cavity felt at ${formatInterval(each)} still counts (;cavity ${typed(each)} wrong if it was none)`,
  );
  const voids = voidsLogged(schema, hole, felt).map(
    (each) => `; the void logged at ${formatInterval(each)} still counts`,
  );
  return [...cavities, ...voids].join('');
}

/** A cavity on just these metres taken out of the record, by hand: nothing else takes one back. */
export function takeOutCavity(hole: Document, over: Interval): Result<Made> {
  const closed = closedRefusal(hole);
  if (closed) return refused(closed);
  const cavities = holeThings(hole, 'feltByDriller').filter(([, each]) => each.felt === 'cavity');
  const here = cavities.filter(([, { fromMm, toMm }]) => fromMm === over.fromMm && toMm === over.toMm);
  if (here.length === 0) {
    const there = cavities.map(([, each]) => `;cavity ${typed(each)} wrong`);
    return refused(
      REFUSALS.notThere.at(
        { hole: headerOf(hole).name, fromMm: over.fromMm, toMm: over.toMm },
        {
          problem: `no cavity is recorded at just ${formatInterval(over)}`,
          remedy:
            there.length === 0
              ? 'Nothing to take out; a void that was logged is mended in its row.'
              : `Give its own metres: ${there.join(', or ')}.`,
        },
      ),
    );
  }
  return ok({
    what: `cavity at ${formatInterval(over)} taken out: it was none`,
    changes: here.map(([id]) => ({ remove: ['feltByDriller', id] })),
  });
}

/** What a word without metres is about; undefined where that can't be told. */
function metresMeant(hole: Document, what: FeltByDriller['felt']): Interval | undefined {
  const { drilledMm } = headsOf(hole);
  const bitMm = bitAtLeastMm(hole);
  if (bitMm > drilledMm) return { fromMm: drilledMm, toMm: bitMm };
  return what === 'solid' ? rodsDown(hole).at(-1) : undefined;
}

/** Asks for the metres, with both that can be meant: the metre being drilled and the rod that is done. */
function whichMetres(hole: Document, word: FeltByDriller['felt']) {
  const { name, intervalMm } = headerOf(hole);
  const { drilledMm } = headsOf(hole);
  const now = { fromMm: drilledMm, toMm: depthFromMm(drilledMm + intervalMm) };
  const rod = rodsDown(hole).at(-1);
  const lastRod = rod === undefined ? '' : `;${word} ${typed(rod)} of the last rod`;
  const ofNow = word === 'cavity' ? `;${word} ${typed(now)} of now` : '';
  const ways = [ofNow, lastRod].filter((each) => each !== '');
  return REFUSALS.badInterval.at(
    { hole: name, fromMm: drilledMm, toMm: drilledMm },
    {
      problem: `which metres? Nothing is logged below the last rod, ${formatDepth(drilledMm)} m`,
      remedy: ways.length === 0 ? 'Say it when the first rod is done.' : `Type ${ways.join(', or ')}.`,
    },
  );
}

/** An interval as it is typed. */
function typed({ fromMm, toMm }: Pick<Interval, 'fromMm' | 'toMm'>): string {
  return `${formatDepth(fromMm)}-${formatDepth(toMm)}`;
}

/** The same as a change, for a rod that is being recorded. */
export function feltChange(
  said: Pick<FeltByDriller, 'felt' | 'driller'>,
  { fromMm, toMm }: Interval,
  maker: Maker,
): { readonly felt: FeltByDriller; readonly change: Change } {
  const felt: FeltByDriller = { fromMm, toMm, ...said, at: maker.at, by: maker.by };
  return { felt, change: { put: ['feltByDriller', maker.newId()], thing: felt as Thing } };
}
