import { BAG_KINDS } from '../../hole/bags.ts';
import { REFUSALS } from '../../hole/findings.ts';
import type { Document } from '../../record/document.ts';
import { numbersMeant, numbersOfHole, severalEnd } from '../../sampling/numbers/number-named.ts';
import { type ScannedAt, scanCheck } from '../../sampling/rod/scan.ts';
import { readScan } from '../../shorthand/sample-commands.ts';
import { otherHoles, streamStateOf } from '../../standing/stream.ts';
import { draftOf } from '../draft.ts';
import type { Prompt } from '../prompt.ts';
import type { Shown } from '../screens/shown.ts';
import type { State } from '../state.ts';
import { type Step, saying, sayingFinding, still } from '../step.ts';
import { line, wrap } from '../widgets/line.ts';

/**
 * A bag read by a scanner, or typed whole: what it is, without touching the entry line. With `;scan 46` on the line it is compared with that
 * place. At a rod check it is what was read there.
 */
export function scanBag(state: State, hole: Document, number: string): Step {
  const { prompt } = state;
  if (prompt?.kind === 'rod' || prompt?.kind === 'mismatch')
    return still({ ...state, prompt: { ...prompt, draft: draftOf(number) } });
  const [, place] = /^;scan +(.*\S) *$/.exec(state.draft.text) ?? [];
  const read = place === undefined ? undefined : readScan(`${place} ${number}`);
  const lies = read !== undefined && 'does' in read && read.does === 'scan' ? read : undefined;
  return scanPlaced(state, hole, number, lies);
}

/** A bag compared with where it lies, its number whole or its last digits; without a place only its number is looked at. */
export function scanPlaced(state: State, hole: Document, text: string, lies: ScannedAt | undefined): Step {
  const stream = streamStateOf(hole);
  const { sampling } = state.project;
  const [number = text, ...other] = numbersMeant(sampling.numbers, numbersOfHole(sampling, stream), text);
  if (other.length > 0)
    return still(
      sayingFinding(
        state,
        REFUSALS.notThere.at({ thing: `bag ${text}` }, severalEnd(text, [number, ...other])),
      ),
    );
  const others = otherHoles(state.documents.values(), hole);
  const { known, named } = scanCheck(sampling, stream, number, lies, others);
  if (named !== undefined) {
    const said = `${number} is ${known}: ${named.name}. ${named.happened}`;
    const prompt = { kind: 'scanned', number, said, ground: named.ground } as const;
    return still({ ...state, prompt, message: undefined });
  }
  const after = state.prompt?.kind === 'scanned' ? { ...state, prompt: undefined } : state;
  const belongs = lies === undefined ? '' : ', and is where it belongs';
  return still(saying(after, `${number} is ${isBag(known) ? 'the ' : ''}${known}${belongs}.`, 'good'));
}

/** True where the words begin with the kind of a bag, and are not those of a number without one. */
function isBag(known: string): boolean {
  return BAG_KINDS.some((kind) => known.startsWith(kind));
}

/** What a scanned bag that is not where or what it should be is, and its remedy. */
export function scannedShown(
  _state: State,
  { number, said, ground }: Extract<Prompt, { readonly kind: 'scanned' }>,
  width: number,
): Shown {
  return {
    title: `bag ${number}`,
    lines: [...wrap(said, width, 'alert'), ...wrap(ground, width)],
    foot: [line('Enter goes on, so does any other key. Nothing is changed.', 'faint')],
  };
}
