import type { Project } from '../../project/project.ts';
import type { Desk } from '../contract.ts';
import { notHere } from '../not-here.ts';
import { chooseDocuments } from './choose.ts';
import type { Packed } from './pack.ts';

/** Packs documents by name, all where none is named. What packs and writes the mail is loaded only now: the console starts without it. */
export async function packNamed(
  desk: Desk,
  project: Project,
  names: readonly string[],
  withPaths: boolean,
): Promise<Packed> {
  const { pack } = await import('./pack.ts');
  return pack(desk, project, chooseDocuments(desk.documents().values(), names).documents, {
    withPaths,
    absent: names.length === 0 ? notHere(desk) : [],
  });
}
