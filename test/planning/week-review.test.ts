import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { parseIsoWeek } from '../../src/notation/time/iso-week';
import { reviewWeek, type WeekReview, type WeekReviewOptions } from '../../src/planning/week-review';
import { applied, changed, date, journalOf, type Notes } from './journal-of';

const monday = date('2026-03-02');

function review(notes: Notes, options: Partial<WeekReviewOptions> = {}): WeekReview {
  return reviewWeek(journalOf(notes), { today: monday, zone: 'UTC', ...options });
}

function weekOf(text: string) {
  const week = parseIsoWeek(text);
  assert.ok(week);
  return week;
}

const quiet = '- #rule recovery min:0/week\n';

const notes: Notes = {
  'journal.md': quiet,
  'goals.md':
    '- #goal low-split by:2026-06-14\n- #why because of the song nobody knows\n- #metric gap from:14cm to:0cm noise:1cm\n- [ ] #step ten by:2026-03-15 metric:gap to:10cm\n',
  '2026-02-16.md': '- #measure low-split gap 11cm warm\n',
  '2026-02-23.md':
    '- [x] #session flexibility 18:30 75min 7/10 -- secret words\n- #measure low-split gap 10cm warm\n- #sore hips 4/10\n',
  '2026-02-25.md':
    '- [ ] #session strength 18:30 60min 6/10 skipped:tired -- more secret words\n- #pain left-wrist 5/10\n',
  '2026-02-26.md': '- [ ] #session skill 18:30 45min 5/10 moved:2026-02-27\n',
  '2026-02-27.md': '- [ ] #session skill 18:30 45min 5/10\n',
};

