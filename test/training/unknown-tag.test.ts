import assert from 'node:assert/strict';
import { told } from './journal-from-text';

describe('unknown-tag', () => {
  it('stands on a name that is nearly a tag, and on no other hashtag', () => {
    assert.deepEqual(
      told(
        'unknown-tag',
        { '2026-02-24.md': '- [x] #sesion flexibility\n- #camping\n- #messure low-split 9cm' },
        '2026-02-24',
      ),
      [
        '2026-02-24.md | information | #sesion | #sesion is no tag; did you mean #session?',
        '2026-02-24.md | information | #messure | #messure is no tag; did you mean #measure?',
      ],
    );
  });
});
