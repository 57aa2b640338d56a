import assert from 'node:assert/strict';
import { effectiveRules } from '../../src/training/default-rules';
import { journalFromNotes } from './journal-from-text';

/** Each rule that holds, in a few words. */
function rules(text: string): readonly string[] {
  return effectiveRules(journalFromNotes({ 'journal.md': text }).plan).map((rule) =>
    [
      rule.subject,
      rule.gap && `gap ${rule.gap.minutes / 60} h`,
      rule.min && `min ${rule.min.count}`,
      rule.max && `max ${rule.max.count}`,
      rule.cap && `cap ${rule.cap.minutes} min`,
      rule.written && 'written',
    ]
      .filter((part) => part !== undefined)
      .join(' '),
  );
}

describe('the rules that hold', () => {
  it('are the defaults where none is written', () => {
    assert.deepEqual(rules(''), [
      'flexibility gap 48 h',
      'strength gap 48 h',
      'recovery min 1',
      'rest-day min 1',
    ]);
  });

  it('are a written rule in place of the default of its subject', () => {
    assert.deepEqual(rules('- #rule flexibility gap:72h\n- #rule any cap:2h'), [
      'strength gap 48 h',
      'recovery min 1',
      'rest-day min 1',
      'flexibility gap 72 h written',
      'any cap 120 min written',
    ]);
  });

  it('are all the written rules of one subject', () => {
    assert.deepEqual(rules('- #rule strength gap:36h\n- #rule strength max:3/week').slice(3), [
      'strength gap 36 h written',
      'strength max 3 written',
    ]);
  });
});
