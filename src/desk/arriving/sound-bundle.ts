import { inflateExactly } from '../../files/inflate.ts';
import { holdToShape } from '../../files/json-shape.ts';
import { OTHER_LIMITS, readJsonText } from '../../files/read-json.ts';
import { ok, type Result, refused } from '../../finding/finding.ts';
import { type Manifest, manifestShape } from '../../handover/bundle/manifest.ts';
import { bundleFaults, openBundle } from '../../handover/bundle/open-bundle.ts';
import type { UnpackedEntry } from '../../handover/zip/read-zip.ts';

/** A bundle whose archive, manifest and every file's SHA-256 hold. */
export interface SoundBundle {
  readonly manifest: Manifest;
  readonly files: readonly UnpackedEntry[];
}

/** Opens a bundle and holds all of it to its manifest; `file` is what findings call it. */
export function soundBundle(bytes: Uint8Array, file: string): Result<SoundBundle> {
  const opened = openBundle(bytes, file, inflateExactly);
  if (!opened.ok) return opened;
  const { manifest: first, files } = opened.value;
  const json = readJsonText(first.bytes, `${file}/${first.name}`, OTHER_LIMITS);
  const manifest = json.ok ? holdToShape<Manifest>(json.value, manifestShape as never) : json;
  if (!manifest.ok) return manifest;
  const faults = bundleFaults(opened.value, manifest.value, file);
  return faults.length > 0 ? refused(...faults) : ok({ manifest: manifest.value, files });
}
