import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linesOf } from '../../../src/commands/lines/lines-of.ts';

async function linesIn(chunks: readonly (Uint8Array | string)[]): Promise<readonly string[]> {
  const lines: string[] = [];
  for await (const line of linesOf(
    (async function* () {
      yield* chunks;
    })(),
  ))
    lines.push(line);
  return lines;
}

/** Bytes cut into pieces of a size, as a pipe may bring them. */
function pieces(bytes: Uint8Array, size: number): readonly Uint8Array[] {
  return Array.from({ length: Math.ceil(bytes.length / size) }, (_, index) =>
    bytes.subarray(index * size, (index + 1) * size),
  );
}

const plainLines = fc.array(fc.string({ unit: fc.constantFrom('a', 'é', '輝', '1', ';', ' ', '\t') }), {
  maxLength: 6,
});

describe('lines of a pipe', () => {
  it('are the same whatever ends them, wherever the pipe cuts them and with a byte order mark or without', async () => {
    await fc.assert(
      fc.asyncProperty(
        plainLines,
        fc.constantFrom('\n', '\r\n', '\r'),
        fc.constantFrom('utf8', 'utf8 mark', 'utf16'),
        fc.integer({ min: 2, max: 7 }),
        async (lines, end, coding, size) => {
          const text = lines.map((line) => `${line}${end}`).join('');
          const marked = coding === 'utf8' ? text : `\uFEFF${text}`;
          const bytes = Buffer.from(marked, coding === 'utf16' ? 'utf16le' : 'utf8');
          expect(await linesIn(pieces(new Uint8Array(bytes), size))).toEqual(lines);
        },
      ),
      { seed: 20260314, numRuns: 300 },
    );
  });

  it('may lack the end of the last one', async () => {
    expect(await linesIn(['bawx1\r\np3'])).toEqual(['bawx1', 'p3']);
    expect(await linesIn(['p3\r'])).toEqual(['p3']);
    expect(await linesIn([])).toEqual([]);
  });

  it('are cut where no end is in sight: a stream without one fills no memory, and the line after it is read', async () => {
    const chunks = Array.from({ length: 400 }, () => 'x'.repeat(1000));
    const [first, second, ...more] = await linesIn([...chunks, '\np3\n']);
    expect(first).toHaveLength(10_000);
    expect(second).toBe('p3');
    expect(more).toEqual([]);
  });
});
