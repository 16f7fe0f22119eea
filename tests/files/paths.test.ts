import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const TOP = join(import.meta.dirname, '../..');
const CALLS = 'create|readFile|list|makeFolder|facts|realPath|rename|unlink|syncFolder';
const HELPERS = 'createDurably|writeDurably|ensureFolder|bytesIfThere|factsIfThere|readNamedFile';
/** A path put together by hand where a disk is called: a template, a text, or texts added up. */
const TO_A_DISK = new RegExp(
  `(?:\\b(?:disk|realDisk)\\.(?:${CALLS})\\(|\\b(?:${HELPERS})\\(\\s*(?:disk|realDisk),)\\s*(?:\`|'|"|\\w+\\s*\\+)`,
);
/** A folder of the machine followed by a slash. Names within a project (\`holes/ZQRC004.json\`) have a slash on every platform, and join takes it. */
const BEHIND_A_FOLDER =
  /\$\{(?:\w+\.)*(?:folder(?:\(\))?|dir|directory|home|cwd\(\)|tmpdir\(\)|homedir\(\))\}(?:\/|\\\\)/;

const found = (text: string): boolean =>
  TO_A_DISK.test(text) || BEHIND_A_FOLDER.test(text.replaceAll(['$', '{kind.folder}'].join(''), ''));

describe('paths of the machine', () => {
  it('are joined by node:path everywhere, never with a slash by hand', () => {
    const files = readdirSync(join(TOP, 'src'), { recursive: true })
      .map(String)
      .filter((file) => /\.tsx?$/.test(file));
    expect(files.length).toBeGreaterThan(300);
    const lines = files.flatMap((file) =>
      readFileSync(join(TOP, 'src', file), 'utf8')
        .split('\n')
        .flatMap((line, index) => (found(line) ? [`${file}:${index + 1}: ${line.trim()}`] : [])),
    );
    expect(lines).toEqual([]);
  });

  it('joined by hand would be found', () => {
    for (const line of [
      'await disk.facts(`@{folder}/project.json`);',
      "await disk.readFile(folder + '/project.json');",
      'await createDurably(disk, `@{top}/x`, bytes);',
      'const path = `@{state.base.folder}/journal`;',
      'const path = `@{desk.folder()}/outbox`;',
    ])
      expect(found(line.replace('@', '$')), line).toBe(true);
  });
});

describe('the scripts of package.json', () => {
  it('need no POSIX shell: programs and &&, which every shell has', () => {
    const { scripts } = JSON.parse(readFileSync(join(TOP, 'package.json'), 'utf8')) as {
      readonly scripts: Readonly<Record<string, string>>;
    };
    for (const [name, script] of Object.entries(scripts)) {
      expect(script, name).not.toMatch(
        /['"`$*~;|<>\\]|\b(?:rm|cp|mv|mkdir|export|bash|sh|chmod|cat)\b|^\w+=/,
      );
      for (const command of script.split(' && '))
        expect(command, name).toMatch(/^(?:node|tsx|tsc|vitest|biome|knip) ?/);
    }
  });
});
