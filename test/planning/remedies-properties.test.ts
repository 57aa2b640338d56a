import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { dayNumber, isoDate } from '../../src/notation/time/iso-date';
import { isoWeekOf, mondayOf } from '../../src/notation/time/iso-week';
import { remediesFor } from '../../src/planning/remedies';
import { checkJournal } from '../../src/training/check-journal';
import type { Finding, FindingCode } from '../../src/training/finding';
import { anyJournalAround } from './any-journal';
import { brokenRules } from './broken-rules';
import { applied, date, journalOf, type Notes } from './journal-of';

const options = { today: date('2026-03-25'), zone: 'Europe/Berlin' };
const monday = mondayOf(isoWeekOf(options.today));

/** What a move may not add anywhere. */
const guarded: readonly FindingCode[] = [...brokenRules, 'duplicate-session', 'session-overdue'];

/** Planned sessions on the days of this week that are left. */
const thisWeek = fc
  .array(
    fc.tuple(
      fc.integer({ min: 2, max: 6 }),
      fc.constantFrom('flexibility', 'strength', 'skill'),
      fc.constantFrom('18:00 60min', '19:30 60min'),
      fc.constantFrom('4/10', '8/10'),
    ),
    { minLength: 2, maxLength: 5 },
  )
  .map((sessions): Notes => {
    const notes: Record<string, string> = {};
    for (const [offset, kind, time, rating] of sessions)
      notes[`${isoDate(monday + offset)}.md`] = `- [ ] #session ${kind} ${time} ${rating}`;
    return notes;
  });
/** A hard session lies behind, and hard and easy ones stand close after it. */
const crowded = thisWeek.map(
  (sessions): Notes => ({
    'journal.md': '- #rule recovery min:0/week\n- #rule strength gap:24h\n',
    [`${isoDate(monday + 1)}.md`]: '- [x] #session flexibility 18:00 60min 8/10\n',
    ...sessions,
  }),
);
const anyJournal = fc.oneof(
  fc.tuple(anyJournalAround(monday), thisWeek).map(([notes, more]): Notes => ({ ...notes, ...more })),
  crowded,
);

function found(notes: Notes): readonly Finding[] {
  return checkJournal(journalOf(notes), options);
}

function count(findings: readonly Finding[], code: FindingCode): number {
  return findings.filter((finding) => finding.code === code).length;
}

describe('remedies in any journal', function () {
  this.timeout(120_000);
  it('a move or a swap mends what was found, adds nothing elsewhere, and loses no word', () => {
    const used = new Map<string, number>();
    fc.assert(
      fc.property(anyJournal, (notes) => {
        const before = found(notes);
        for (const finding of before.filter(({ remedies }) => remedies.length > 0).slice(0, 6)) {
          for (const remedy of remediesFor(journalOf(notes), finding, options)) {
            used.set(remedy.name, (used.get(remedy.name) ?? 0) + 1);
            const after = applied(notes, remedy.changes);
            for (const change of remedy.changes) {
              if (change.kind === 'create') continue;
              // A move adds words. Only a time, a kind, an effort, a box or a misread word is ever replaced.
              for (const { range } of change.edits) assert.ok(range.end - range.start <= 24);
            }
            if (!['move-to-legal-day', 'swap-with-another-day', 'add-recovery-session'].includes(remedy.name))
              continue;
            const now = found(after);
            for (const code of guarded)
              assert.ok(count(now, code) <= count(before, code), `${remedy.name} added ${code}`);
            const moved = remedy.name !== 'add-recovery-session';
            const few = moved && !['no-rest-day', 'week-over-maximum', 'day-over-cap'].includes(finding.code);
            if (few)
              assert.ok(count(now, finding.code) < count(before, finding.code), `${finding.code} stays`);
            assert.ok(dayNumber(options.today) <= Math.max(...remedy.changes.map(({ note }) => dayOf(note))));
          }
        }
      }),
      { seed: 20260325, numRuns: 60 },
    );
    for (const name of ['move-to-legal-day', 'swap-with-another-day', 'mark-skipped', 'turn-into-recovery'])
      assert.ok((used.get(name) ?? 0) > 0, `no ${name} was tried`);
  });
});

function dayOf(note: string): number {
  return dayNumber(date(note.slice(0, 10)));
}
