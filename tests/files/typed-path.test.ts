import { homedir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { typedPath } from '../../src/files/typed-path.ts';

it.each([
  ['~', homedir()],
  ['~/stick', join(homedir(), 'stick')],
  ['/media/stick', '/media/stick'],
  ['stick', join(process.cwd(), 'stick')],
  ['a~/b', join(process.cwd(), 'a~/b')],
])('a folder typed as %s is %s', (typed, path) => {
  expect(typedPath(typed)).toBe(path);
});
