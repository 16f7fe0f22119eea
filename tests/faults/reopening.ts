import { openDesk } from '../../src/desk/desk.ts';
import type { Disk } from '../../src/files/disk.ts';
import { everyEntry, heldBy } from '../../src/record/ancestry.ts';
import { chainFault, replay } from '../../src/record/chain.ts';
import { documentKey } from '../../src/record/document.ts';
import { sameJson } from '../../src/record/json.ts';
import { faultOptions, type Seen } from './sitting.ts';

/**
 * Opens what is left on a medium, as the person would after a crash, and says what is wrong with it: a project that does
 * not open, an edit shown as saved that is not there, a chain that does not hold, tables that are not the history's, rows
 * that no one logged, a fault among the findings. Closing it again, and finding the same, is asked for now and then.
 */
export async function faultsOnReopening(
  disk: Disk,
  seen: Seen,
  closing: boolean,
): Promise<readonly string[]> {
  const faults: string[] = [];
  for (const { path, bytes } of seen.written) {
    const found = await disk.readFile(path).catch(() => undefined);
    if (found === undefined || !Buffer.from(found).equals(bytes))
      faults.push(`${path} is not as it was written`);
  }
  const opened = await openDesk(faultOptions(disk, 99));
  if (!opened.ok) {
    const problems = opened.findings.map((finding) => finding.problem).join('; ');
    // What was never said to be made may not be there; half of it may not either.
    if (!seen.made && /no project\.json in it/.test(problems)) return faults;
    return [...faults, `does not open: ${problems}`];
  }
  const desk = opened.value;
  for (const finding of desk.findings())
    if (finding.severity === 'fault') faults.push(`${finding.code}: ${finding.problem}`);
  for (const saved of seen.saved) {
    if ('attempt' in saved) continue;
    for (const name of saved.documents) {
      const history = everyEntry(desk.get(name)?.history ?? []);
      if (!history.some((entry) => entry.edit === saved.edit))
        faults.push(`${saved.edit} is not in ${name.id}`);
    }
  }
  const shown = Math.max(0, ...seen.saved.map((saved) => ('attempt' in saved ? saved.attempt : 0)));
  const stands = seen.attempts.indexOf(desk.project()?.text ?? '');
  if (stands < shown) faults.push(`project.json is not as it was shown as saved: ${stands} of ${shown}`);
  for (const document of desk.documents().values()) {
    const fault = chainFault(document.history);
    if (fault !== undefined) faults.push(`${document.id}: ${fault.problem}`);
    else if (!sameJson(replay(document.history), document.tables))
      faults.push(`${document.id}: tables differ`);
    const known = heldBy(seen.desks.flatMap((other) => other.get(document)?.history ?? []));
    if (document.history.some((entry) => !known.has(entry.hash)))
      faults.push(`${documentKey(document)} holds what no one logged`);
  }
  if (!closing) return faults;
  const closed = await desk.close();
  if (!closed.ok) faults.push(`does not close: ${closed.problem}`);
  return faults;
}
