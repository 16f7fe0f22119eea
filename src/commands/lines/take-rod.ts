import { withCare } from '../../acts/hygiene.ts';
import { checkAgain, rodFits, rodMendedLater } from '../../acts/mend-later.ts';
import {
  checkRod,
  keptReadAsked,
  type RodAt,
  rodAsExpected,
  rodMended,
  rodNoted,
  withUnbagged,
} from '../../acts/rod.ts';
import { chosenWay, LOOK_WORDS, type RodRead, readRod } from '../../acts/rod-read.ts';
import type { Result } from '../../finding/finding.ts';
import type { Made } from '../../hole/commands/made.ts';
import { formatDepth } from '../../quantity/depth.ts';
import type { Document } from '../../record/document.ts';
import { wayWords } from '../../sampling/rod/effect.ts';
import { mostLikely } from '../../sampling/rod/likely.ts';
import { NEAR_SPLITTER } from '../../sampling/rod/mismatch.ts';
import { LOOKS, type NamedMismatch, type RodCheck } from '../../sampling/rod/rod-check.ts';
import { waitingMismatches } from '../../standing/mismatches.ts';
import { nextRod } from '../../standing/rods.ts';
import { type LinesAt, makerOf, submitMade, type Taken } from './submit-made.ts';

/** Places of a mismatch that a refusal lists. */
const PLACES_SAID = 3;

/**
 * Records a rod done. Bags that don’t match refuse it with the mismatches named, the look that tells them apart and how each is mended,
 * unless one is chosen (`fix:skipped`) or mismatches are to be noted.
 */
export async function takeRod(at: LinesAt, hole: Document, text: string): Promise<Taken> {
  const read = readRod(text);
  if (read === undefined) return unreadable(`;rod ${text}`);
  const { depthMm, care, mend, fits, insisted, ...seen } = read;
  const next = nextRod(hole);
  const rod: RodAt = { rod: next.rod, depthMm: depthMm ?? next.depthMm };
  const maker = makerOf(at.desk);
  const check = checkRod(at.project, at.desk.documents().values(), hole, rod, seen, maker.at);
  const asked = insisted === true || fits === true ? undefined : keptReadAsked(check);
  if (asked !== undefined) return { kind: 'refused', ...asked };
  if (check.agrees || fits === true)
    return submitMade(
      at,
      withUnbagged(
        withCare(
          at.project,
          hole,
          rodAsExpected(hole, rod, check, maker, fits ? { digits: text } : seen),
          care,
          maker,
        ),
        check,
      ),
    );
  if (mend !== undefined)
    return takeMending(at, check, mend, (named, way) =>
      withCare(at.project, hole, rodMended(hole, rod, named, way, maker), care, maker),
    );
  const mismatch = mismatchWords(check);
  if (!at.noteMismatches)
    return {
      kind: 'refused',
      problem: `rod ${rod.rod} to ${formatDepth(rod.depthMm)} m: ${mismatch}`,
      remedy: remedyOf(check),
    };
  const noted = await submitMade(
    at,
    withUnbagged(withCare(at.project, hole, rodNoted(hole, rod, check, seen, maker), care, maker), check),
  );
  return noted.kind === 'done' ? { kind: 'asked', said: noted.said, reasons: [mismatch] } : noted;
}

/** Mends the uppermost mismatch that was noted at a rod; without a choice (`;fix fix:skipped`) says what it may be. */
export async function takeMend(at: LinesAt, hole: Document, text: string): Promise<Taken> {
  const [waiting] = waitingMismatches(hole);
  if (waiting === undefined)
    return { kind: 'refused', problem: 'no bag mismatch is open', remedy: 'Take the line out.' };
  const read = readRod(text);
  if (read === undefined) return unreadable(`;fix ${text}`);
  const { depthMm: _depth, care: _care, mend, fits, insisted: _insisted, ...seen } = read;
  const check = checkAgain(at.project, at.desk.documents().values(), hole, waiting, seen);
  if (check.agrees || fits === true) return submitMade(at, rodFits(hole, waiting));
  if (mend === undefined)
    return {
      kind: 'refused',
      problem: `rod ${waiting[1].rod}: ${mismatchWords(check)}`,
      remedy: remedyOf(check),
    };
  const maker = makerOf(at.desk);
  return takeMending(at, check, mend, (named, way) =>
    rodMendedLater(at.project, hole, waiting, named, way, maker),
  );
}

async function takeMending(
  at: LinesAt,
  check: RodCheck,
  mend: NonNullable<RodRead['mend']>,
  mended: (named: NamedMismatch, way: number) => Result<Made>,
): Promise<Taken> {
  const way = chosenWay(check, mend);
  if (way !== undefined) return submitMade(at, mended(way.named, way.index));
  return {
    kind: 'refused',
    problem: `these bags can’t be fixed as ${mend.code}, place ${mend.place}`,
    remedy: remedyOf(check),
  };
}

const unreadable = (line: string): Taken => ({
  kind: 'refused',
  problem: `${line} can't be read`,
  remedy: 'Give the last digits of the bag, x6 for six bags, @54.5 for another depth.',
});

function mismatchWords({ row, named }: RodCheck): string {
  const filled = row.filter(({ kind }) => kind !== 'no sample');
  const last = (filled.at(-1) ?? row.at(-1))?.number ?? 'no bag';
  const likely = named[0] === undefined ? '' : `. ${mostLikely(named[0])}`;
  return `the bags don’t match: ${last} is expected last, ${filled.length} in the rod${likely}`;
}

/** The place of the likeliest mismatch as a person sees it, where it has more than a few. */
function placeWords([likeliest]: RodCheck['named']): string {
  if (likeliest?.asks === undefined || likeliest.ways.length < PLACES_SAID) return '';
  const example = typeof likeliest.ways[0]?.place === 'string' ? '163' : '46-47';
  return ` ${likeliest.asks} Type it as fix:${likeliest.code}=${example}.`;
}

function remedyOf({ named, look }: RodCheck): string {
  const likeliest = named[0]?.ground ?? 'Read the last calico again.';
  // Calicos can hang on the splitter or lie under it: no one is sent to look for one without the driller's word.
  const ground = likeliest.includes(NEAR_SPLITTER) ? likeliest : `${NEAR_SPLITTER} ${likeliest}`;
  const asked = look === undefined ? '' : ` To be sure: ${LOOKS[look]} Say it as ${LOOK_WORDS[look]}.`;
  const ways = named.flatMap(({ code, ways }) =>
    ways
      .slice(0, PLACES_SAID)
      .map((way, index) => `fix:${code}${index === 0 ? '' : `:${index + 1}`} = ${wayWords(way)}`),
  );
  return `${ground}${asked}${placeWords(named)} Then add how to fix it: ${ways.join(' · ')}. Or fits if the bags match and the reading was wrong, or give the rod without its digits.`;
}
