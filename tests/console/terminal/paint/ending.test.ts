import { describe, expect, it } from 'vitest';
import { describeEnding } from '../../../../src/console/terminal/paint/ending.ts';

describe('how the process ends', () => {
  it('quietly with 0 when the person left', () => {
    expect(describeEnding({ kind: 'stopped' })).toEqual({ exitCode: 0 });
  });
  it('with 128 and the number of the signal, as a shell counts', () => {
    expect(describeEnding({ kind: 'signal', signal: 'SIGTERM' })).toEqual({ exitCode: 143 });
  });
  it('by SIGHUP when the terminal is gone, since Node crashes in an exit without it', () => {
    expect(describeEnding({ kind: 'lost' })).toEqual({ exitCode: 129, raise: 'SIGHUP' });
    expect(describeEnding({ kind: 'signal', signal: 'SIGHUP' })).toEqual({ exitCode: 129, raise: 'SIGHUP' });
  });
  it('with 70 and the error, its text made safe, after a fault of the program', () => {
    const { exitCode, message } = describeEnding({ kind: 'error', error: new Error('bad \x1b]0;x\x07 row') });
    expect(exitCode).toBe(70);
    expect(message).toContain('Rows shown as saved are safe.\nError: bad ␛]0;x␇ row\n');
    expect(describeEnding({ kind: 'error', error: 'plain' }).message).toMatch(/\nplain$/);
  });
});
