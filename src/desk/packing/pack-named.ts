import type { Project } from '../../project/project.ts';
import type { Desk } from '../contract.ts';
import { notHere } from '../not-here.ts';
import { chooseDocuments } from './choose.ts';
import type { Packed } from './pack.ts';

/** What is asked of packing. */
export interface PackAsked {
  /** Names of holes and shifts; all where none is named. */
  readonly names: readonly string[];
  readonly withPaths: boolean;
  /** In full, whatever was acknowledged. */
  readonly whole: boolean;
  /** For the copy of a person; for camp where no one is named. */
  readonly forWhom?: string | undefined;
}

/** Packs documents by name, all where none is named. What packs and writes the mail is loaded only now: the console starts without it. */
export async function packNamed(desk: Desk, project: Project, asked: PackAsked): Promise<Packed> {
  const { pack } = await import('./pack.ts');
  const { names, ...options } = asked;
  const everything = names.length === 0;
  return pack(desk, project, chooseDocuments(desk.documents().values(), names).documents, {
    ...options,
    everything,
    absent: everything ? notHere(desk) : [],
  });
}
