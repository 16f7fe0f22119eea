import { chooseDocuments } from '../../desk/packing/choose.ts';
import type { State } from '../state.ts';
import { type Step, saying, still } from '../step.ts';
import { openOver } from './lists.ts';

/** Packs everything for camp. */
export function packAll(state: State): Step {
  return packSaid(state, '');
}

const WITH_PATHS = /(?:^|\s)with paths\s*$/i;

/** Packs the holes and shifts named for camp, with the paths of a computer in their history where that is said, and shows what comes of it. */
export function packSaid(state: State, text: string): Step {
  const withPaths = WITH_PATHS.test(text);
  const names = text
    .replace(WITH_PATHS, '')
    .split(/\s+/)
    .filter((name) => name !== '');
  const [unknown] = chooseDocuments(state.documents.values(), names).unknown;
  if (unknown !== undefined)
    return still(
      saying(state, `No hole and no shift is called ${unknown}. ;pack alone packs everything.`, 'warn'),
    );
  const [over] = openOver('packed')(state);
  return [{ ...over, packed: undefined }, [{ do: 'pack', names, withPaths }]];
}

/** Why nothing can be packed now; undefined where it can. */
export function packHindered(state: State): string | undefined {
  return state.readOnly;
}
