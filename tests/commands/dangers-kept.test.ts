import { describe, expect, it } from 'vitest';
import { enter } from '../../src/commands/enter.ts';
import { copyOfSample, hear } from './support/outside.ts';

/** Types lines into the sample hole from a pipe. */
async function typed(...lines: readonly string[]) {
  const heard = hear(`${lines.join('\n')}\n`);
  const folder = copyOfSample();
  const code = await enter(heard.outside, { folder, hole: 'MBRC003', keepGoing: true });
  return { code, out: heard.out(), err: heard.err() };
}

describe('a void that the plan expects', () => {
  it('is said from a pipe while rods go towards it and through it, and no longer than it matters', async () => {
    const { out } = await typed(';expect old stope 64-70 void', ';rod', ';rod', ';rod', ';rod');
    expect(out).toContain('the earliest it could come: 4 m below the bit or less.');
    expect(out).toContain('the hole is there now');
    expect(out).toMatch(/expected to [\d.]+ m: the bit is [\d.]+ m below that/);
    const far = await typed(';expect old stope 164-170 void', ';rod');
    expect(far.out).not.toContain('VOID');
  });
});

describe('a void that a line from a pipe writes over', () => {
  it('is refused without =, with what would go', async () => {
    const { code, err } = await typed('vr', ';46-47 ba');
    expect(code).toBe(1);
    expect(err).toContain('CAUTION 46–47 would no longer say void or old workings (void)');
  });

  it('is said though = insists', async () => {
    const { out } = await typed('vr', ';46-47 ba =');
    expect(out).toContain('CAUTION 46–47 would no longer say void or old workings (void). amended 46–47');
  });

  it('and one that comes in so is cautioned as if it were logged', async () => {
    const { out } = await typed(';45-46 vr =');
    expect(out).toContain('CAUTION void or old workings: Tell the driller');
  });
});
