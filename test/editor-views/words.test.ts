import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { wordsOf } from '../../src/editor/words';
import { fillMessage } from '../../src/training/finding';

describe('numbers in words', () => {
  const words = wordsOf('en', fillMessage);

  it('have no sign where they round to zero', () => {
    assert.deepEqual(
      [words.number(-0, 0), words.number(-0.4, 0), words.number(-0.001, 2), words.quantity(-0.04, 'cm')],
      ['0', '0', '0', '0 cm'],
    );
    assert.deepEqual([words.number(-0.5, 1), words.number(-1234, 0)], ['-0.5', '-1,234']);
  });
});
