import assert from 'node:assert/strict';
import fc from 'fast-check';
import { openNote } from '../../../src/journal/open-note';
import { exerciseLines } from '../../../src/planning/calendar/exercise-lines';
import { exported, values } from './exports';

/** What is shown of the first session of a note. */
function shown(text: string): readonly string[] {
  const note = openNote('2026-03-03.md', text);
  const entry = note.reading.entries.find(({ tag }) => tag === 'session');
  assert(entry);
  return exerciseLines(note.text, entry);
}

describe('exercises as plain text', () => {
  it('are the lines nested under a session', () => {
    assert.deepEqual(
      shown(
        [
          '- [ ] #session flexibility',
          '  Warm up until you *sweat* a little.',
          '  - [x] **Cat** stretch `2x10`',
          '  - Pigeon 3x60s',
          '    - each side',
          '    - [how](https://example.org/pigeon)',
          '  1. Frog',
          '  2. Straddle',
          '',
          '  > Breathe.',
          '',
          '- something else',
        ].join('\n'),
      ),
      [
        'Warm up until you sweat a little.',
        '- Cat stretch 2x10',
        '- Pigeon 3x60s',
        '  - each side',
        '  - how',
        '1. Frog',
        '2. Straddle',
        'Breathe.',
      ],
    );
  });

  it('stand as they do under a session that is nested itself, with any line ending', () => {
    assert.deepEqual(
      shown('- Tuesday\r\n    - [ ] #session skill\r\n        - Hoop 3x\r\n        - Beam\r\n'),
      ['- Hoop 3x', '- Beam'],
    );
  });

  it('are without tags and all that is nested under them', () => {
    assert.deepEqual(
      shown(
        [
          '- [x] #session flexibility',
          '  - Pigeon 3x60s',
          '  - #pain left-hip 3/10',
          '    - it pinches at the front',
          '  - #measure low-split 9cm photo:photos/side.jpg',
          '  - [ ] #sore hamstring 4/10',
          '  - #wyh a slip of the finger is no reason to tell everyone',
          '    - more of it',
          '  - Frog',
          '  #why because',
          '  of something private',
        ].join('\n'),
      ),
      ['- Pigeon 3x60s', '- Frog'],
    );
  });

  it('are without a tag in a paragraph and the words behind it', () => {
    assert.deepEqual(
      shown(
        ['- [x] #session flexibility', '  Slowly.', '  #pain hip 3/10', '  it hurts at night'].join('\n'),
      ),
      ['Slowly.'],
    );
  });

  it('are without remarks, comments, pictures and what speaks of a private tag', () => {
    assert.deepEqual(
      shown(
        [
          '- [x] #session flexibility',
          '  - Pigeon 3x60s -- left side feels odd',
          '  - Frog 2x90s — the knee again',
          '  - Straddle <!-- ask the doctor --> 3x',
          '  - ![me](photos/me.jpg)',
          '  - [from the side](photos/side.heic)',
          '  - Look at photos/back.png first',
          '  - careful, see #pain of last week',
          '  <!-- a whole',
          '  block of it -->',
          '  - -- nothing but a remark',
        ].join('\n'),
      ),
      ['- Pigeon 3x60s', '- Frog 2x90s', '- Straddle 3x', '- Look at first'],
    );
  });

  it('are none under a session that stands alone', () => {
    assert.deepEqual(shown('- [ ] #session skill'), []);
    assert.deepEqual(shown('#session skill\nA day of words.'), []);
  });
});

describe('private words', () => {
  /** Lines in which `secret` is private, indented as deep as a body of a session. */
  const lines = fc.constantFrom(
    (secret: string) => `  - #pain hip 3/10 -- ${secret}`,
    (secret: string) => `  - #pain ${secret} 3/10`,
    (secret: string) => `  - #why ${secret}`,
    (secret: string) => `  - #sore hip 3/10\n    - ${secret}\n      - ${secret}`,
    (secret: string) => `  - Pigeon -- ${secret}`,
    (secret: string) => `  - Pigeon — ${secret}`,
    (secret: string) => `  <!-- ${secret} -->`,
    (secret: string) => `  - Frog <!-- ${secret} --> 3x`,
    (secret: string) => `  - ![${secret}](photos/${secret}.jpg)`,
    (secret: string) => `  - [ ] #measure split 9cm photo:photos/${secret}.jpg`,
    (secret: string) => `  - #win ${secret}`,
    (secret: string) => `  words\n  #why ${secret}\n  ${secret}`,
    (secret: string) => `  - exercise\n\n    #pain hip 2/10\n    ${secret}`,
  );
  const heads = fc.constantFrom(
    (secret: string) => `- [ ] #session flexibility 18:30 75min 7/10 -- ${secret}`,
    (secret: string) => `- [x] #session flexibility 18:30 — ${secret}`,
    (secret: string) => `1. #session flexibility skipped:injured -- ${secret}`,
  );

  it('are in no calendar, wherever they stand around and under a session', () => {
    fc.assert(
      fc.property(heads, fc.array(lines, { maxLength: 6 }), (head, body) => {
        const secret = 'Zaunkoenig';
        const marker = head(secret).startsWith('1.') ? '   ' : '  ';
        const text = [head(secret), ...body.map((line) => line(secret).replace(/^ {2}/gm, marker))].join(
          '\n',
        );
        const notes = {
          'goals.md': `- #goal split by:2026-06-14 "Split"\n- #why ${secret}\n`,
          '2026-03-03.md': `# ${secret}\n\nA day of ${secret}.\n\n${text}\n\n- #pain hip 4/10 -- ${secret}\n`,
        };
        const file = exported(notes, { alarmMinutes: 10 }).replaceAll('\r\n ', '');
        assert.equal(values(file, 'UID').length, 1, text);
        assert(!file.includes(secret), text);
        assert(!/pain|hip/.test(file), text);
      }),
      { seed: 20260304, numRuns: 300 },
    );
  }).timeout(20_000);
});
