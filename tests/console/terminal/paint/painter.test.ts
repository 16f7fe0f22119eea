import headless from '@xterm/headless';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createPainter, type Size } from '../../../../src/console/terminal/paint/painter.ts';
import { runs } from '../../../support/long-run.ts';

/** A painter on a terminal emulator: what it wrote, and what the screen shows (text and colours of each cell). */
function stand(size: Size) {
  const terminal = new headless.Terminal({ cols: size.columns, rows: size.rows, allowProposedApi: true });
  const writes: string[] = [];
  const painter = createPainter(size, (text) => writes.push(text));
  const cells = async () => {
    for (const text of writes.slice()) await new Promise<void>((done) => terminal.write(text, done));
    writes.length = 0;
    return Array.from({ length: terminal.rows }, (_, row) =>
      Array.from({ length: terminal.cols }, (_, column) => {
        const cell = terminal.buffer.active.getLine(row)!.getCell(column)!;
        const ink = cell.getFgColor() + 1000 * cell.getFgColorMode();
        const ground = cell.getBgColor() + 1000 * cell.getBgColorMode();
        return [cell.getChars() || ' ', ink, ground, cell.isBold(), cell.isInverse()].join(' ');
      }),
    );
  };
  return { terminal, writes, painter, cells, show: (frame: string) => painter.stream.write(frame) };
}

const size = { columns: 20, rows: 5 };

describe('painting', () => {
  it('wraps each change in one synchronised update', () => {
    const { writes, show } = stand(size);
    show('one\ntwo');
    expect(writes).toHaveLength(1);
    expect(writes[0]).toMatch(/^\x1b\[\?2026h.*\x1b\[\?2026l$/s);
  });
  it('writes nothing when the frame is the same', () => {
    const { writes, show } = stand(size);
    show('one\ntwo');
    show('one\ntwo');
    expect(writes).toHaveLength(1);
  });
  it('writes only the cells between the first and the last that differ', () => {
    const { writes, show } = stand(size);
    show('rock bst frs\nsame');
    show('rock sed frs\nsame');
    expect(writes[1]).toBe('\x1b[?2026h\x1b[1;6Hsed\x1b[?2026l');
  });
  it('writes the style of what changed and leaves the terminal plain', () => {
    const { writes, show } = stand(size);
    show('a \x1b[1m\x1b[31mpyr1\x1b[39m\x1b[22m b');
    show('a \x1b[1m\x1b[31mpyr2\x1b[39m\x1b[22m b');
    expect(writes[1]).toBe('\x1b[?2026h\x1b[1;6H\x1b[0;1;31m2\x1b[0m\x1b[?2026l');
  });
  it('erases what a shorter line leaves behind, and lines that are gone', () => {
    const { writes, show } = stand(size);
    show('pyrite\nveins');
    show('pyr');
    expect(writes[1]).toBe('\x1b[?2026h\x1b[1;4H\x1b[K\x1b[2;1H\x1b[K\x1b[?2026l');
  });
  it('paints everything again after a reset', async () => {
    const { painter, terminal, cells, show } = stand(size);
    show('one');
    await cells();
    terminal.write('rubbish');
    painter.reset({ columns: 20, rows: 4 });
    show('two');
    const screen = await cells();
    expect(
      screen
        .flat()
        .map((cell) => cell[0])
        .join('')
        .trim(),
    ).toBe('two');
  });
  it('cuts what is wider or taller than the screen, and leaves its last cell alone', async () => {
    const { terminal, cells, show } = stand({ columns: 4, rows: 2 });
    show('123456\nabcdef\nghi');
    await cells();
    const lines = [0, 1].map((row) => terminal.buffer.active.getLine(row)!.translateToString(true));
    expect(lines).toEqual(['1234', 'abc']);
    expect(terminal.buffer.active.baseY).toBe(0);
  });
  it('does not write half of a wide character at the edge', async () => {
    const { terminal, cells, show } = stand({ columns: 3, rows: 2 });
    show('石英');
    await cells();
    expect(terminal.buffer.active.getLine(0)!.translateToString(true)).toBe('石');
  });
  it('counts the bytes it writes', () => {
    const { writes, painter, show } = stand(size);
    show('é\n2');
    show('é\n3');
    expect(painter.bytesWritten()).toBe(Buffer.byteLength(writes.join('')));
  });
  it('ignores frames after it is closed, and the empty string that Ink writes when it has nothing to show', () => {
    const { writes, painter, show } = stand(size);
    show('');
    painter.close();
    show('late');
    expect(writes).toEqual([]);
  });
  it('any frame after any other looks as if it had been painted alone', async () => {
    const piece = fc.oneof(
      fc.constantFrom(
        'a',
        'b',
        ' ',
        '石',
        '│',
        'e\u0301',
        '\x1b[1m',
        '\x1b[22m',
        '\x1b[31m',
        '\x1b[39m',
        '\x1b[7m',
        '\x1b[0m',
      ),
      fc.constantFrom('\x1b[38;5;200m', '\x1b[48;2;1;2;3m', '\x1b[49m', '\x1b[1;4;32m', '\x1b[97m'),
    );
    // Ink closes every style within its line.
    const line = fc.array(piece, { maxLength: 14 }).map((pieces) => `${pieces.join('')}\x1b[0m`);
    const frame = fc.array(line, { minLength: 1, maxLength: 6 }).map((lines) => lines.join('\n'));
    await fc.assert(
      fc.asyncProperty(fc.array(frame, { minLength: 1, maxLength: 4 }), async (frames) => {
        const stepwise = stand({ columns: 12, rows: 5 });
        for (const each of frames) stepwise.show(each);
        const alone = stand({ columns: 12, rows: 5 });
        alone.show(frames.at(-1)!);
        expect(await stepwise.cells()).toEqual(await alone.cells());
      }),
      { numRuns: runs(200) },
    );
  });
});