describe('the review of a week', () => {
  it('writes the facts between two marked lines, and prompts below them, into a new week note', () => {
    assert.deepEqual(changed(notes, review(notes).changes), {
      '2026-W09.md': `# 2026-W09

<!-- training journal: facts of 2026-W09 -->

- Kept: 1 of 3 sessions, 75 min
- Not done: strength, Wednesday (tired)
- Not marked: skill, Friday
- Moved: skill, Thursday to 2026-02-27
- Sore: hips (4/10, Monday)
- Measured: low-split gap warm, 10 cm on Monday; 1 cm nearer than on 2026-02-16, within measuring noise
- Load: 525
- Step reached: ten of low-split, 2026-02-23, 20 days early
- low-split: Not enough notes yet for a date: 2 of 5 days measured

<!-- training journal: end of facts -->

## In your own words

- What went well?
- What got in the way?
- What do I change next week?
`,
    });
  });

  it('holds no pain, no private reason and no word of the athlete unless asked for', () => {
    const text = (options: Partial<WeekReviewOptions>) => review(notes, options).lines.join('\n');
    const plain = text({});
    for (const word of ['pain', 'wrist', 'song', 'secret'])
      assert.doesNotMatch(plain.toLowerCase(), new RegExp(word));
    assert.match(text({ includePain: true }), /^Pain: left-wrist \(5\/10, Wednesday\)$/m);
    assert.match(text({ includeWhy: true }), /^low-split: because of the song nobody knows$/m);
    for (const options of [{ includePain: true }, { includeWhy: true }])
      assert.doesNotMatch(text(options), /secret/);
    const hurting = {
      'journal.md': `${quiet}- #routine press strength regions:wrists\n`,
      '2026-02-23.md': '- #pain left-wrist 5/10\n',
      '2026-02-25.md': '- [ ] #session strength 60min 8/10 routine:press\n',
    };
    const during = { today: date('2026-02-24'), week: weekOf('2026-W09') };
    assert.doesNotMatch(review(hurting, during).lines.join('\n'), /pain|hurt|wrist/i);
    assert.match(review(hurting, { ...during, includePain: true }).lines.join('\n'), /^open-pain: /m);
  });

  it('changes nothing the second time, and follows what has changed since', () => {
    const written = applied(notes, review(notes).changes);
    assert.deepEqual(review(written).changes, []);
    const ticked = { ...written, '2026-02-27.md': '- [x] #session skill 18:30 45min 5/10\n' };
    const after = applied(ticked, review(ticked).changes);
    assert.match(after['2026-W09.md'] ?? '', /^- Kept: 2 of 3 sessions, 120 min$/m);
    assert.deepEqual(review(after).changes, []);
  });

  it('never touches a word outside the marked lines', () => {
    const own = `My week.\r\n\r\n<!-- training journal: facts of 2026-W09 -->\r\nold\r\n<!-- training journal: end of facts -->\r\nAnd *after*.  `;
    const before = { ...notes, 'weeks/2026-W09.md': own };
    const text = changed(before, review(before).changes)['weeks/2026-W09.md'] ?? '';
    assert.ok(
      text.startsWith('My week.\r\n\r\n<!-- training journal: facts of 2026-W09 -->\r\n\r\n- Kept: 1 of 3'),
    );
    assert.ok(text.endsWith('\r\n\r\n<!-- training journal: end of facts -->\r\nAnd *after*.  '));
    assert.doesNotMatch(text, /[^\r]\n|old/);
  });

  it('adds the marked lines behind the words of a note that has none, without prompts', () => {
    const before = { ...notes, '2026-W09.md': '# Sunday\n\nLong week.' };
    const text = changed(before, review(before).changes)['2026-W09.md'] ?? '';
    assert.ok(
      text.startsWith('# Sunday\n\nLong week.\n\n<!-- training journal: facts of 2026-W09 -->\n\n- Kept'),
    );
    assert.ok(text.endsWith('\n\n<!-- training journal: end of facts -->\n'));
    assert.deepEqual(review({ ...before, '2026-W09.md': text }).changes, []);
  });

  it('adds them in front where the note ends within code, and takes marks in code for words', () => {
    const fenced =
      '```\n<!-- training journal: facts of 2026-W09 -->\n<!-- training journal: end of facts -->\n';
    const before = { ...notes, '2026-W09.md': fenced };
    const text = changed(before, review(before).changes)['2026-W09.md'] ?? '';
    assert.ok(text.startsWith('<!-- training journal: facts of 2026-W09 -->\n\n- Kept'));
    assert.ok(text.endsWith(`\n\n${fenced}`));
    assert.deepEqual(review({ ...before, '2026-W09.md': text }).changes, []);
  });

  it('writes nothing when the second marked line is gone: nobody knows where the facts end', () => {
    const before = {
      ...notes,
      '2026-W09.md': '<!-- training journal: facts of 2026-W09 -->\n- Kept\n\nWords.\n',
    };
    const found = review(before);
    assert.deepEqual([found.changes, found.notClosed], [[], true]);
    assert.equal(review(notes).notClosed, false);
  });

  it('goes beside the other week notes, with the year of its folder its own', () => {
    const path = (others: Notes, options = {}) => review({ ...notes, ...others }, options).note;
    assert.equal(path({}), '2026-W09.md');
    assert.equal(path({ 'weeks/2026-W07.md': 'Words.\n' }), 'weeks/2026-W09.md');
    assert.equal(path({ 'reviews/2025/2025-W50.md': 'Words.\n' }), 'reviews/2026/2026-W09.md');
    assert.equal(path({ 'weeks/2026-W09.md': 'Words.\n' }), 'weeks/2026-W09.md');
  });

  it('is of the running week on Saturday and Sunday, else of the one before, or of the one asked for', () => {
    const week = (today: string, options = {}) => review(notes, { today: date(today), ...options }).week;
    assert.equal(week('2026-03-02'), '2026-W09');
    assert.equal(week('2026-03-06'), '2026-W09');
    assert.equal(week('2026-03-07'), '2026-W10');
    assert.equal(week('2026-03-08'), '2026-W10');
    assert.equal(week('2026-03-08', { week: weekOf('2026-W08') }), '2026-W08');
  });

  it('says of a running week what still stands in it', () => {
    const { lines } = review(notes, { today: date('2026-02-24'), week: weekOf('2026-W09') });
    assert.deepEqual(lines.slice(0, 2), ['Kept: 1 of 1 sessions, 75 min', 'Still planned: 1']);
  });

  it('suggests the better order of a week in which somebody was sore', () => {
    const { lines } = review({
      'journal.md': quiet,
      '2026-02-23.md': '- [x] #session flexibility 18:30 75min 6/10\n',
      '2026-02-24.md': '- [x] #session flexibility 18:30 75min 6/10\n- #sore hamstrings 5/10\n',
      '2026-02-25.md': '- [x] #session strength 18:30 60min 6/10\n',
    });
    assert.deepEqual(lines.slice(-2), [
      "Sore on Tuesday, 22 h 45 min after Monday's flexibility session: hamstrings",
      'Suggestion for a week like this: flexibility Monday, strength Tuesday, flexibility Wednesday',
    ]);
  });

  it('asks one question more in a week in which many slow down', () => {
    const { changes } = review({ ...notes, 'more.md': '- #goal block from:2026-02-10\n' });
    const [change] = changes;
    assert(change?.kind === 'create');
    assert.match(
      change.text,
      /- Week 4 of the block: many slow down now\. What would make next week easier to keep\?\n$/,
    );
  });

  it('can speak another language', () => {
    const { lines } = review(notes, { say: ({ template }) => `<${template.length}> [x]` });
    assert.match(lines[0] ?? '', /^\\<\d+> \\\[x\\\]$/);
  });

  it('loses no word of any note, whatever stands in it', () => {
    const piece = fc.constantFrom(
      'Words.\n',
      '\n',
      '```\n',
      '~~~\n',
      '- #session\n',
      '<!-- training journal: facts of 2026-W09 -->\n',
      '<!-- training journal: end of facts -->\n',
      '<!-- open\n',
      '# Heading\r\n',
      'no end',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 8 }), (pieces) => {
        const before = { ...notes, '2026-W09.md': pieces.join('') };
        const found = review(before);
        if (found.changes.length === 0) return;
        const [change] = found.changes;
        assert(change?.kind === 'edit' && change.edits.length === 1);
        const [edit] = change.edits;
        assert.ok(edit);
        const gone = before['2026-W09.md'].slice(edit.range.start, edit.range.end);
        if (gone !== '') {
          assert.ok(before['2026-W09.md'].slice(0, edit.range.start).endsWith('facts of 2026-W09 -->'));
          assert.ok(
            before['2026-W09.md'].slice(edit.range.end).startsWith('<!-- training journal: end of facts -->'),
          );
        }
        assert.deepEqual(review(applied(before, found.changes)).changes, []);
      }),
      { seed: 9, numRuns: 150 },
    );
  });
});
