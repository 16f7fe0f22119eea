/** No line of a log is as long, characters; what is longer is cut, and refused as any line that can't be read. */
const LONGEST = 10_000;

/**
 * Lines of a pipe or a file as programs on any platform write them: they end in LF, CRLF or CR, and a byte order mark may come first, of UTF-8 or
 * of the UTF-16 that a Windows shell writes to a file. A line without an end in sight fills no memory: it is cut.
 */
export async function* linesOf(input: AsyncIterable<Uint8Array | string>): AsyncGenerator<string> {
  let decoder: ReturnType<typeof decoderFor> | undefined;
  let held = '';
  let begun = false;
  let cut = false;
  for await (const chunk of input) {
    decoder ??= decoderFor(chunk);
    const text = typeof chunk === 'string' ? chunk : decoder.decode(chunk, { stream: true });
    held += begun ? text : text.replace(/^\uFEFF/, '');
    begun ||= text !== '';
    // The end of CRLF may be in the next chunk: a CR that comes last waits for it.
    const lines = held.split(/\r\n|\n|\r(?!$)/);
    held = lines.pop() ?? '';
    for (const line of lines) {
      if (!cut) yield line.slice(0, LONGEST);
      cut = false;
    }
    if (held.length <= LONGEST) continue;
    if (!cut) yield held.slice(0, LONGEST);
    cut = true;
    held = held.endsWith('\r') ? '\r' : '';
  }
  const last = held + (decoder?.decode() ?? '');
  if (last !== '' && !cut) yield last.replace(/\r$/, '');
}

function decoderFor(first: Uint8Array | string) {
  const isUtf16 = typeof first !== 'string' && first[0] === 0xff && first[1] === 0xfe;
  return new TextDecoder(isUtf16 ? 'utf-16le' : 'utf-8');
}
