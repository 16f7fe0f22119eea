import { join } from 'node:path';
import type { Outside } from '../desk/outside.ts';
import { realDisk } from '../files/real-disk.ts';
import { ensureFolder, writeDurably } from '../files/write-durably.ts';
import { atProject, type Shared } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { SCHEMA_FOLDER, shippedSchemas } from './program/shipped-schemas.ts';
import { EXIT, refuse, say } from './say.ts';

/** Kinds of files that people write by hand, by the name of their schema. */
const BY_HAND = ['project', 'logging'] as const;

/**
 * Puts the JSON Schemas of this version beside the files of a project, over those of another version, and says which line an editor needs to find
 * them. The files that people keep by hand are never written.
 */
export function schemasForEditor(outside: Outside, asked: Shared): Promise<number> {
  return atProject(outside, { ...asked, write: true }, async ({ desk }) => {
    const schemas = shippedSchemas();
    if (schemas.length === 0)
      return refuse(
        outside,
        wrongUse.at(
          { file: SCHEMA_FOLDER },
          { problem: 'the schemas are not beside the program', remedy: 'Install it again, whole.' },
        ),
      );
    const folder = join(asked.folder, SCHEMA_FOLDER);
    await ensureFolder(realDisk, folder);
    for (const { file, text } of schemas)
      await writeDurably(realDisk, join(folder, file), new TextEncoder().encode(text), 'new');
    const texts = { project: desk.project()?.text ?? '', logging: desk.logging()?.text ?? '' };
    const without = BY_HAND.filter((kind) => !/"\$schema"\s*:/.test(texts[kind]));
    say(
      outside,
      [
        `${SCHEMA_FOLDER}/ has the ${schemas.length} schemas of this version.`,
        ...without.map(
          (kind) =>
            `${kind}.json does not name its own: put this line after its first brace. Nothing else of it changes.\n  "$schema": "./${SCHEMA_FOLDER}/${kind}.schema.json",`,
        ),
      ].join('\n'),
    );
    return EXIT.fine;
  });
}
