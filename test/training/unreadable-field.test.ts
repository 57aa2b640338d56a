import assert from 'node:assert/strict';
import { findingsIn, told } from './journal-from-text';

const unread = (line: string) =>
  told('unreadable-field', { '2026-02-24.md': line }, '2026-02-24').map((one) =>
    one.split(' | ').slice(1).join(' | '),
  );

describe('unreadable-field', () => {
  it('stands on exactly the characters in question and says what is expected', () => {
    assert.deepEqual(unread('- [x] #session flexibility 81:30 75min 6/10'), [
      'warning | 81:30 | 81:30 is not a time of day; write it like 18:30, 18:30-19:45',
    ]);
    assert.deepEqual(unread('- [x] #session flexibility 11/10'), [
      'warning | 11/10 | 11/10 is not a rating from 0/10 to 10/10; write it like 7/10',
    ]);
  });

  it('says what is probably meant, and can put it there', () => {
    assert.deepEqual(unread('- #measure low-split gap 9.5 cm'), [
      'warning | 9.5 cm | 9.5 cm has a blank before its unit; did you mean 9.5cm?',
    ]);
    const found = findingsIn({ '2026-02-24.md': '- #measure low-split gap 9.5 cm' }, '2026-02-24');
    const finding = found.find((one) => one.code === 'unreadable-field');
    assert.equal(finding?.facts.suggestion, '9.5cm');
    assert.deepEqual(finding.remedies, ['replace-text']);
  });

  it('stands on the tag when a field is missing', () => {
    assert.deepEqual(unread('- #measure'), [
      'warning | #measure | This tag lacks a field, such as low-split',
    ]);
    assert.deepEqual(unread('- #measure low-split gap'), [
      'warning | #measure | This tag lacks a field, such as 9.5cm',
    ]);
  });

  it('lists the fields that a tag takes', () => {
    assert.match(
      unread('- [ ] #session flexibility fro:low-split')[0] ?? '',
      /^warning \| fro \| fro: is no field of this tag; did you mean for\?$/,
    );
    assert.match(unread('- [ ] #session flexibility colour:red')[0] ?? '', /it takes .*for:.*$/);
  });
});
