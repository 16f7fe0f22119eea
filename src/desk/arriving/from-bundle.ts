import { documentPath } from '../../files/document-file.ts';
import { readIncrement } from '../../files/increment-file.ts';
import { documentNameOf } from '../../files/list-documents.ts';
import { digestOf } from '../../files/load-document.ts';
import { documentBytes } from '../../files/print-document.ts';
import { copyIn } from '../../files/read-copy.ts';
import { DOCUMENT_LIMITS, readJsonText } from '../../files/read-json.ts';
import { type Finding, ok, type Result, refused } from '../../finding/finding.ts';
import { copyOf } from '../../handover/bundle/known-copies.ts';
import type { Manifest } from '../../handover/bundle/manifest.ts';
import { incrementPath, isTableName, SCHEMA_FOLDER } from '../../handover/bundle/names.ts';
import { otherProject } from '../../handover/bundle/open-bundle.ts';
import { bundleAltered } from '../../handover/findings.ts';
import type { UnpackedEntry } from '../../handover/zip/read-zip.ts';
import { heldBy } from '../../record/ancestry.ts';
import { completed } from '../../record/increment.ts';
import type { Arrival, ArrivedDocument, Home, LeftAlone } from './arrival.ts';
import { soundBundle } from './sound-bundle.ts';
import { leftByHand, writtenIn } from './written-in.ts';

/**
 * What a bundle holds, all of it or none: the archive, its manifest, each file's SHA-256 and each document's own shape are looked at
 * before anything is taken in. Its tables say the same again for other programs: they are not read. project.json and logging.json are written
 * by hand: theirs never replace ours. An increment that goes on from what is not here is left, by name, and the rest is taken.
 */
export function fromBundle(bytes: Uint8Array, file: string, home: Home): Result<Arrival> {
  const sound = soundBundle(bytes, file);
  if (!sound.ok) return sound;
  const { manifest, files } = sound.value;
  const other = otherProject(manifest, home.project, file);
  if (other !== undefined) return refused(other);
  const written = writtenIn(sound.value, file, home);
  if (!written.ok) return written;
  const read = files.filter(({ name }) => isDocument(name)).map((each) => documentIn(each, file, home));
  const refusals = read.flatMap((each) => (each.ok ? [] : each.findings));
  if (refusals.length > 0) return refused(...refusals);
  const documents = read.flatMap((each) => (each.ok && 'document' in each.value ? [each.value] : []));
  const lacking = read.flatMap((each) => (each.ok && 'what' in each.value ? [each.value] : []));
  const sender = copyOf(manifest, written.value.texts);
  return ok({
    documents,
    left: [...lacking, ...notSent(manifest, file, home), ...leftByHand(written.value, file, home)],
    senders: sender === undefined ? [] : [sender],
  });
}

const isDocument = (name: string): boolean =>
  name.includes('/') && !isTableName(name) && !name.startsWith(`${SCHEMA_FOLDER}/`);

function documentIn(entry: UnpackedEntry, file: string, home: Home): Result<ArrivedDocument | LeftAlone> {
  const { name, bytes } = entry;
  if (name.endsWith('.since.json')) return incrementIn(entry, file, home);
  const copy = copyIn(bytes, `${file}/${name}`);
  if (!copy.ok) return copy;
  if (documentPath(copy.value) === name) return ok({ from: file, document: copy.value });
  return refused(misplaced(file, name, `${copy.value.kind} ${copy.value.id}`));
}

/** The whole copy of an increment: put together with what is here, and read as a file of that copy would be. */
function incrementIn(
  { name, bytes }: UnpackedEntry,
  file: string,
  home: Home,
): Result<ArrivedDocument | LeftAlone> {
  const json = readJsonText(bytes, `${file}/${name}`, DOCUMENT_LIMITS);
  const increment = json.ok ? readIncrement(json.value) : json;
  if (!increment.ok) return increment;
  const { kind, id } = increment.value;
  if (incrementPath(documentPath(increment.value)) !== name)
    return refused(misplaced(file, name, `${kind} ${id}`));
  const made = completed(increment.value, home.get?.({ kind, id })?.history ?? [], digestOf);
  if (!made.ok)
    return ok({
      what: `${file}, ${kind} ${id}`,
      why: `it goes on from what is not here: ${made.problem}`,
      lacking: `Ask for it in full: offsider pack ${id} --whole.`,
    });
  const bytesOfAll = documentBytes({ document: made.document, position: { generation: 0, sequence: 0 } });
  const copy = copyIn(bytesOfAll, `${file}/${name}`);
  return copy.ok ? ok({ from: file, document: copy.value }) : copy;
}

/** What the sender holds, did not send because it was acknowledged, and is not here all the same: a copy that was lost since. */
function notSent(manifest: Manifest, file: string, home: Home): readonly LeftAlone[] {
  if (manifest.everything !== true || home.get === undefined) return [];
  const sent = new Set(manifest.files.map((each) => each.file));
  return (manifest.holds?.documents ?? []).flatMap(({ file: path, head }) => {
    if (sent.has(path) || sent.has(incrementPath(path))) return [];
    const name = documentNameOf(path);
    const ours = name === undefined ? undefined : home.get?.(name);
    if (name === undefined || (ours !== undefined && heldBy(ours.history).has(head))) return [];
    const why = `the sender holds it as acknowledged, and ${ours === undefined ? 'it is not here' : 'ours lacks edits of it'}`;
    const lacking = `Ask for it in full: offsider pack ${name.id} --whole.`;
    return [{ what: `${file}, ${name.kind} ${name.id}`, why, lacking }];
  });
}

function misplaced(file: string, name: string, says: string): Finding {
  return bundleAltered.at(
    { file, thing: name },
    {
      problem: `the file says that it is ${says}, its place says otherwise`,
      remedy: 'Have the bundle sent again. Nothing was changed.',
    },
  );
}
