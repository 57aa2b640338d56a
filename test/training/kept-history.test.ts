import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { JournalIndex } from '../../src/journal/journal-index';
import { openNote } from '../../src/journal/open-note';
import { checkHistory, KeptHistory } from '../../src/training/check-history';
import type { Finding } from '../../src/training/finding';
import { historyRules } from '../../src/training/history-rules';
import { sameInputs } from '../../src/training/history-rules/history-rule';
import { PublishedFindings } from '../../src/training/published-findings';
import { type CheckContext, checkContext } from '../../src/training/week-under-check';
import { date, week } from './dates';

function journalOf(): JournalIndex {
  const journal = new JournalIndex();
  const put = (path: string, text: string) => journal.replace(openNote(path, text));
  put('goals.md', '- #goal low-split by:2026-03-31\n- #why x\n- #metric gap from:14cm to:0cm\n');
  for (const [index, day] of ['01-26', '02-02', '02-09', '02-16', '02-23'].entries()) {
    put(
      `2026-${day}.md`,
      `- [x] #session flexibility 60min 7/10\n- #measure low-split gap ${14 - index / 2}cm\n`,
    );
  }
  put('2026-02-25.md', '- [ ] #session flexibility 60min 7/10\n');
  return journal;
}

const context = (journal: JournalIndex, today = '2026-02-25'): CheckContext =>
  checkContext(journal, { today: date(today), zone: 'UTC' });

/** The codes whose check would be made again after a change. */
function madeAgain(change: (journal: JournalIndex) => void, today = '2026-02-25'): readonly string[] {
  const journal = journalOf();
  const before = historyRules.map((rule) => rule.inputs(context(journal)));
  change(journal);
  return historyRules
    .filter((rule, index) => !sameInputs(rule, before[index] ?? [], rule.inputs(context(journal, today))))
    .map(({ code }) => code);
}

describe('what the whole journal shows', () => {
  it('is not worked out again while its notes stand', () => {
    assert.deepEqual(
      madeAgain(() => {}),
      [],
    );
  });

  it('is not worked out again for words, sessions and soreness of today', () => {
    assert.deepEqual(
      madeAgain((journal) =>
        journal.replace(
          openNote('2026-02-25.md', '# Words\n\n- [x] #session flexibility 60min 7/10\n- #sore hips 3/10\n'),
        ),
      ),
      [],
    );
  });

  it('is not worked out again for words beside a reading', () => {
    assert.deepEqual(
      madeAgain((journal) => {
        const text = journal.note('2026-02-23.md')?.text ?? '';
        journal.replace(openNote('2026-02-23.md', `${text}\nWords.\n`));
      }).filter((code) => code === 'goal-pace'),
      [],
    );
  });

  it('is worked out again where it matters: a reading, an older session, another day, the plan', () => {
    assert.deepEqual(
      madeAgain((journal) => journal.replace(openNote('2026-02-25.md', '- #measure low-split gap 9cm\n'))),
      ['goal-pace'],
    );
    assert.deepEqual(
      madeAgain((journal) => journal.replace(openNote('2026-02-20.md', '- [x] #session skill 45min\n'))),
      ['slipping', 'gap-worth-changing'],
    );
    assert.deepEqual(
      madeAgain(() => {}, '2026-02-26'),
      ['goal-pace', 'slipping'],
    );
    assert.deepEqual(
      madeAgain((journal) => journal.replace(openNote('rules.md', '- #rule any max:3/week\n'))),
      ['goal-pace', 'goal-hours', 'slipping', 'gap-worth-changing'],
    );
  });

  it('reads the same kept as new, after any change', () => {
    const journal = journalOf();
    const kept = new KeptHistory();
    const check = () => {
      const found = kept.check(context(journal));
      assert.deepEqual(found, checkHistory(context(journal)));
      return found.map(({ code }: Finding) => code);
    };
    assert.deepEqual(check(), ['goal-pace']);
    journal.replace(openNote('2026-02-24.md', 'Words.\n'));
    assert.deepEqual(check(), ['goal-pace']);
    journal.replace(
      openNote('goals.md', '# Goals\n\n- #goal low-split by:2026-12-31\n- #metric gap from:14cm to:0cm\n'),
    );
    assert.deepEqual(check(), []);
    journal.replace(
      openNote('goals.md', '# Goals\n\n- #goal low-split by:2026-03-31\n- #metric gap from:14cm to:0cm\n'),
    );
    assert.deepEqual(check(), ['goal-pace']);
    journal.remove('2026-02-23.md');
    assert.deepEqual(check(), []);
  });

  it('is published with the findings of the weeks in view', () => {
    const journal = journalOf();
    const published = new PublishedFindings(journal);
    const view = {
      today: date('2026-02-25'),
      zone: 'UTC',
      weeks: [week('2026-W09')],
      openNotes: new Set<string>(),
    };
    published.refresh(view);
    assert.deepEqual(
      published.of('goals.md').map(({ code }) => code),
      ['goal-pace'],
    );
    assert.equal(published.refresh(view).size, 0);
  });
});
