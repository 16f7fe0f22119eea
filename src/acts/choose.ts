import { ok, type Result, refused } from '../finding/finding.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { formatDepth } from '../quantity/depth.ts';
import type { Document, Thing } from '../record/document.ts';
import type { ControlKind } from '../sampling/settings.ts';
import { stream } from '../sampling/stream/stream.ts';
import { proposedOf } from '../standing/proposed.ts';
import { streamStateOf } from '../standing/stream.ts';

/**
 * Chooses the kind of a number that comes: the one that the log asks for this kind, else the next whose kind is chosen late. The
 * reason is the person's, or the log's where it asks. Refuses where no number can be this kind, or no one gives a reason.
 */
export function chooseControl(
  project: Project,
  hole: Document,
  said: { readonly kind: ControlKind; readonly reason?: string },
  maker: Maker,
): Result<Made> {
  const { kind } = said;
  const asked = proposedOf(project, hole).find((each) => each.kind === kind);
  const coming = [...stream(project.sampling, streamStateOf(hole))];
  const slot = coming.find((each) =>
    asked === undefined
      ? each.oneOf.includes(kind) && !(each.chosen && each.kind === kind)
      : each.number === asked.number,
  );
  const reason = said.reason ?? asked?.why;
  if (slot === undefined) return refused(noSlot(hole, kind));
  if (reason === undefined) return refused(noReason(hole, kind));
  const when = slot.inMm === 0 ? 'now' : `in ${formatDepth(slot.inMm)} m`;
  return ok({
    what: `${slot.number} is to be a ${kind}, ${when}: ${reason}`,
    changes: [
      {
        put: ['controlChoices', maker.newId()],
        thing: { number: slot.number, kind, reason, at: maker.at } as Thing,
      },
    ],
  });
}

const noSlot = (hole: Document, kind: ControlKind) =>
  REFUSALS.notThere.at(
    { hole: headerOf(hole).name },
    {
      problem: `none of the numbered bags that come can be chosen as a ${kind}`,
      remedy: 'Number more bags (;numbered), or look at the slots in project.json.',
    },
  );

const noReason = (hole: Document, kind: ControlKind) =>
  REFUSALS.notThere.at(
    { hole: headerOf(hole).name },
    {
      problem: `the log does not ask for a ${kind} now, so the choice needs a reason`,
      remedy: `Say why: ;choose ${kind === 'field duplicate' ? 'duplicate' : kind} past the lode.`,
    },
  );
