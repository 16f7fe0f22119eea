/** A part of a mail: its headers as they are, and its body as it is. */
export interface Part {
  readonly headers: readonly string[];
  readonly body: string | Uint8Array;
}

const bytesOf = (body: string | Uint8Array): Buffer =>
  typeof body === 'string' ? Buffer.from(body, 'utf8') : Buffer.from(body);

/** A part with a file attached, in base64 as mail programs have it. */
export function attached(name: string, bytes: string | Uint8Array, type = 'application/octet-stream'): Part {
  const lines =
    bytesOf(bytes)
      .toString('base64')
      .match(/.{1,76}/g) ?? [];
  return {
    headers: [
      `Content-Type: ${type}`,
      'Content-Transfer-Encoding: base64',
      `Content-Disposition: attachment; filename="${name}"`,
    ],
    body: lines.join('\r\n'),
  };
}

/** A part as bytes. */
export function partBytes({ headers, body }: Part): Uint8Array {
  return new Uint8Array(
    Buffer.concat([Buffer.from(`${headers.join('\r\n')}\r\n\r\n`, 'utf8'), bytesOf(body)]),
  );
}

/** Several parts as one. */
export function multipart(parts: readonly Part[], boundary = 'limit', type = 'mixed'): Part {
  const inner = parts.flatMap((part) => [
    Buffer.from(`--${boundary}\r\n`),
    Buffer.from(partBytes(part)),
    Buffer.from('\r\n'),
  ]);
  return {
    headers: [`Content-Type: multipart/${type}; boundary="${boundary}"`],
    body: Buffer.concat([...inner, Buffer.from(`--${boundary}--\r\n`)]),
  };
}

const TOP = [
  'From: Ines Falk <ines@example.com>',
  'To: rig@example.com',
  'Subject: Re: holes',
  'MIME-Version: 1.0',
];

/** A mail of a part, under the headers of a mail. */
export function mail(part: Part, headers: readonly string[] = TOP): Uint8Array {
  return partBytes({ headers: [...headers, ...part.headers], body: part.body });
}

/** A mail with files attached, as most mail programs make it. */
export function mailWith(...parts: readonly Part[]): Uint8Array {
  const words: Part = { headers: ['Content-Type: text/plain; charset=utf-8'], body: 'See attached.\r\n' };
  return mail(multipart([words, ...parts]));
}
