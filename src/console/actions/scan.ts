import { BAG_KINDS } from '../../hole/bags.ts';
import type { Document } from '../../record/document.ts';
import { scanCheck } from '../../sampling/scan.ts';
import { otherHoles, streamStateOf } from '../../standing/stream.ts';
import { draftOf } from '../draft.ts';
import type { State } from '../state.ts';
import { type Step, saying, still } from '../step.ts';

/** A bag read by a scanner, or typed whole: what it is, without touching the entry line. At a rod check it is what was read there. */
export function scanBag(state: State, hole: Document, number: string): Step {
  const { prompt } = state;
  if (prompt?.kind === 'rod' || prompt?.kind === 'mismatch')
    return still({ ...state, prompt: { ...prompt, draft: draftOf(number) } });
  const others = otherHoles(state.documents.values(), hole);
  const { known, named } = scanCheck(state.project.sampling, streamStateOf(hole), number, undefined, others);
  return still(
    named === undefined
      ? saying(state, `${number} is ${isBag(known) ? 'the ' : ''}${known}.`, 'good')
      : saying(state, `${number} is ${known}: ${named.name}. ${named.ground}`, 'alert'),
  );
}

/** True where the words begin with the kind of a bag, and are not those of a number without one. */
function isBag(known: string): boolean {
  return BAG_KINDS.some((kind) => known.startsWith(kind));
}
