import fc from 'fast-check';

/** Characters that readers trip over: controls, marks of direction, halves of pairs, blanks of all kinds. */
const oddCharacter = fc.constantFrom(
  '\0',
  '\u0007',
  '\u001b[31m',
  '\u00a0',
  '\u0085',
  '\u200b',
  '\u2028',
  '\u202e',
  '\ufeff',
  '\ufffd',
  '\ud83d',
  '\udc00',
  '🤸',
  'é',
  'ʼ',
  '﹟',
);

/** Texts made of a format's own pieces, between characters and words of any kind. */
export function anyText(pieces: readonly string[], maxLength = 40): fc.Arbitrary<string> {
  const part = fc.oneof(
    { weight: 12, arbitrary: fc.constantFrom(...pieces) },
    { weight: 2, arbitrary: fc.constantFrom('\n', '\r\n', '\r', ' ', '\t', '    ') },
    { weight: 1, arbitrary: oddCharacter },
    { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 6 }) },
  );
  return fc.array(part, { maxLength }).map((parts) => parts.join(''));
}
