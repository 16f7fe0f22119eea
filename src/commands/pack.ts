import type { Outside } from '../desk/outside.ts';
import { type Packed, pack as packAt } from '../desk/packing/pack.ts';
import { ok, type Result, refused } from '../finding/finding.ts';
import type { Document } from '../record/document.ts';
import { type AtProject, atProject, holeNamed } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { EXIT, refuse, say } from './say.ts';

/** What `offsider pack` is given. */
export interface PackAsked {
  readonly folder: string;
  readonly by?: string | undefined;
  /** Names of holes, names or dates of shifts; everything where none is said. */
  readonly names: readonly string[];
}

/** Packs documents for camp: a bundle and a mail draft in the outbox. What is not finished is said and is no reason for the exit code 1. */
export function pack(outside: Outside, asked: PackAsked): Promise<number> {
  return atProject(outside, { folder: asked.folder, write: true, by: asked.by }, async (at) => {
    const chosen = chosenDocuments(at, asked.names);
    if (!chosen.ok) return refuse(outside, ...chosen.findings);
    const packed = await packAt(at.desk, at.project, chosen.value);
    if (!packed.ok) return refuse(outside, wrongUse.at({ file: asked.folder }, packed));
    say(outside, packedText(packed));
    return EXIT.fine;
  });
}

function chosenDocuments(at: AtProject, names: readonly string[]): Result<readonly Document[]> {
  const all = [...at.desk.documents().values()];
  if (names.length === 0) return ok(all);
  const found = names.map((name) => namedDocuments(at, all, name));
  const findings = found.flatMap((each) => (each.ok ? [] : each.findings));
  if (findings.length > 0) return refused(...findings);
  return ok([...new Set(found.flatMap((each) => (each.ok ? each.value : [])))]);
}

/** Shifts, dispatches and results of that id, shifts of that date, or the hole of that name. */
function namedDocuments(at: AtProject, all: readonly Document[], name: string): Result<readonly Document[]> {
  const others = all.filter(
    ({ kind, id }) =>
      kind !== 'hole' && (id === name.toUpperCase() || (kind === 'shift' && id.includes(`_${name}_`))),
  );
  if (others.length > 0) return ok(others);
  const hole = holeNamed(at, name);
  return hole.ok ? ok([hole.value]) : hole;
}

/** What was packed, where it lies, and what is not finished in it. */
export function packedText(packed: Extract<Packed, { readonly ok: true }>): string {
  const { bundle, draft, bytes, sha256, to } = packed;
  const items = packed.unfinished.flatMap(({ hole, items: open }) =>
    open.map((item) => `  ${hole}: ${item}`),
  );
  return [
    `Bundle: ${bundle}, ${bytes} bytes, SHA-256 ${sha256}`,
    `Mail draft: ${draft}, ${to.length === 0 ? 'with no address: give it one, or name camp in project.json' : `to ${to.join(', ')}`}`,
    'Open the draft in the mail program and send it. Nothing has been sent.',
    ...(items.length === 0 ? ['Nothing is left unfinished.'] : ['Not finished:', ...items]),
  ].join('\n');
}
