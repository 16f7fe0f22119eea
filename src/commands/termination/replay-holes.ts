import type { Outside } from '../../desk/outside.ts';
import { headerOf } from '../../hole/hole.ts';
import type { Project } from '../../project/project.ts';
import { formatDepth } from '../../quantity/depth.ts';
import type { Document } from '../../record/document.ts';
import { situationOf } from '../../standing/advice.ts';
import { type Replay, replay } from '../../termination/advice/replay.ts';
import { rulesFor } from '../../termination/settings.ts';
import { EXIT, say, sayJson } from '../say.ts';
import { tableText } from '../table-text.ts';

/** Compares the rules with finished holes, as they went down: where they would have ended each, and what that saves or misses. */
export function replayHoles(
  outside: Outside,
  project: Project,
  holes: readonly Document[],
  documents: readonly Document[],
  json: boolean,
): number {
  const replays = holes.map((hole) => {
    const { name, plannedName } = headerOf(hole);
    const names = [hole.id, name, ...(plannedName === undefined ? [] : [plannedName])];
    return {
      hole: name,
      ...replay(rulesFor(project.settings.termination, names), situationOf(project, hole, documents)),
    };
  });
  if (json) sayJson(outside, replays);
  else
    say(
      outside,
      tableText([
        ['hole', 'ended m', 'rules end m', 'metres saved', 'first met'],
        ...replays.map(replayCells),
      ]),
    );
  return EXIT.fine;
}

function replayCells({
  hole,
  endedMm,
  wouldEndMm,
  savedMm,
  missedMm,
  rules,
}: Replay & { readonly hole: string }): readonly string[] {
  const never = missedMm === undefined ? 'never' : `never; ${formatDepth(missedMm)} m more`;
  return [
    hole,
    formatDepth(endedMm),
    wouldEndMm === undefined ? never : formatDepth(wouldEndMm),
    savedMm === undefined ? '' : formatDepth(savedMm),
    rules
      .flatMap(({ rule, firstMetMm }) =>
        firstMetMm === undefined ? [] : [`${rule.name} ${formatDepth(firstMetMm)} m`],
      )
      .join(', '),
  ];
}
