import { describe, expect, it } from 'vitest';
import Rows from '../../../src/console/terminal/rows.ts';

const as = (text: string) => ({ transformers: [() => text] });

describe('the rows that Ink writes', () => {
  it('pass through as they are, without the blanks at their ends, a row that was not written empty', () => {
    const rows = new Rows({ height: 3 });
    rows.write(0, 0, ' ', as('\x1b[7mbasalt\x1b[27m  '));
    rows.write(0, 2, ' ', as('  石英'));
    expect(rows.get()).toEqual({ output: '\x1b[7mbasalt\x1b[27m\n\n  石英', height: 3 });
  });

  it('are no more than the frame has', () => {
    const rows = new Rows({ height: 1 });
    rows.write(0, 1, ' ', as('below'));
    expect(rows.get().output).toBe('');
  });

  it('begin at column 0, else the program is wrong', () => {
    expect(() => new Rows({ height: 1 }).write(4, 0, ' ', as('basalt'))).toThrow('column 4');
  });
});
