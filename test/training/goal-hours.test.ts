import assert from 'node:assert/strict';
import { fillMessage } from '../../src/training/finding';
import { findingsIn, told } from './journal-from-text';

const hours = (notes: Readonly<Record<string, string>>, today = '2026-02-25') =>
  told('goal-hours', notes, today);

const goals = [
  '- #goal low-split by:2026-06-14',
  '- #need flexibility 2/week 75min 7/10',
  '- #goal handstand by:2026-09-30',
  '- #need skill 2/week 45min 5/10',
].join('\n');

describe('goal-hours', () => {
  it('stands on the first free hours when the needs ask for more, and says what each goal costs', () => {
    const notes = { 'goals.md': goals, 'hours.md': '- #free tue 18:00-19:30\n- #free thu 18:00-19:30' };
    assert.deepEqual(hours(notes), [
      'hours.md | information | #free tue 18:00-19:30 | The needs of a week ask for 4 h; its free hours hold 3 h, 1 h less (low-split 2 h 30 min, handstand 1 h 30 min)',
    ]);
    const [finding] = findingsIn(notes, '2026-02-25').filter(({ code }) => code === 'goal-hours');
    assert.deepEqual(
      finding?.related.map((place) => fillMessage(place.message)),
      ['flexibility: 2 h 30 min a week', 'skill: 1 h 30 min a week'],
    );
    assert.deepEqual(finding.facts, {
      week: '2026-W09',
      countedIn: 'minutes',
      limitedBy: 'free-hours',
      asked: 240,
      allowed: 180,
      tooMuch: 60,
      'costOf low-split': 150,
      'costOf handstand': 90,
    });
  });

  it('is silent when they fit, and in a journal without hours', () => {
    assert.deepEqual(hours({ 'goals.md': goals, 'hours.md': '- #free tue thu 18:00-20:00' }), []);
    assert.deepEqual(hours({ 'goals.md': goals }), []);
  });

  it('counts overlapping hours once', () => {
    assert.equal(
      hours({
        'goals.md': goals,
        'hours.md': '- #free tue 18:00-20:00 where:studio\n- #free tue thu 18:00-19:30',
      }).length,
      1,
    );
  });

  it('keeps rest days free of training, and lets recovery stand on them', () => {
    const everyDay = '- #free mon tue wed thu fri sat sun 18:00-18:40\n';
    const recovery = '- #need recovery 1/week 40min 2/10\n';
    assert.deepEqual(hours({ 'goals.md': `${goals}\n${recovery}`, 'hours.md': everyDay }), []);
    assert.deepEqual(
      hours({ 'goals.md': goals, 'hours.md': `${everyDay}- #rule rest-day min:2/week` }).map(
        (line) => line.split(' | ')[3],
      ),
      [
        'The needs of a week ask for 4 h of training; its free hours hold 3 h 20 min beside the rest days, 40 min less (low-split 2 h 30 min, handstand 1 h 30 min)',
      ],
    );
  });

  it('counts no day above its cap', () => {
    const notes = (cap: string) => ({
      'goals.md': goals,
      'hours.md': `- #free tue thu 17:00-21:00\n- #rule any cap:${cap}`,
    });
    assert.deepEqual(hours(notes('2h')), []);
    assert.match(hours(notes('1h30'))[0] ?? '', /ask for 4 h; its free hours hold 3 h, 1 h less/);
  });

  it('stands on the max: of a rule that is too small', () => {
    assert.deepEqual(hours({ 'goals.md': goals, 'rules.md': '- #rule any max:3/week' }), [
      'rules.md | information | 3/week | The needs of a week ask for 4 sessions under any; the rule allows 3, 1 fewer (low-split 2, handstand 2)',
    ]);
    assert.deepEqual(hours({ 'goals.md': goals, 'rules.md': '- #rule hard max:1/week' }), [
      'rules.md | information | 1/week | The needs of a week ask for 2 sessions under hard; the rule allows 1, 1 fewer (low-split 2)',
    ]);
    assert.deepEqual(hours({ 'goals.md': goals, 'rules.md': '- #rule skill max:60min/week' }), [
      'rules.md | information | 60min/week | The needs of a week ask for 1 h 30 min under skill; the rule allows 1 h, 30 min less (handstand 1 h 30 min)',
    ]);
    assert.deepEqual(hours({ 'goals.md': goals, 'rules.md': '- #rule handstand max:2/week' }), []);
  });

  it('looks at the goals that are open this week', () => {
    const later = goals.replace('handstand by', 'handstand from:2026-03-09 by');
    assert.deepEqual(hours({ 'goals.md': later, 'rules.md': '- #rule any max:3/week' }), []);
  });

  it('asks no minutes of a need that says no length', () => {
    const unknown = '- #goal low-split by:2026-06-14\n- #need flexibility 9/week';
    assert.deepEqual(hours({ 'goals.md': unknown, 'hours.md': '- #free tue 18:00-19:00' }), []);
  });
});
