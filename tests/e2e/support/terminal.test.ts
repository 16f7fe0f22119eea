import { mkdtempSync, readFileSync } from 'node:fs';
import { constants, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { safeText } from '../../../src/finding/safe-text.ts';
import { bundleProgram, removeBundle } from './bundle.ts';
import { openPty, type Pty, type PtyOptions } from './pty.ts';

const source = join(import.meta.dirname, 'fixture-app.tsx');
let program: string;
let stock: string;
beforeAll(async () => {
  program = await bundleProgram(source);
  stock = await bundleProgram(source, { stockInk: true });
});
afterAll(() => [program, stock].forEach(removeBundle));

const open: Pty[] = [];
afterEach(async () => {
  for (const pty of open.splice(0)) {
    pty.kill();
    await pty.exited;
  }
});

async function start(options: Partial<PtyOptions> = {}): Promise<Pty> {
  const pty = openPty({ command: process.execPath, args: [program], ...options });
  open.push(pty);
  await pty.waitForText('entry ▸');
  return pty;
}

/** What a shell finds after the program: its own screen, a cursor, no paste marks. */
function expectGivenBack(pty: Pty) {
  expect(pty.buffer()).toBe('normal');
  expect(pty.modes()).toEqual({ cursorShown: true, bracketedPaste: false });
}

describe('the screen', () => {
  it('takes the alternate screen, hides the cursor and asks for bracketed paste', async () => {
    const pty = await start();
    expect(pty.buffer()).toBe('alternate');
    expect(pty.modes()).toEqual({ cursorShown: false, bracketedPaste: true });
  });
  it('shows a frame of the terminal rows less one, each line in its place', async () => {
    const pty = await start();
    const screen = pty.screen();
    expect(screen[0]).toBe('fixture 100×29');
    expect(screen[1]).toMatch(/^│ {4}0 {4}1 {2}bst {3}frs {3}chl2 sil1 {3}pyr0 .*│$/);
    expect(screen[28]).toBe(' entry ▸ ▌');
    expect(screen[29]).toBe('');
  });
  it('paints one key with a small part of the bytes of a full frame', async () => {
    const pty = await start();
    const full = pty.bytesReceived();
    pty.press('p');
    await pty.waitForText('entry ▸ p▌');
    expect(pty.bytesReceived() - full).toBeLessThan(0.02 * full);
  });
  it('follows the terminal to another size, smaller and larger', async () => {
    const pty = await start();
    pty.resize(80, 24);
    await pty.waitForText('fixture 80×23');
    expect(pty.screen()[22]).toBe(' entry ▸ ▌');
    expect(pty.screen().filter((line) => line.includes('fixture'))).toHaveLength(1);
    pty.resize(120, 40);
    await pty.waitForText('fixture 120×39');
    expect(pty.screen()[38]).toBe(' entry ▸ ▌');
    expect(pty.screen().filter((line) => line.includes('entry ▸'))).toHaveLength(1);
  });
  it('paints with CI set too', async () => {
    const pty = await start({ env: { CI: '1' } });
    expect(pty.screen()[0]).toBe('fixture 100×29');
  });
});

describe('the edits to Ink in the bundle', () => {
  it('paint the same bytes as stock Ink, wide characters and emoji included', async () => {
    const paintedBy = async (bundle: string) => {
      const pty = await start({ args: [bundle] });
      for (const text of ['a', '石英', 'e\u0301', '😀', '한글', '│▌°', '👩‍🔬', '#️⃣']) {
        pty.type(`\x1b[200~${text}\x1b[201~`);
        await pty.waitForText(`pasted ${safeText(text)}`);
      }
      return pty.received();
    };
    expect(await paintedBy(program)).toBe(await paintedBy(stock));
  });
});

describe('keys', () => {
  it('a burst that ends in Enter arrives whole and in order', async () => {
    const pty = await start();
    pty.type('12345678\rp2\r');
    await pty.waitForText('entered p2');
    const done = pty.screen().flatMap((line) => /entered \w+/.exec(line)?.[0] ?? []);
    expect(done).toEqual(['entered 12345678', 'entered p2']);
  });
  it('function keys, Escape and Alt arrive as keys', async () => {
    const pty = await start();
    pty.press('f1', '\x1b[1;5P', '\x1bx', 'escape');
    await pty.waitForText('escape');
    const done = pty.screen().flatMap((line) => /(?:ctrl-f1|f1|alt-x|escape)/.exec(line)?.[0] ?? []);
    expect(done).toEqual(['f1', 'ctrl-f1', 'alt-x', 'escape']);
  });
  it('a paste is shown as text, its escape sequences made visible and its line ends not obeyed', async () => {
    const pty = await start();
    pty.type('\x1b[200~p3\r\x1b]0;title\x07\x1b[201~');
    await pty.waitForText('pasted p3␊␛]0;title␇');
    expect(pty.screen().some((line) => line.includes('entered'))).toBe(false);
  });
});

describe('the terminal is given back', () => {
  it('when the program ends by itself, with exit code 0', async () => {
    const pty = await start();
    pty.press('ctrl-q');
    expect(await pty.exited).toEqual({ exitCode: 0, signal: 0 });
    expectGivenBack(pty);
  });
  for (const [signal, exitCode] of [
    ['SIGTERM', 143],
    ['SIGINT', 130],
  ] as const)
    it(`on ${signal}, with exit code ${exitCode}`, async () => {
      const pty = await start();
      pty.kill(signal);
      expect(await pty.exited).toEqual({ exitCode, signal: 0 });
      expectGivenBack(pty);
    });
  for (const [what, key, message] of [
    ['a throw in a component', 'ctrl-t', 'the fixture was told to break'],
    ['a throw in a key handler', 'ctrl-e', 'the fixture was told to fail'],
    ['a promise that no one caught', 'ctrl-r', 'the fixture was told to reject'],
  ] as const)
    it(`after ${what}, with the error on the normal screen and exit code 70`, async () => {
      const pty = await start();
      pty.press(key);
      expect(await pty.exited).toEqual({ exitCode: 70, signal: 0 });
      expectGivenBack(pty);
      expect(pty.screen().join('\n')).toContain(message);
    });
  it('on SIGHUP, of which the program then dies', async () => {
    const pty = await start();
    pty.kill('SIGHUP');
    expect(await pty.exited).toEqual({ exitCode: 0, signal: constants.signals.SIGHUP });
    expectGivenBack(pty);
  });
  it('or, when the terminal has vanished, the program ends by itself', async () => {
    const pty = await start();
    pty.hangUp();
    expect(await pty.exited).toEqual({ exitCode: 0, signal: constants.signals.SIGHUP });
  });
  it('and no second signal ends the program while it keeps what is not saved', async () => {
    for (const [signal, ending] of [
      ['SIGHUP', { exitCode: 0, signal: constants.signals.SIGHUP }],
      ['SIGTERM', { exitCode: 143, signal: 0 }],
    ] as const) {
      const kept = join(mkdtempSync(join(tmpdir(), 'offsider-')), 'kept');
      const pty = await start({ env: { FIXTURE_KEEPS: kept } });
      pty.kill(signal);
      await vi.waitFor(() => expect(readFileSync(kept, 'utf8')).toBe('begun'), {
        timeout: 10_000,
        interval: 5,
      });
      for (const again of [signal, 'SIGHUP', 'SIGINT', 'SIGTERM'] as const) pty.kill(again);
      expect(await pty.exited).toEqual(ending);
      expect(readFileSync(kept, 'utf8')).toBe('kept');
    }
  });
  it('and a shell that goes with its terminal takes nothing along before it is kept', async () => {
    const kept = join(mkdtempSync(join(tmpdir(), 'offsider-')), 'kept');
    const pty = openPty({
      command: '/bin/sh',
      args: ['-i'],
      env: { PS1: 'shell> ', ENV: undefined, FIXTURE_KEEPS: kept },
    });
    open.push(pty);
    await pty.waitForText('shell>');
    pty.type(`"${process.execPath}" "${program}"\r`);
    await pty.waitForText('entry ▸');
    pty.hangUp();
    await vi.waitFor(() => expect(readFileSync(kept, 'utf8')).toBe('kept'), { timeout: 10_000 });
  });
  it('when the shell suspends it, and taken again when the shell continues it', async () => {
    const pty = openPty({ command: '/bin/sh', args: ['-i'], env: { PS1: 'shell> ', ENV: undefined } });
    open.push(pty);
    await pty.waitForText('shell>');
    pty.type(`"${process.execPath}" "${program}"\r`);
    await pty.waitForText('entry ▸');
    pty.type('abc');
    await pty.waitForText('entry ▸ abc▌');
    pty.press('ctrl-z');
    await pty.waitFor(
      (screen) =>
        pty.buffer() === 'normal' && screen.at(-1) !== undefined && /Stopped/i.test(screen.join('\n')),
      'the shell saying that the program is stopped',
    );
    expectGivenBack(pty);
    pty.type('fg\r');
    await pty.waitForText('entry ▸ abc');
    expect(pty.buffer()).toBe('alternate');
    pty.type('d');
    await pty.waitForText('entry ▸ abcd▌');
    pty.press('ctrl-q');
    await pty.waitFor(() => pty.buffer() === 'normal', 'the shell back');
    expectGivenBack(pty);
  });
  it('and comes back by itself when no one is there to continue it', async () => {
    const pty = await start();
    pty.type('abc');
    await pty.waitForText('entry ▸ abc▌');
    pty.kill('SIGTSTP');
    await pty.waitFor(() => pty.received().includes('\x1b[?1049l'), 'the screen left');
    await pty.waitForText('entry ▸ abc▌');
    pty.type('d');
    await pty.waitForText('entry ▸ abcd▌');
  });
});
