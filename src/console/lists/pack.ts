import { chooseDocuments } from '../../desk/packing/choose.ts';
import type { State } from '../state.ts';
import { type Step, saying, still } from '../step.ts';
import { openOver } from './lists.ts';

/** Packs everything for camp. */
export function packAll(state: State): Step {
  return packSaid(state, '');
}

/** Packs the holes and shifts named for camp, and shows what comes of it. */
export function packSaid(state: State, text: string): Step {
  const names = text.split(/\s+/).filter((name) => name !== '');
  const [unknown] = chooseDocuments(state.documents.values(), names).unknown;
  if (unknown !== undefined)
    return still(
      saying(state, `No hole and no shift is called ${unknown}. ;pack alone packs everything.`, 'warn'),
    );
  const [over] = openOver('packed')(state);
  return [{ ...over, packed: undefined }, [{ do: 'pack', names }]];
}

/** Why nothing can be packed now; undefined where it can. */
export function packHindered(state: State): string | undefined {
  return state.readOnly;
}
