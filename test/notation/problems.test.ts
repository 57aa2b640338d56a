import assert from 'node:assert/strict';
import { readNote } from '../../src/notation/read-note';
import { problemsOf } from './reading';

/** What is written, and what is reported on which characters, with the likely reading. */
const reported: readonly (readonly [string, readonly string[]])[] = [
  ['#session flexibility 75mins', ['unknown-unit: 75mins -> 75min']],
  ['#session flexibility 75', ['missing-unit: 75']],
  ['#session flexibility 75 min', ['space-before-unit: 75 min -> 75min']],
  ['#session flexibility 18.30', ['not-a-time: 18.30 -> 18:30']],
  ['#session flexibility 18:75', ['not-a-time: 18:75']],
  ['#session flexibility 7/11', ['not-a-rating: 7/11']],
  ['#session flexibility 11/10', ['not-a-rating: 11/10']],
  ['#session flexibility very hard', ['unexpected-word: very', 'unexpected-word: hard']],
  ['#session flexibility 7/10 8/10', ['repeated-field: 8/10']],
  ['#session flexibility for:a for:b', ['repeated-field: for:b']],
  ['#session flexibility fro:split', ['unknown-field: fro -> for']],
  ['#session flexibility for:', ['empty-value: for:']],
  ['#session flexibility for:a,,b', ['empty-value: for:a,,b']],
  ['#session flexibility for:a_b', ['not-a-word: a_b']],
  ['#session flexibility moved:2026-02-30', ['bad-date: 2026-02-30']],
  ['#session flexibility moved:2026-2-3', ['not-a-date: 2026-2-3 -> 2026-02-03']],
  ['#session flexibility with:"coach', ['unclosed-quote: with:"coach']],
  ['#session', ['missing-field: #session']],
  ['#goal by:2026-06-14', ['missing-field: #goal']],
  ['#goal split by:2026-02-30', ['bad-date: 2026-02-30']],
  ['#measure split gap 9.5', ['missing-unit: 9.5']],
  ['#measure split gap 9.5 cm', ['space-before-unit: 9.5 cm -> 9.5cm']],
  ['#measure split gap 9.5cn', ['unknown-unit: 9.5cn -> 9.5cm']],
  ['#measure split gap 5/3', ['not-a-quantity: 5/3']],
  ['#measure split gap 9cm side:up', ['not-a-side: up']],
  ['#metric gap from:12 to:0cm', ['missing-unit: 12']],
  ['#metric gap from:12 cm to:0cm', ['space-before-unit: 12 cm -> 12cm']],
  ['#need flexibility 2x/week', ['not-per-week: 2x/week -> 2/week']],
  ['#need flexibility 2/wk', ['not-per-week: 2/wk -> 2/week']],
  ['#need flexibility 2/week max:3', ['not-per-week: 3 -> 3/week']],
  ['#free mondy 18:00-20:00', ['not-a-weekday: mondy -> monday']],
  ['#busy 2026-03-10..2026-03-07', ['not-a-date: 2026-03-10..2026-03-07']],
  ['#rule flexibility gap:48', ['missing-unit: 48']],
  ['#seshun flexibility', []],
  ['#sesion flexibility', ['unknown-tag: #sesion -> #session']],
  ['#Session flexibility', ['unknown-tag: #Session -> #session']],
  ['#session: flexibility', ['unknown-tag: #session: -> #session']],
  ['#travel #holiday', []],
];

describe('what cannot be read is reported on its exact characters', () => {
  for (const [text, expected] of reported) it(text, () => assert.deepEqual(problemsOf(text), expected));

  it('and the rest of the tag still counts', () => {
    const [entry] = readNote('- [x] #session flexibility 75mins 7/10 for:low-split fro:x').entries;
    assert.ok(entry?.tag === 'session');
    assert.equal(entry.kind?.value, 'flexibility');
    assert.equal(entry.rating?.value, 7);
    assert.equal(entry.length, undefined);
  });

  it('front matter that is not YAML is reported where it breaks, and the note is read', () => {
    const text = '---\ntitle: [a, b\n---\n- [ ] #session strength\n';
    const reading = readNote(text);
    assert.equal(reading.entries.length, 1);
    assert.equal(reading.problems[0]?.code, 'unreadable-field');
    assert.deepEqual(reading.frontMatter?.values, {});
  });

  it('front matter that is YAML is read', () => {
    const reading = readNote('---\ntitle: Tuesday\nmood: 3\n---\nwords');
    assert.deepEqual(reading.frontMatter?.values, { title: 'Tuesday', mood: 3 });
  });
});
