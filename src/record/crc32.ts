const TABLE = Uint32Array.from({ length: 256 }, (_, start) => {
  let crc = start;
  for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  return crc;
});

/** CRC-32 of bytes: polynomial 0x04C11DB7 reflected, as ISO 3309, ITU-T V.42 and PNG use it. 0 to 2^32 − 1. */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) crc = (crc >>> 8) ^ (TABLE[(crc ^ byte) & 0xff] ?? 0);
  return (crc ^ 0xffffffff) >>> 0;
}

/** The CRC-32 as eight lower-case hex digits. */
export function crcText(bytes: Uint8Array): string {
  return crc32(bytes).toString(16).padStart(8, '0');
}
