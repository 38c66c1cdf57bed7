import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sha256 } from '../../src/base/sha256.js';

describe('SHA-256', () => {
  // FIPS 180-4 examples (csrc.nist.gov, SHA256.pdf) and the empty text, from memory; the second test holds them to a library.
  test.each([
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    ['abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq', '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1'],
  ])('of %j', (text, hash) => expect(sha256(text)).toBe(hash));

  const host = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

  test('is what the host gives, for every length around the ends of blocks and for any signs', () => {
    for (let length = 0; length < 200; length += 1)
      expect(sha256('ü'.repeat(length >> 1) + 'x'.repeat(length & 1)), String(length)).toBe(
        host('ü'.repeat(length >> 1) + 'x'.repeat(length & 1)),
      );
    for (let length = 50; length < 140; length += 1) expect(sha256('x'.repeat(length)), String(length)).toBe(host('x'.repeat(length)));
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 400 }), (text) => sha256(text) === host(text)));
    expect(sha256('orchard '.repeat(40_000))).toBe(host('orchard '.repeat(40_000)));
  });
});
