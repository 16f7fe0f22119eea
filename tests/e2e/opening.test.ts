import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { WHOLE_HOLE_PROJECT } from '../support/whole-hole/files.ts';
import { offsiderBundle } from './support/program.ts';
import type { Pty } from './support/pty.ts';
import { newRig, type Rig } from './support/rig.ts';

let program: string;
beforeAll(async () => {
  program = await offsiderBundle();
});

const rigs: Rig[] = [];
afterEach(async () => {
  for (const rig of rigs.splice(0)) await rig.remove();
});
function rigWith(files: Readonly<Record<string, string>>): Rig {
  const rig = newRig(program, files);
  rigs.push(rig);
  return rig;
}

const NO_HOLES = 'No holes yet. n makes one';
const ALTERNATE_SCREEN = '\x1b[?1049h';

/** What a refused console leaves in the terminal: words on the normal screen, which it never left. */
async function refusal(pty: Pty): Promise<string> {
  expect(await pty.exited).toEqual({ exitCode: 2, signal: 0 });
  expect(pty.received()).not.toContain(ALTERNATE_SCREEN);
  expect(pty.modes()).toEqual({ cursorShown: true, bracketedPaste: false });
  const lines = pty.screen().filter((line) => line !== '');
  expect(lines.length).toBeGreaterThan(1);
  return lines.join('\n');
}

const { 'logging.json': logging, 'project.json': project } = WHOLE_HOLE_PROJECT;
const newer = '{ "$schema": "../schemas/hole.schema.json", "format": 99, "kind": "hole", "id": "MBRC050" }\n';

describe('a console that can’t be opened says why on one screen, exits 2 and changes nothing', () => {
  it.each([
    ['no project is there', {}, ['no project.json', 'offsider new']],
    [
      'the schema is broken',
      { 'project.json': project, 'logging.json': logging.replace('"pair": "vx"', '"pair": "BA"') },
      [/logging\.json:\d+:\d+, list rocks, code VBR/],
    ],
    [
      'project.json is torn',
      { 'project.json': project.slice(0, 400), 'logging.json': logging },
      ['project.json:'],
    ],
    [
      'the folder can’t be written: a file has the place of its journal',
      { ...WHOLE_HOLE_PROJECT, journal: '' },
      ['cannot be written'],
    ],
  ] as const)('where %s', async (_, files, said) => {
    const rig = rigWith(files);
    const before = rig.contents();
    const words = await refusal(rig.open());
    for (const each of said) expect(words).toMatch(each);
    expect(rig.contents()).toEqual(before);
  });

  it('where a hole is from a newer version', async () => {
    const rig = rigWith(WHOLE_HOLE_PROJECT);
    const before = rig.open();
    await before.waitForText(NO_HOLES);
    before.press('q');
    await before.exited;
    rig.write('holes/MBRC050.json', newer);
    const contents = rig.contents();
    expect(await refusal(rig.open())).toContain('holes/MBRC050.json');
    expect(rig.contents()).toEqual(contents);
  });

  it('where a hole is from a newer version and the project was never opened before: not even a journal is made', async () => {
    const rig = rigWith({ ...WHOLE_HOLE_PROJECT, 'holes/MBRC050.json': newer });
    const contents = rig.contents();
    expect(await refusal(rig.open())).toContain('holes/MBRC050.json');
    expect(rig.contents()).toEqual(contents);
  });

  it('where another console is open on it: says who has it, and that one goes on', async () => {
    const rig = rigWith(WHOLE_HOLE_PROJECT);
    const first = rig.open();
    await first.waitForText(NO_HOLES);
    const before = rig.contents();
    const words = await refusal(rig.open());
    expect(words).toContain('NOK');
    expect(words).toContain('Close that console first');
    expect(rig.contents()).toEqual(before);
    first.press('n');
    await first.waitForText('a hole that is not in the program');
  });
});

describe('a second console on a project', () => {
  it('may look: it shows what is there, says READ ONLY, and makes nothing', async () => {
    const rig = rigWith(WHOLE_HOLE_PROJECT);
    const first = rig.open();
    await first.waitForText(NO_HOLES);
    const before = rig.contents();
    const second = rig.open(['--read-only']);
    await second.waitForText('READ ONLY');
    second.press('n');
    await second.waitForText('a hole that is not in the program');
    second.type('MBRC021\r');
    await second.waitForText('Nothing is changed');
    expect(rig.contents()).toEqual(before);
  });

  it('that takes over knowingly turns the first one to read only at its next edit: nothing of it is written', async () => {
    const rig = rigWith(WHOLE_HOLE_PROJECT);
    const first = rig.open();
    await first.waitForText(NO_HOLES);
    const second = rig.open(['--take-over'], { seed: 'second' });
    await second.waitForText('may still be open');
    second.press('escape');
    await second.waitForText(NO_HOLES);
    first.press('n');
    await first.waitForText('a hole that is not in the program');
    first.type('MBRC021\r');
    await first.waitForText('NOT SAVED: 1');
    first.press('down');
    await first.waitForText('NOK on');
    second.press('n');
    await second.waitForText('a hole that is not in the program');
    second.type('MBRC022\r');
    await second.waitForText('MBRC022 made.');
    await second.waitFor(([header = '']) => header.includes('saved '), '"saved" in the header');
    second.press('q');
    expect(await second.exited).toEqual({ exitCode: 0, signal: 0 });
    expect(Object.keys(rig.contents()).filter((path) => path.startsWith('holes/'))).toEqual([
      'holes/MBRC022.json',
    ]);
  });
});
