import { documentPath } from '../../files/document-file.ts';
import { inflateExactly } from '../../files/inflate.ts';
import { holdToShape } from '../../files/json-shape.ts';
import { HAND_WRITTEN } from '../../files/project-folder.ts';
import { copyIn } from '../../files/read-copy.ts';
import { OTHER_LIMITS, readJsonText } from '../../files/read-json.ts';
import { ok, type Result, refused } from '../../finding/finding.ts';
import { type Manifest, manifestShape } from '../../handover/bundle/manifest.ts';
import { isTableName } from '../../handover/bundle/names.ts';
import { bundleFaults, openBundle, otherProject } from '../../handover/bundle/open-bundle.ts';
import { bundleAltered } from '../../handover/findings.ts';
import type { UnpackedEntry } from '../../handover/zip/read-zip.ts';
import type { Arrival, ArrivedDocument, Home, LeftAlone } from './arrival.ts';

/**
 * What a bundle holds, all of it or none: the archive, its manifest, each file's SHA-256 and each document's own shape are looked at
 * before anything is taken in. Its tables say the same again for other programs: they are not read. project.json and logging.json are written by hand: theirs never replace ours.
 */
export function fromBundle(bytes: Uint8Array, file: string, home: Home): Result<Arrival> {
  const opened = openBundle(bytes, file, inflateExactly);
  if (!opened.ok) return opened;
  const json = readJsonText(
    opened.value.manifest.bytes,
    `${file}/${opened.value.manifest.name}`,
    OTHER_LIMITS,
  );
  const manifest = json.ok ? holdToShape<Manifest>(json.value, manifestShape as never) : json;
  if (!manifest.ok) return manifest;
  const faults = bundleFaults(opened.value, manifest.value, file);
  if (faults.length > 0) return refused(...faults);
  const other = otherProject(manifest.value, home.project, file);
  if (other !== undefined) return refused(other);
  const left = opened.value.files.flatMap((each) => handWritten(each, file, home));
  const read = opened.value.files
    .filter(({ name }) => name.includes('/') && !isTableName(name))
    .map((each) => documentIn(each, file));
  const refusals = read.flatMap((each) => (each.ok ? [] : each.findings));
  if (refusals.length > 0) return refused(...refusals);
  return ok({ documents: read.flatMap((each) => (each.ok ? [each.value] : [])), left });
}

function documentIn({ name, bytes }: UnpackedEntry, file: string): Result<ArrivedDocument> {
  const copy = copyIn(bytes, `${file}/${name}`);
  if (!copy.ok) return copy;
  if (documentPath(copy.value) === name) return ok({ from: file, document: copy.value });
  const { kind, id } = copy.value;
  return refused(
    bundleAltered.at(
      { file, thing: name },
      {
        problem: `the file says that it is ${kind} ${id}, its place says otherwise`,
        remedy: 'Have the bundle sent again. Nothing was changed.',
      },
    ),
  );
}

function handWritten({ name, bytes }: UnpackedEntry, file: string, home: Home): readonly LeftAlone[] {
  const text = new TextDecoder().decode(bytes);
  if (name.includes('/') || text === home.handWritten[name]) return [];
  const logging = name === HAND_WRITTEN.logging ? { logging: text } : {};
  const why = 'it differs from ours, which was written by hand and is kept';
  return [{ what: `${file}, ${name}`, why, ...logging }];
}
