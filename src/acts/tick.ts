import { ok, type Result, refused } from '../finding/finding.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, holeThings } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Change, Document } from '../record/document.ts';
import { numberLine } from '../sampling/numbers/number-line.ts';
import { numberAmong, numbersOfHole } from '../sampling/numbers/number-named.ts';
import { streamStateOf } from '../standing/stream.ts';

/** Ticks calicos of the hole's run off, by the last digits of one or of the first and the last; one that is ticked loses its tick, a range only gains them. */
export function tickBags(
  project: Project,
  hole: Document,
  said: { readonly first: string; readonly last?: string },
  maker: Maker,
): Result<Made> {
  const state = streamStateOf(hole);
  const line = numberLine(project.sampling.numbers, state.bagRuns);
  const none = {
    problem: 'no run labelled for this hole has these numbers',
    remedy: 'F3 lists the bags that come. Type last digits of two of them, the upper first: ;tick 163-170.',
  };
  const numbersHere = numbersOfHole(project.sampling, state);
  const place = (text: string) => ({ hole: headerOf(hole).name, thing: `bag ${text}` });
  const meant = (text: string) =>
    numberAmong(project.sampling.numbers, numbersHere, text, {
      kind: REFUSALS.notThere,
      place: place(text),
      ...none,
    });
  const [first, last] = [meant(said.first), meant(said.last ?? said.first)];
  if (!first.ok) return first;
  if (!last.ok) return last;
  const [from, to] = [line.placeOf(first.value), line.placeOf(last.value)];
  if (from === undefined || to === undefined || to < from)
    return refused(
      REFUSALS.notThere.at(
        place(said.last === undefined ? said.first : `${said.first} to ${said.last}`),
        none,
      ),
    );
  const numbers = Array.from({ length: to - from + 1 }, (_, index) => line.at(from + index) ?? '');
  const ticks = new Map(holeThings(hole, 'ticks').map(([id, { number }]) => [number, id]));
  const there = ticks.get(numbers[0] ?? '');
  if (said.last === undefined && there !== undefined)
    return ok({ what: `${numbers[0]} is no longer ticked off`, changes: [{ remove: ['ticks', there] }] });
  const changes = numbers
    .filter((number) => !ticks.has(number))
    .map(
      (number): Change => ({ put: ['ticks', maker.newId()], thing: { number, at: maker.at, by: maker.by } }),
    );
  return ok({
    what: numbers.length === 1 ? `${numbers[0]} ticked off` : `${numbers[0]} to ${numbers.at(-1)} ticked off`,
    changes,
  });
}
