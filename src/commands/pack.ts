import { notHere } from '../desk/not-here.ts';
import type { Outside } from '../desk/outside.ts';
import { chooseDocuments } from '../desk/packing/choose.ts';
import { type Packed, pack as packAt } from '../desk/packing/pack.ts';
import { atProject, holeNamed, type Shared, sayUnsaved } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { EXIT, refuse, say } from './say.ts';

/** What `offsider pack` is given. */
export interface PackAsked extends Shared {
  /** Names of holes, names or dates of shifts; everything if none is given. */
  readonly names: readonly string[];
  /** Also where a history holds a path of a computer. */
  readonly withPaths?: boolean | undefined;
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
      absent: asked.names.length === 0 ? notHere(at.desk) : [],
    });
    if (!packed.ok) return refuse(outside, wrongUse.at({ file: asked.folder }, packed));
    sayUnsaved(at);
    say(outside, packedText(packed));
    return packed.absent.length === 0 ? EXIT.fine : EXIT.findings;
  });
}

/** What was packed, where it lies, and what is not finished in it. */
function packedText(packed: Extract<Packed, { readonly ok: true }>): string {
  const { bundle, draft, bytes, sha256, to } = packed;
  const items = packed.unfinished.flatMap(({ name, items: open }) =>
    open.map((item) => `  ${name}: ${item}`),
  );
  return [
    `Bundle: ${bundle}, ${bytes} bytes, SHA-256 ${sha256}`,
    `Mail draft: ${draft}, ${to.length === 0 ? 'with no address: give it one, or name camp in project.json' : `to ${to.join(', ')}`}`,
    'Open the draft in the mail program and send it. Nothing has been sent.',
    ...(items.length === 0 ? ['Nothing in it is left unfinished.'] : ['Not finished:', ...items]),
  ].join('\n');
}
