import type { Stamp } from '../../quantity/stamp.ts';
import type { Document } from '../../record/document.ts';
import { hashBytes } from '../../record/hash.ts';
import { writeZip } from '../zip/write-zip.ts';
import type { Manifest, PackedFile } from './manifest.ts';
import { bundleName, MANIFEST } from './names.ts';

/** A file to be packed, and the document that it holds where it holds one. */
export interface FileToPack {
  readonly file: string;
  readonly bytes: Uint8Array;
  readonly document?: Document;
  /** Of an increment: the entry that it goes on from. */
  readonly since?: string;
}

/** Where a bundle comes from. */
export interface Sender {
  readonly project: string;
  readonly replica: string;
  readonly by: string;
  readonly at: Stamp;
}

/** What a manifest says beyond the files in the bundle. */
export type Along = Pick<Manifest, 'everything' | 'holds' | 'written'>;

/** A bundle: its name without an ending, when it was packed, its bytes, their SHA-256, what is in it. */
export interface Bundle {
  readonly name: string;
  readonly at: Stamp;
  readonly bytes: Uint8Array;
  readonly sha256: string;
  readonly manifest: Manifest;
}

/** Packs files for another copy of the project. The same files, sender and time give the same bytes. */
export function makeBundle(
  { project, replica, by, at }: Sender,
  files: readonly FileToPack[],
  along: Along = {},
): Bundle {
  const manifest: Manifest = {
    format: along.holds === undefined ? 1 : 2,
    kind: 'bundle',
    project,
    replica,
    by,
    at,
    files: files.map(packedFile),
    ...along,
  };
  const text = `${JSON.stringify(manifest, null, 2)}\n`;
  const first = { name: MANIFEST, bytes: new TextEncoder().encode(text) };
  const bytes = writeZip([first, ...files.map(({ file: name, bytes }) => ({ name, bytes }))], at);
  const sha256 = hashBytes(bytes);
  return { name: bundleName(project, at, sha256), at, bytes, sha256, manifest };
}

function packedFile({ file, bytes, document, since }: FileToPack): PackedFile {
  const head = document?.history.at(-1)?.hash;
  return {
    file,
    bytes: bytes.length,
    sha256: hashBytes(bytes),
    ...(document === undefined ? {} : { entries: document.history.length }),
    ...(head === undefined ? {} : { head }),
    ...(since === undefined ? {} : { since }),
  };
}
