import fc from 'fast-check';
import { type Desk, openDesk } from '../../src/desk/desk.ts';
import { formatFinding } from '../../src/finding/finding.ts';
import { HOLE, holeMade, rowLogged } from '../desk/support/values.ts';
import { afterKill, type Medium, namesSeen, nodeOf, syncFile, syncNames } from '../faults/medium.ts';
import { recordingDisk } from '../faults/recording-disk.ts';
import { faultOptions, freshProject } from '../faults/sitting.ts';

/** What is done to the bytes of a file: some are changed, a stretch is cut, doubled, or replaced. */
export type Spoiling = { readonly at: number; readonly length: number; readonly into: Uint8Array };

/** Pieces that look like what belongs there and do not. */
const PIECES = [
  '{',
  '}',
  '[',
  ']',
  ',',
  '"',
  ':',
  '\\',
  '\u0000',
  '{"__proto__":{}}',
  '1e999',
  '9007199254740993',
  'null',
  '-0',
  '{"put":["rows",""]}',
  '\uFEFF',
  '\u202E',
  '"id": "../../x",',
  '"format": 99,',
  '"format": 0,',
  '[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[',
  '\n',
];

export const spoiling: fc.Arbitrary<Spoiling> = fc.record({
  at: fc.nat(100_000),
  length: fc.oneof(fc.constant(0), fc.nat(3), fc.nat(400)),
  into: fc.oneof(
    fc.uint8Array({ maxLength: 4 }),
    fc.constantFrom(...PIECES).map((piece) => new TextEncoder().encode(piece)),
  ),
});

/** A project with two rows in a hole's file and one more in the journal, its console killed. */
export async function hostileStart(): Promise<Medium> {
  const medium = await freshProject();
  const opened = await openDesk(faultOptions(recordingDisk(medium), 1));
  if (!opened.ok) throw new Error('must open');
  const desk = opened.value;
  const submit = async (changes: ReturnType<typeof holeMade>): Promise<void> => {
    const submitted = desk.submit({ what: 'logged', parts: [{ document: HOLE, changes }] });
    if (submitted.ok) await submitted.durable;
  };
  await submit(holeMade());
  await submit([rowLogged(desk.newId(), 0)]);
  await desk.snapshot();
  await submit([rowLogged(desk.newId(), 1)]);
  return afterKill(medium);
}

/** Every file of a medium that has bytes, by its path. */
export function filesOf(medium: Medium): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  const walk = (path: string, inode: number): void => {
    const node = nodeOf(medium, inode);
    if (node.kind === 'file') found.set(path, inode);
    else for (const [name, child] of namesSeen(node)) walk(`${path}/${name}`, child);
  };
  walk('', 1);
  return found;
}

/** Spoils one file of a copy of the medium. */
export function spoiled(medium: Medium, path: string, how: readonly Spoiling[]): Medium {
  const copy = afterKill(medium);
  for (const node of copy.nodes.values()) {
    syncFile(node);
    syncNames(node);
  }
  const node = nodeOf(copy, filesOf(copy).get(path) ?? 0);
  for (const { at, length, into } of how) {
    const start = at % (node.bytes.length + 1);
    node.bytes = new Uint8Array(
      Buffer.concat([node.bytes.subarray(0, start), into, node.bytes.subarray(start + length)]),
    );
  }
  return copy;
}

/** What is wrong with how a spoiled project is opened: a crash, a message without place or remedy, a desk that won't close. */
export async function faultsOnOpening(medium: Medium): Promise<readonly string[]> {
  const faults: string[] = [];
  let desk: Desk | undefined;
  try {
    const opened = await openDesk(faultOptions(recordingDisk(medium), 2));
    const findings = opened.ok ? opened.value.findings() : opened.findings;
    for (const finding of findings) {
      if (formatFinding(finding).startsWith('somewhere')) faults.push(`no place: ${finding.problem}`);
      if (finding.remedy === '' || finding.problem === '') faults.push(`no remedy: ${finding.code}`);
    }
    if (!opened.ok) return faults;
    desk = opened.value;
    const closed = await desk.close();
    if (!closed.ok) faults.push(`does not close: ${closed.problem}`);
  } catch (error) {
    faults.push(`threw: ${error instanceof Error ? error.stack : String(error)}`);
  }
  return faults;
}
