import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { type ReviewSection, reviewSections, reviewTitle } from '../../src/editor/review-flow/review-rows';
import { wordsOf } from '../../src/editor/words';
import {
  proposalToggled,
  reviewBegins,
  sessionToggled,
} from '../../src/planning/week-review-flow/review-progress';
import { fillMessage } from '../../src/training/finding';
import type { Notes } from '../planning/journal-of';
import { flowOf, planned } from '../planning/week-review-flow/in-review';

const words = wordsOf('en', fillMessage);
const quiet = '- #rule recovery min:0/week\n- #rule rest-day min:0/week\n';
const notes: Notes = {
  'rules.md': `${quiet}- #free monday tuesday wednesday 18:00-20:00\n`,
  'goals.md':
    '- #goal low-split\n- #why a secret\n- #metric gap from:14cm to:0cm\n- #need flexibility 1/week 60min 7/10\n',
  '2026-02-09.md': '- #measure low-split gap 12cm warm\n',
  '2026-02-23.md': '- [x] #session flexibility 18:00 60min 7/10 for:low-split\n- #sore hips 4/10\n',
};

/** Rows as they are read: the heading in front, the icon, and what stands beside and below. */
const read = (sections: readonly ReviewSection[]) =>
  sections.flatMap(({ title, rows }) =>
    rows.map(({ icon, label, description, detail }) =>
      [title, `(${icon}) ${label}`, description, detail].filter((part) => part !== undefined).join(' | '),
    ),
  );

describe('what the steps of a review show', () => {
  const flow = flowOf(notes);

  it('first what happened, by what it is about', () => {
    const shown = { flow, progress: reviewBegins, words };
    assert.equal(reviewTitle(shown), '1 of 3: what happened, Mon, Feb 23 to Sun, Mar 1');
    const rows = read(reviewSections(shown));
    assert.equal(rows[0], '(arrow-right) Next: 1 proposal');
    assert.ok(rows.includes('Kept | (circle-small-filled) Kept: 1 of 1 sessions, 60 min'), rows.join('\n'));
    assert.ok(rows.includes('Body | (circle-small-filled) Sore: hips (4/10, Monday)'));
    assert.doesNotMatch(rows.join(), /secret/);
  });

  it('then the proposals, whose state is told in shape and in words', () => {
    const progress = { ...reviewBegins, step: 'proposals' } as const;
    const [proposal] = flow.proposals;
    assert.ok(proposal);
    assert.equal(reviewTitle({ flow, progress, words }), '2 of 3: what could be done otherwise');
    assert.deepEqual(read(reviewSections({ flow, progress, words })), [
      '(arrow-right) Next: plan the week | all proposals left',
      '(circle-large-outline) Measure low-split gap next week | left | Last measured on 2026-02-09, 20 days ago',
    ]);
    const taken = read(reviewSections({ flow, progress: proposalToggled(progress, proposal.id), words }));
    assert.match(taken.join('\n'), /1 of 1 proposals taken\n.*\(pass-filled\).* \| taken \|/);
  });

  it('then the next week with the taken proposals, and one row that writes all of it', () => {
    const found = planned(notes, ['reading']);
    const progress = {
      ...reviewBegins,
      step: 'plan',
      taken: new Set([flow.proposals[0]?.id ?? '']),
    } as const;
    const shown = { flow, progress, words };
    assert.equal(reviewTitle(shown), '3 of 3: next week, Mon, Mar 2 to Sun, Mar 8');
    assert.deepEqual(reviewSections(shown), []);
    const rows = read(reviewSections({ ...shown, planned: found }));
    assert.equal(
      rows[0],
      '(check-all) Write the facts of 2026-W09, 1 session, 1 proposal | into 8 notes, one undo step',
    );
    assert.ok(rows.includes('Taken | (check) Measure low-split gap next week'));
    assert.ok(rows.some((row) => /^Sessions \| \(pass-filled\) Mon, Mar 2 18:00: flexibility/.test(row)));
    const [session] = reviewSections({ ...shown, planned: found })
      .flatMap((section) => section.rows)
      .flatMap(({ action }) => (action.does === 'tick' ? [action.session] : []));
    const less = sessionToggled(progress, session ?? '');
    assert.match(
      read(reviewSections({ ...shown, progress: less, planned: found }))[0] ?? '',
      /Write the facts of 2026-W09, 1 proposal/,
    );
  });

  it('leads nobody away and writes nothing before the end: only the last row writes', () => {
    const tight = { ...notes, 'rules.md': `${quiet}- #busy 2026-03-02..2026-03-08\n` };
    const found = planned(tight);
    const tightFlow = flowOf(tight);
    const actions = (['facts', 'proposals', 'plan'] as const).map((step) =>
      reviewSections({ flow: tightFlow, progress: { ...reviewBegins, step }, planned: found, words })
        .flatMap(({ rows }) => rows)
        .map(({ action }) => action.does),
    );
    assert.deepEqual(
      actions.map((all) => all.filter((does) => does === 'write').length),
      [0, 0, 1],
    );
    const rows = read(
      reviewSections({ flow, progress: { ...reviewBegins, step: 'plan' }, planned: found, words }),
    );
    assert.match(rows.join('\n'), /the busy days 2026-03-02 to 2026-03-08/);
    assert.doesNotMatch(rows.join('\n'), /plans again|opens /);
  });

  it('says so when there is nothing to write', () => {
    const empty = planned({
      'journal.md': '',
      '2026-W09.md': flowOf({ 'journal.md': '' })
        .review.changes.map((change) => (change.kind === 'create' ? change.text : ''))
        .join(''),
    });
    const row = reviewSections({
      flow,
      progress: { ...reviewBegins, step: 'plan' },
      planned: empty,
      words,
    })[0]?.rows[0];
    assert.deepEqual(
      [row?.action.does, row?.label],
      ['end', 'There is nothing to write: the notes hold all of it'],
    );
  });
});
