import { things } from '../../record/document.ts';
import { outsideChanges } from '../../record/outside.ts';
import type { LoggingSchema } from '../../schema/logging-schema.ts';
import { type OpenQuestion, questionWords } from '../../standing/questions.ts';
import type { Desk } from '../contract.ts';
import type { Outcome } from '../take-in.ts';
import { untilSaved } from '../until-saved.ts';
import type { ArrivedDocument } from './arrival.ts';

/** What came of one document that arrived. */
export type TakenArrival = { readonly name: string; readonly from: string } & (
  | {
      readonly ok: true;
      readonly outcome: Outcome;
      /** Things that were edited in it by another program than ours. */
      readonly edited: number;
      /** Cells that both copies changed: ours stands. */
      readonly asked: readonly OpenQuestion[];
    }
  | { readonly ok: false; readonly problem: string }
);

/** Takes one document in and waits until it is on the medium. */
export async function takeArrival(
  desk: Desk,
  schema: LoggingSchema,
  { from, document }: ArrivedDocument,
): Promise<TakenArrival> {
  const about = { name: `${document.kind} ${document.id}`, from };
  const asked = new Set(things(desk.get(document) ?? document, 'questions').map(([id]) => id));
  const received = desk.receive(document);
  if (!received.ok) return { ...about, ok: false, problem: received.problem };
  const saved = await untilSaved(desk, received);
  if (!saved.ok) return { ...about, ok: false, problem: `it is not saved: ${saved.problem}` };
  const { outcome } = received;
  const taken = outcome !== 'same' && outcome !== 'older';
  return {
    ...about,
    ok: true,
    outcome,
    edited: taken ? outsideChanges(document).length : 0,
    asked: questionWords(schema, received.document).filter(({ id }) => !asked.has(id)),
  };
}
