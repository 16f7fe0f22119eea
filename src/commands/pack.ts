import { notHere } from '../desk/not-here.ts';
import type { Outside } from '../desk/outside.ts';
import { chooseDocuments } from '../desk/packing/choose.ts';
import { type Packed, pack as packAt } from '../desk/packing/pack.ts';
import { sinceWords, unheardWords } from '../desk/packing/since-words.ts';
import { atProject, holeNamed, type Shared } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { EXIT, refuse, say } from './say.ts';

/** What `offsider pack` is given. */
export interface PackAsked extends Shared {
  /** Names of holes, names or dates of shifts; everything if none is given. */
  readonly names: readonly string[];
  /** Also where a history holds a path of a computer. */
  readonly withPaths?: boolean | undefined;
  /** In full, whatever was acknowledged. */
  readonly whole?: boolean | undefined;
  /** For the copy of this person; for camp where no one is named. */
  readonly for?: string | undefined;
}

/**
 * Packs documents for camp: a bundle and a mail draft in the outbox. What is not finished is said and is no
 * reason for the exit code 1; what was to go with it and could not be read is.
 */
export function pack(outside: Outside, asked: PackAsked): Promise<number> {
  return atProject(outside, { ...asked, write: true }, async (at) => {
    const { documents, unknown } = chooseDocuments(at.desk.documents().values(), asked.names);
    const findings = unknown.flatMap((name) => {
      const hole = holeNamed(at, name);
      return hole.ok ? [] : hole.findings;
    });
    if (findings.length > 0) return refuse(outside, ...findings);
    const packed = await packAt(at.desk, at.project, documents, {
      withPaths: asked.withPaths === true,
      whole: asked.whole === true,
      forWhom: asked.for,
      everything: asked.names.length === 0,
      absent: asked.names.length === 0 ? notHere(at.desk) : [],
    });
    if (!packed.ok) return refuse(outside, wrongUse.at({ file: asked.folder }, packed));
    say(outside, packedText(packed));
    return packed.absent.length === 0 ? EXIT.fine : EXIT.findings;
  });
}

/** What was packed, where it lies, and what is not finished in it. */
function packedText(packed: Extract<Packed, { readonly ok: true }>): string {
  const { bundle, drafts, bytes, sha256, to, since } = packed;
  const address =
    to.length === 0 ? 'with no address: give it one, or name camp in project.json' : `to ${to.join(', ')}`;
  const items = packed.unfinished.flatMap(({ name, items: open }) =>
    open.map((item) => `  ${name}: ${item}`),
  );
  return [
    `Bundle: ${bundle}, ${bytes} bytes, SHA-256 ${sha256}`,
    ...(since === undefined ? [] : [sinceWords(since, packed.holes)]),
    ...(packed.unheard === undefined ? [] : [unheardWords(packed.unheard)]),
    ...drafts.map(
      (draft, index) =>
        `Mail draft${drafts.length === 1 ? '' : ` ${index + 1} of ${drafts.length}`}: ${draft}${index === 0 ? `, ${address}` : ''}`,
    ),
    `Open ${drafts.length === 1 ? 'the draft' : 'each draft'} in the mail program and send it. Nothing has been sent.`,
    ...(items.length === 0 ? ['Nothing in it is left unfinished.'] : ['Not finished:', ...items]),
  ].join('\n');
}
