import { describe, expect, it } from 'vitest';
import { looksOf, setupColour } from '../../../../src/console/terminal/paint/colour.ts';

describe('looks from the environment', () => {
  it('colour and full characters unless something speaks against them', () => {
    expect(looksOf({ TERM: 'xterm-256color' })).toEqual({ colour: true, ascii: false });
    expect(looksOf({})).toEqual({ colour: true, ascii: false });
  });
  it('NO_COLOR takes colour away, whatever it says, but not when it is empty', () => {
    expect(looksOf({ NO_COLOR: '1' }).colour).toBe(false);
    expect(looksOf({ NO_COLOR: '0' }).colour).toBe(false);
    expect(looksOf({ NO_COLOR: '' }).colour).toBe(true);
  });
  it('a dumb terminal has neither', () => {
    expect(looksOf({ TERM: 'dumb' })).toEqual({ colour: false, ascii: true });
  });
  it('OFFSIDER_ASCII asks for ASCII and leaves colour alone', () => {
    expect(looksOf({ OFFSIDER_ASCII: '1' })).toEqual({ colour: true, ascii: true });
    expect(looksOf({ OFFSIDER_ASCII: '0' }).ascii).toBe(false);
  });
  it('the colour library is told, and told nothing when colour stays', () => {
    const without: Record<string, string | undefined> = { NO_COLOR: '1', FORCE_COLOR: '3' };
    setupColour(without);
    expect(without.FORCE_COLOR).toBe('0');
    const withColour: Record<string, string | undefined> = {};
    setupColour(withColour);
    expect(withColour).toEqual({});
  });
});
