import assert from 'node:assert/strict';
import { findingsIn, told } from './journal-from-text';

const session = '- [x] #session flexibility 18:30 60min 7/10 routine:legs\n';
const days = ['05', '06', '09', '10', '13', '14', '18', '19', '22', '23', '27', '28', '31'];
const soreDays = ['06', '10', '14', '19', '23', '28'];

/** Sore on each second day in a row, never after three days or more. */
function notesOf(rules: string): Record<string, string> {
  const notes: Record<string, string> = {
    'journal.md': `- #routine legs flexibility 60min regions:hamstrings\n- #rule recovery min:0/week\n${rules}`,
  };
  for (const day of days) {
    notes[`2026-01-${day}.md`] = session + (soreDays.includes(day) ? '- #sore hamstrings 5/10\n' : '');
  }
  return notes;
}
const gaps = (rules: string, today = '2026-02-25') => told('gap-worth-changing', notesOf(rules), today);

describe('gap-worth-changing', () => {
  it('stands on the gap that is kept, with the evidence', () => {
    assert.deepEqual(gaps('- #rule flexibility gap:20h\n- #rule hamstrings gap:60h\n'), [
      'journal.md | information | 20h | Still sore in 6 of 12 pairs of sessions (flexibility); the chance falls to 20 % after about 56 h (34 to 78 h), and 20 h are kept now. 60 h may suit you better',
    ]);
    const [finding] = findingsIn(notesOf('- #rule flexibility gap:20h\n'), '2026-02-25').filter(
      ({ code }) => code === 'gap-worth-changing',
    );
    assert.deepEqual(finding?.remedies, ['write-rule']);
    assert.deepEqual(
      finding.related.map(({ note }) => note),
      ['2026-01-10.md', '2026-01-14.md', '2026-01-19.md', '2026-01-23.md', '2026-01-28.md'],
    );
  });

  it('stands on the latest session where no line keeps a gap', () => {
    assert.deepEqual(
      gaps('- #rule flexibility gap:60h\n').map((line) => line.split(' | ').slice(0, 3)),
      [['2026-01-31.md', 'information', session.slice(6, -1)]],
    );
  });

  it('is one at most, and none when the gap kept is within what the notes show', () => {
    assert.equal(gaps('- #rule flexibility gap:12h\n- #rule hamstrings gap:12h\n').length, 1);
    assert.deepEqual(gaps('- #rule flexibility gap:60h\n- #rule hamstrings gap:60h\n'), []);
  });

  it('stands unchanged all week', () => {
    const rules = '- #rule flexibility gap:20h\n';
    const during = (today: string) =>
      told('gap-worth-changing', { ...notesOf(rules), '2026-02-23.md': session }, today);
    assert.deepEqual(during('2026-02-23'), during('2026-03-01'));
  });
});
