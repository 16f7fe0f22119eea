import { describe, expect, test } from 'vitest';
import { hashText } from '../../src/record/hash.ts';

// NIST, FIPS 180-4 "Secure Hash Standard"; the messages and digests are those of its example values for SHA-256
// (one block, two blocks) and of FIPS 180-2, appendix B.3 (a million times the letter a).
describe('SHA-256 against the examples of FIPS 180', () => {
  test.each([
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
    ['a'.repeat(1_000_000), 'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0'],
  ])('message %# gives the printed digest', (message, digest) => {
    expect(hashText(message)).toBe(digest);
  });
});
