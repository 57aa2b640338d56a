import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { reviewStatus } from '../../src/editor/review-status';
import { contextOf } from './viewed';

describe('the look back in the status bar', () => {
  const notes = { '2026-02-23.md': '- [x] #session hoop 18:00 75min 7/10\n' };
  const on = (day: string) => contextOf(notes, day);

  it('is there on the chosen day and after, until the facts are written, and never else', () => {
    assert.equal(reviewStatus([on('2026-02-28')]), undefined);
    assert.equal(reviewStatus([on('2026-03-01')])?.text, '$(notebook) Look back on week 2026-W09');
    assert.equal(reviewStatus([on('2026-03-04')])?.text, '$(notebook) Look back on week 2026-W09');
    assert.equal(reviewStatus([on('2026-03-05')]), undefined);
    assert.equal(reviewStatus([{ ...on('2026-03-01'), reviewDay: 'off' }]), undefined);
    assert.ok(reviewStatus([{ ...on('2026-02-27'), reviewDay: 5 }]));
    const facts =
      '<!-- training journal: facts of 2026-W09 -->\n- Kept\n<!-- training journal: end of facts -->\n';
    assert.equal(reviewStatus([contextOf({ ...notes, '2026-W09.md': facts }, '2026-03-01')]), undefined);
    assert.equal(reviewStatus([]), undefined);
  });

  it('starts the review of the only journal, and says how many there are of several', () => {
    const one = on('2026-03-01');
    assert.equal(reviewStatus([one])?.journal, one.id);
    const both = reviewStatus([one, { ...one, id: 'wren', title: 'Wren' }, on('2026-02-28')]);
    assert.equal(both?.text, '$(notebook) Look back on 2 journals');
    assert.equal(both.journal, undefined);
    assert.match(both.tooltip, /^.*: 2026-W09\nWren: 2026-W09\n/);
    assert.equal(both.accessibilityLabel, 'Training: Look back on 2 journals');
  });
});
