import { resolve } from 'node:path';
import { readBeginning } from '../desk/arriving/read-beginning.ts';
import type { Outside } from '../desk/outside.ts';
import { HAND_WRITTEN } from '../files/project-folder.ts';
import { realDisk } from '../files/real-disk.ts';
import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import type { WrittenText } from '../handover/bundle/known-copies.ts';
import { namedIn, readByHand } from './at-project.ts';
import { type ReceiveAsked, receive } from './camp.ts';
import { freeFolder, makeProject } from './make-project.ts';
import { schemaFiles, shippedSchemas } from './program/shipped-schemas.ts';
import { EXIT, refuse, say } from './say.ts';

/**
 * Begins a project in a folder of its own from what arrives: the settings and the schema as the bundle brings them, then everything else as `receive`
 * takes it in. Where they can't be used, or whoever signs is not among their people, nothing is left behind.
 */
export async function receiveNew(outside: Outside, asked: ReceiveAsked): Promise<number> {
  const folder = resolve(asked.folder);
  const free = await freeFolder(folder, asked.folder);
  if (!free.ok) return refuse(outside, ...free.findings);
  const paths = asked.files.map((file) => resolve(file));
  const written = await readBeginning(realDisk, paths);
  if (!written.ok) return refuse(outside, ...written.findings);
  const made = await makeFrom(folder, written.value, asked);
  if (!made.ok) return refuse(outside, ...made.findings);
  say(
    outside,
    `Project ${made.value} begins in ${asked.folder}, with the settings and the schema of the bundle.`,
  );
  const code = await receive(outside, asked);
  if (code === EXIT.fine)
    say(outside, `Next: offsider ${asked.folder}. The rigs go on sending to it: offsider receive.`);
  return code;
}

/** The project made of the files written by hand, and looked at as it lies; its name. */
async function makeFrom(
  folder: string,
  written: readonly WrittenText[],
  asked: ReceiveAsked,
): Promise<Result<string>> {
  const fileAt = (name: string) => ({
    file: name,
    text: written.find(({ path }) => path === name)?.text ?? '',
  });
  const others = written
    .filter(({ path }) => !Object.values(HAND_WRITTEN).some((name) => name === path))
    .map(({ path, text }) => ({ file: path, text }));
  const schemas = schemaFiles(shippedSchemas()).filter(({ file }) =>
    others.every((each) => each.file !== file),
  );
  const files = {
    first: fileAt(HAND_WRITTEN.logging),
    more: [...others, ...schemas],
    last: fileAt(HAND_WRITTEN.project),
  };
  let name = '';
  let faults: readonly Finding[] = [];
  const made = await makeProject(folder, files, async () => {
    const loaded = await readByHand(folder);
    const named = loaded.ok ? namedIn(loaded.value.project, asked) : loaded;
    if (!named.ok) faults = named.findings;
    else name = named.value.project.settings.name;
    if (!named.ok) throw new Error('the files can’t be used');
  });
  if (faults.length > 0) return refused(...faults);
  return made.ok ? ok(name) : made;
}
