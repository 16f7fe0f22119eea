import { documentPath } from '../files/document-file.ts';
import { nameFromKey } from '../files/list-documents.ts';
import type { Desk } from './contract.ts';

/** A document that the project has and that is not, or not whole, among those that were read. */
export interface NotHere {
  readonly kind: string;
  readonly id: string;
  readonly file: string;
  readonly why: string;
}

/** Documents whose files are missing or can't be read: no list and no bundle has them, so each list and bundle says so. */
export function notHere(desk: Desk): readonly NotHere[] {
  return [...desk.closed].flatMap(([key, why]) => {
    const name = nameFromKey(key);
    return name === undefined ? [] : [{ kind: name.kind, id: name.id, file: documentPath(name), why }];
  });
}
