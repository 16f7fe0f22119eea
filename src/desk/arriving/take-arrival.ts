import { safeText } from '../../finding/safe-text.ts';
import { type Document, things } from '../../record/document.ts';
import { outsideChanges } from '../../record/outside.ts';
import type { Desk } from '../contract.ts';
import type { Outcome } from '../take-in.ts';
import type { ArrivedDocument } from './arrival.ts';

/** A cell that both copies changed: which, and what each says. Ours stands. */
export interface CellAsked {
  readonly cell: string;
  readonly ours: string;
  readonly theirs: string;
}

/** What came of one document that arrived. */
export type TakenArrival = { readonly name: string; readonly from: string } & (
  | {
      readonly ok: true;
      readonly outcome: Outcome;
      /** Things that were edited in it by another program than ours. */
      readonly edited: number;
      readonly asked: readonly CellAsked[];
    }
  | { readonly ok: false; readonly problem: string }
);

/** Takes one document in and waits until it is on the medium. */
export async function takeArrival(desk: Desk, { from, document }: ArrivedDocument): Promise<TakenArrival> {
  const about = { name: `${document.kind} ${document.id}`, from };
  const asked = new Set(things(desk.get(document) ?? document, 'questions').map(([id]) => id));
  const received = desk.receive(document);
  if (!received.ok) return { ...about, ok: false, problem: received.problem };
  const saved = await received.durable;
  if (!saved.ok) return { ...about, ok: false, problem: `it is not saved: ${saved.problem}` };
  const { outcome } = received;
  const taken = outcome !== 'same' && outcome !== 'older';
  return {
    ...about,
    ok: true,
    outcome,
    edited: taken ? outsideChanges(document).length : 0,
    asked: things(received.document, 'questions')
      .filter(([id]) => !asked.has(id))
      .map(([, question]) => cellAsked(received.document, question)),
  };
}

function cellAsked(document: Document, question: Readonly<Record<string, unknown>>): CellAsked {
  const { table, thing, field, ours, theirs } = question;
  const row = document.tables[String(table)]?.[String(thing)];
  const where =
    typeof row?.fromMm === 'number' && typeof row.toMm === 'number'
      ? `${row.fromMm / 1000}–${row.toMm / 1000} m`
      : String(thing);
  const said = field === undefined ? '' : ` ${String(field).replace(/^cells\./, '')}`;
  return { cell: `${table} ${where}${said}`, ours: inWords(ours), theirs: inWords(theirs) };
}

/** A value as it is said: `SHA`, `level 2`, `nothing`. */
function inWords(value: unknown): string {
  if (value === null || value === undefined) return 'nothing';
  if (typeof value !== 'object') return safeText(String(value));
  const [first, ...more] = Object.entries(value);
  if (first === undefined || more.length > 0 || typeof first[1] === 'object')
    return safeText(JSON.stringify(value));
  const [what, said] = first;
  return what === 'code' || what === 'absent' ? inWords(said) : `${what} ${inWords(said)}`;
}
