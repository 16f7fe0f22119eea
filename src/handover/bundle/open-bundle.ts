import { type Finding, ok, type Result, refused } from '../../finding/finding.ts';
import { safeText } from '../../finding/safe-text.ts';
import { hashBytes } from '../../record/hash.ts';
import { bundleAltered, bundleOfAnother } from '../findings.ts';
import { dosTimeOf } from '../zip/layout.ts';
import { ZIP_LIMITS } from '../zip/limits.ts';
import { damaged, type Inflate } from '../zip/looked-at.ts';
import { readZip, type UnpackedEntry } from '../zip/read-zip.ts';
import type { Manifest } from './manifest.ts';
import { bundleNameFault, MANIFEST } from './names.ts';

/** A bundle unpacked in memory: the bytes of its manifest, and every other file; none of it is believed yet. */
export interface OpenedBundle {
  readonly manifest: UnpackedEntry;
  readonly files: readonly UnpackedEntry[];
}

/** True for bytes that begin as an archive does, whole or not. */
export function looksLikeBundle(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b;
}

/** Unpacks a bundle; `file` is what findings call it. */
export function openBundle(bytes: Uint8Array, file: string, inflate: Inflate): Result<OpenedBundle> {
  const entries = readZip({ bytes, file, limits: ZIP_LIMITS, nameFault: bundleNameFault, inflate });
  if (!entries.ok) return entries;
  const [manifest, ...files] = entries.value;
  if (manifest?.name !== MANIFEST)
    return refused(damaged(file, `its first file is not ${MANIFEST}: it is not a bundle of offsider`));
  return ok({ manifest, files });
}

/** Holds the files of a bundle to its manifest: every one that it names is there, as it names it, and no other. */
export function bundleFaults(opened: OpenedBundle, manifest: Manifest, file: string): readonly Finding[] {
  const altered = (problem: string, thing?: string): Finding =>
    bundleAltered.at(
      { file, ...(thing === undefined ? {} : { thing }) },
      { problem, remedy: 'Have the bundle sent again. Nothing was changed.' },
    );
  const names = opened.files.map((each) => each.name);
  if (names.join('\n') !== manifest.files.map((each) => each.file).join('\n'))
    return [altered('its files are not those that its manifest names')];
  if ([opened.manifest, ...opened.files].some((each) => each.dosTime !== dosTimeOf(manifest.at)))
    return [altered('its files are not of the time that its manifest says')];
  return opened.files.flatMap((each, index) => {
    const said = manifest.files[index];
    const same = said?.bytes === each.bytes.length && said.sha256 === hashBytes(each.bytes);
    return same ? [] : [altered('it is not what was packed: its SHA-256 differs', each.name)];
  });
}

/** Why a bundle is none of this project; undefined where it is. */
export function otherProject(
  manifest: Pick<Manifest, 'project'>,
  project: string | undefined,
  file: string,
): Finding | undefined {
  if (project === undefined || manifest.project === project) return undefined;
  return bundleOfAnother.at(
    { file },
    {
      problem: `it is of the project ${safeText(manifest.project)}; this one is ${project}`,
      remedy:
        'Give the folder of that project with --project. If it was renamed, give both the same name in project.json. Nothing was changed.',
    },
  );
}
