import { ok, type Result, refused } from '../finding/finding.ts';
import type { Project } from '../project/project.ts';
import { wrongUse } from './findings.ts';

/** The rig of that name in project.json; the first one if none is given. */
export function rigNamed({ settings }: Project, name: string | undefined): Result<string> {
  const { rigs } = settings;
  const found =
    name === undefined ? rigs[0] : rigs.find((rig) => rig.name.toUpperCase() === name.toUpperCase());
  if (found !== undefined) return ok(found.name);
  const names = rigs.map((rig) => rig.name).join(', ');
  return refused(
    wrongUse.at(
      { file: 'project.json', field: 'rigs' },
      { problem: `no rig is called ${name}`, remedy: `Use one of ${names}, or add the rig there.` },
    ),
  );
}
