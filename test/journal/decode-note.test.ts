import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { decodeFile, decodeNote } from '../../src/journal/decode-note';

const bytes = (text: string) => new TextEncoder().encode(text);

describe('the bytes of a note', () => {
  it('are UTF-8, and every line ending stays as it is', () => {
    const text = '# Dienstag, für mich\r\n- [x] #session 柔軟 18:30\r🤸\n';
    assert.equal(decodeNote(bytes(text)), text);
    assert.equal(decodeNote(new Uint8Array()), '');
  });

  it('lose one byte order mark, not two', () => {
    assert.equal(decodeNote(bytes('\ufeff# Day')), '# Day');
    assert.equal(decodeNote(bytes('\ufeff\ufeff# Day')), '\ufeff# Day');
  });

  it('are no text when they are not valid UTF-8', () => {
    assert.equal(decodeNote(Uint8Array.of(0x23, 0xff, 0x20)), undefined);
    assert.equal(decodeNote(Uint8Array.of(0xc3)), undefined);
    // ISO 8859-1 for "für".
    assert.equal(decodeNote(Uint8Array.of(0x66, 0xfc, 0x72)), undefined);
  });

  it('are no text when there are NUL characters in them', () => {
    assert.equal(decodeNote(bytes('a\0b')), undefined);
    // UTF-16 with its byte order mark, and without.
    assert.equal(decodeNote(Uint8Array.of(0xff, 0xfe, 0x23, 0)), undefined);
    assert.equal(decodeNote(Uint8Array.of(0x23, 0, 0x20, 0)), undefined);
  });
});

describe('the bytes of a file of a journal', () => {
  it('are read as a note or as a calendar, by its name', () => {
    const latin = Uint8Array.of(0x66, 0xfc, 0x72);
    assert.equal(decodeFile('2026-02-24.md', latin), undefined);
    assert.equal(decodeFile('shifts.ics', latin), 'f\ufffdr');
    assert.equal(decodeFile('shifts.ics', bytes('\ufeffBEGIN:VCALENDAR')), 'BEGIN:VCALENDAR');
  });
});
