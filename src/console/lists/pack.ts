import { chooseDocuments } from '../../desk/packing/choose.ts';
import type { State } from '../state.ts';
import { type Step, saying, still } from '../step.ts';
import { openOver } from './lists.ts';

/** Packs everything for camp. */
export function packAll(state: State): Step {
  return packSaid(state, '');
}

const WITH_PATHS = /(?:^|\s)with paths(?=\s|$)/i;
const WHOLE = /(?:^|\s)whole(?=\s|$)/i;
const FOR = /(?:^|\s)for\s+(\S+)/i;

/**
 * Packs the holes and shifts named, and shows what comes of it: `whole` in full whatever was acknowledged, `for NOK` for the copy of that
 * person, `with paths` though a history holds paths of a computer.
 */
export function packSaid(state: State, text: string): Step {
  const withPaths = WITH_PATHS.test(text);
  const whole = WHOLE.test(text);
  const forWhom = FOR.exec(text)?.[1];
  const names = [WITH_PATHS, WHOLE, FOR]
    .reduce((rest, words) => rest.replace(words, ' '), text)
    .split(/\s+/)
    .filter((name) => name !== '');
  const [unknown] = chooseDocuments(state.documents.values(), names).unknown;
  if (unknown !== undefined)
    return still(
      saying(state, `No hole and no shift is called ${unknown}. ;pack alone packs everything.`, 'warn'),
    );
  const [over] = openOver('packed')(state);
  return [{ ...over, packed: undefined }, [{ do: 'pack', asked: { names, withPaths, whole, forWhom } }]];
}

/** Why nothing can be packed now; undefined where it can. */
export function packHindered(state: State): string | undefined {
  return state.readOnly;
}
