// Checks of CRC-32 as in ISO/IEC 3309. Check value: Williams (1993), A Painless Guide to CRC Error Detection Algorithms
// [M]. Oracle: zlib, whose gzip members end in the CRC-32 of their contents (RFC 1952, section 2.3.1) [C].
import assert from 'node:assert/strict';
import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { crc32 } from '../../src/journal/kept/crc32';

describe('published: CRC-32', () => {
  it('the check value of the digits 1 to 9 [M]', () => {
    assert.equal(crc32(new TextEncoder().encode('123456789')), 0xcbf43926);
    assert.equal(crc32(new Uint8Array()), 0);
  });

  it('what zlib writes behind the same bytes, in one go and in two [C]', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), fc.nat({ max: 300 }), (bytes, cut) => {
        const expected = gzipSync(bytes).readUInt32LE(gzipSync(bytes).length - 8);
        assert.equal(crc32(bytes), expected);
        assert.equal(crc32(bytes.subarray(cut), crc32(bytes.subarray(0, cut))), expected);
      }),
      { seed: 2026, numRuns: 1000 },
    );
  });
});
