import { expect, it } from 'vitest';
import { crc32, crcText } from '../../src/record/crc32.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

it('gives the check value that ITU-T V.42 and the catalogues of CRCs print for 123456789', () => {
  expect(crc32(bytes('123456789'))).toBe(0xcbf43926);
  expect(crcText(bytes('123456789'))).toBe('cbf43926');
});

it('gives the CRC that stands in every PNG file after its empty end chunk (PNG specification, IEND: AE 42 60 82)', () => {
  expect(crcText(bytes('IEND'))).toBe('ae426082');
});

it('gives zero for nothing', () => {
  expect(crc32(bytes(''))).toBe(0);
});
