import { plannedHere } from '../../acts/line-up.ts';
import type { LineUpContext } from '../../acts/line-up-order.ts';
import type { Document } from '../../record/document.ts';
import { EMPTY_DRAFT } from '../draft.ts';
import type { State } from '../state.ts';
import type { LineUpForm } from './line-up-form.ts';

const EMPTY_FORM: LineUpForm = {
  step: 'cautions',
  typed: EMPTY_DRAFT,
  taken: { compass: [] },
  scroll: 0,
  readTo: 0,
  page: 0,
  unread: false,
};

/** The line-up of a hole as far as it has come. */
export function formOf(state: State, hole: Document): LineUpForm {
  return state.lineUps.get(hole.id) ?? EMPTY_FORM;
}

/** What the steps of the line-up are read against; undefined for a hole without a planned direction. */
export function lineUpContext(state: State, hole: Document): LineUpContext | undefined {
  const here = plannedHere(state.project, hole, state.now);
  return here === undefined
    ? undefined
    : {
        project: state.project,
        hole,
        documents: [...state.documents.values()],
        here,
        person: state.person,
        now: state.now,
      };
}

/** The state with the line-up of a hole as it is now. */
export function withForm(state: State, hole: Document, form: LineUpForm): State {
  return { ...state, lineUps: new Map([...state.lineUps, [hole.id, form]]), message: undefined };
}
