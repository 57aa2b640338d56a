/** Remainders for one byte, and for one byte followed by one, two and three zero bytes. */
type Tables = readonly [Uint32Array, Uint32Array, Uint32Array, Uint32Array];

function makeTables(): Tables {
  const first = new Uint32Array(256);
  for (let byte = 0; byte < 256; byte += 1) {
    let rest = byte;
    for (let bit = 0; bit < 8; bit += 1) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
    first[byte] = rest;
  }
  const longer = (table: Uint32Array) => table.map((rest) => (first[rest & 255] ?? 0) ^ (rest >>> 8));
  const second = longer(first);
  const third = longer(second);
  return [first, second, third, longer(third)];
}

const [one, two, three, four] = makeTables();

/**
 * The CRC-32 of bytes, as in ISO/IEC 3309 (HDLC) and IEEE 802.3: reflected polynomial EDB88320, begun and ended with
 * all bits turned. Four bytes a step, each by a table of its own.
 * @param before the CRC-32 of what stands before these bytes, to go on from
 * @returns 32 bits without a sign
 */
export function crc32(bytes: Uint8Array, before = 0): number {
  let rest = ~before;
  let index = 0;
  for (const end = bytes.length - 3; index < end; index += 4) {
    rest ^=
      (bytes[index] as number) |
      ((bytes[index + 1] as number) << 8) |
      ((bytes[index + 2] as number) << 16) |
      ((bytes[index + 3] as number) << 24);
    rest =
      (four[rest & 255] as number) ^
      (three[(rest >>> 8) & 255] as number) ^
      (two[(rest >>> 16) & 255] as number) ^
      (one[rest >>> 24] as number);
  }
  for (; index < bytes.length; index += 1) {
    rest = (rest >>> 8) ^ (one[(rest ^ (bytes[index] as number)) & 255] as number);
  }
  return ~rest >>> 0;
}
