import { digestOf } from '../../files/load-document.ts';
import { HAND_WRITTEN } from '../../files/project-folder.ts';
import { type Finding, ok, type Result, refused } from '../../finding/finding.ts';
import type { WrittenText } from '../../handover/bundle/known-copies.ts';
import type { Manifest } from '../../handover/bundle/manifest.ts';
import { isWrittenPath, SCHEMA_FOLDER } from '../../handover/bundle/names.ts';
import { bundleAltered } from '../../handover/findings.ts';
import type { Home, LeftAlone } from './arrival.ts';
import type { SoundBundle } from './sound-bundle.ts';

/** The sender's files written by hand: those that are known in full, and the paths of those that are not. */
export interface WrittenIn {
  readonly texts: readonly WrittenText[];
  readonly unknown: readonly string[];
}

/**
 * The sender's files written by hand, from the bundle or, where it names them by their SHA-256 alone, from here. Refused where what the
 * manifest says of them is not what came.
 */
export function writtenIn({ manifest, files }: SoundBundle, file: string, home: Home): Result<WrittenIn> {
  const came = new Map(files.map(({ name, bytes }) => [name, new TextDecoder().decode(bytes)]));
  // A bundle of format 1 holds the two files as they are, and nothing of what they start from.
  if (manifest.written === undefined)
    return ok({
      texts: Object.values(HAND_WRITTEN).flatMap((path) => {
        const text = came.get(path);
        return text === undefined ? [] : [{ path, text }];
      }),
      unknown: [],
    });
  const faults = faultsIn(manifest.written, came, file);
  if (faults.length > 0) return refused(...faults);
  const here = textsHere(home);
  const found = manifest.written.map(({ file: name, path, sha256 }) => ({
    path,
    text: came.get(name) ?? here.get(sha256),
  }));
  return ok({
    texts: found.flatMap(({ path, text }) => (text === undefined ? [] : [{ path, text }])),
    unknown: found.flatMap(({ path, text }) => (text === undefined ? [path] : [])),
  });
}

function textsHere({ handWritten, known = [] }: Home): ReadonlyMap<string, string> {
  const texts = [
    ...Object.values(handWritten),
    ...known.flatMap((copy) => copy.written.map(({ text }) => text)),
  ];
  return new Map(texts.flatMap((text) => (text === undefined ? [] : [[digestOf(text), text] as const])));
}

function faultsIn(
  written: NonNullable<Manifest['written']>,
  came: ReadonlyMap<string, string>,
  file: string,
): readonly Finding[] {
  const names = new Set(written.map((each) => each.file));
  const byHand = [...came.keys()].filter(isByHand);
  const odd = [
    ...byHand.filter((name) => !names.has(name)),
    ...written.filter((each) => !isByHand(each.file) || !isWrittenPath(each.path)).map((each) => each.file),
    ...written
      .filter(({ file: name, sha256 }) => came.has(name) && digestOf(came.get(name) ?? '') !== sha256)
      .map((each) => each.file),
  ];
  return odd.slice(0, 1).map((thing) =>
    bundleAltered.at(
      { file, thing },
      {
        problem: 'what its manifest says of the files written by hand does not agree with what is in it',
        remedy: 'Have the bundle sent again. Nothing was changed.',
      },
    ),
  );
}

function isByHand(name: string): boolean {
  return Object.values(HAND_WRITTEN).some((each) => each === name) || name.startsWith(`${SCHEMA_FOLDER}/`);
}

/** The sender's files written by hand that are not as ours; of logging.json with what it starts from. */
export function leftByHand({ texts, unknown }: WrittenIn, file: string, home: Home): readonly LeftAlone[] {
  const differing = texts.filter(({ path, text }) => home.handWritten[path] !== text);
  const logging = texts.find(({ path }) => path === HAND_WRITTEN.logging);
  const parents = new Map(
    texts.filter(({ path }) => !isHandWritten(path)).map(({ path, text }) => [path, text] as const),
  );
  const ofSchema = differing.some(({ path }) => path !== HAND_WRITTEN.project) && logging !== undefined;
  return [
    ...differing.map(({ path }): LeftAlone => {
      const what = `${file}, ${path}`;
      const why = 'it differs from ours, which was written by hand and is kept';
      // What the schema logs differently is said once, beside the first of its files that differs.
      const first = differing.find((each) => each.path !== HAND_WRITTEN.project)?.path === path;
      return ofSchema && first ? { what, why, logging: { text: logging.text, parents } } : { what, why };
    }),
    ...unknown.map(
      (path): LeftAlone => ({
        what: `${file}, ${path}`,
        why: 'the bundle names it as known here, and it is not',
        lacking: 'Ask for it: offsider pack --whole.',
      }),
    ),
  ];
}

function isHandWritten(path: string): boolean {
  return Object.values(HAND_WRITTEN).some((each) => each === path);
}
