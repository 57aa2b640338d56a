import assert from 'node:assert/strict';
import { painCaution } from '../../src/training/cautions';
import { fillMessage } from '../../src/training/finding';
import { loads } from '../../src/training/open-pain';
import { findingsIn, told } from './journal-from-text';

const routines = { 'journal.md': '- #routine back-opening flexibility regions:lower-back,shoulders' };

const hurting = (notes: Record<string, string>, today = '2026-02-25') =>
  told('open-pain', { ...routines, ...notes }, today);

const pain = { '2026-02-23.md': '- #pain lower-back 5/10 -- sharp' };
const hard = '- [ ] #session flexibility 18:30 8/10 routine:back-opening';

describe('open-pain', () => {
  it('stands on a hard session to come on a region with pain that is not cleared', () => {
    assert.deepEqual(hurting({ ...pain, '2026-02-26.md': hard }), [
      '2026-02-26.md | warning | #session flexibility 18:30 8/10 routine:back-opening | Pain in lower-back since the note of 2026-02-23 is not cleared, and this session loads it at effort 8/10; leave the region alone until it is',
    ]);
  });

  it('shows the caution at the line with the pain', () => {
    const found = findingsIn({ ...routines, ...pain, '2026-02-26.md': hard }, '2026-02-25');
    const finding = found.find((one) => one.code === 'open-pain');
    assert.deepEqual(
      finding?.related.map((place) => [place.note, fillMessage(place.message)]),
      [['2026-02-23.md', painCaution]],
    );
    assert.deepEqual(finding?.remedies, ['turn-into-recovery', 'mark-skipped', 'clear-pain']);
  });

  it('is over with the latest report of the region that says clear, and open again with a later one', () => {
    const then = (text: string) => ({ ...pain, '2026-02-24.md': text, '2026-02-27.md': hard });
    assert.equal(hurting(then('- #pain lower-back clear')).length, 0);
    assert.equal(hurting(then('- #pain lower-back 2/10')).length, 1);
    assert.equal(hurting(then('- #pain shoulders clear')).length, 1);
    assert.equal(
      hurting({ ...then('- #pain lower-back clear'), '2026-02-25.md': '- #pain lower-back 1/10' }).length,
      1,
    );
  });

  it('does not end by itself', () => {
    assert.equal(hurting({ '2025-06-01.md': '- #pain lower-back', '2026-02-26.md': hard }).length, 1);
  });

  it('takes the effort and the routine from the need when the session says neither', () => {
    const need = (rating: string) => ({
      ...pain,
      'needs.md': `- #need flexibility 1/week ${rating} routine:back-opening`,
      '2026-02-26.md': '- [ ] #session flexibility',
    });
    assert.equal(hurting(need('8/10')).length, 1);
    assert.equal(hurting(need('6/10')).length, 0);
    assert.equal(hurting(need('')).length, 1, 'without any rating it is taken for hard');
  });

  it('leaves alone light sessions, recovery, other regions, and what is done', () => {
    const on = (session: string) => hurting({ ...pain, '2026-02-26.md': session }).length;
    assert.equal(on('- [ ] #session flexibility 6/10 routine:back-opening'), 0);
    assert.equal(on('- [ ] #session recovery routine:back-opening'), 0);
    assert.equal(on('- [ ] #session flexibility 8/10'), 0);
    assert.equal(on('- [x] #session flexibility 8/10 routine:back-opening'), 0);
  });

  it('never takes soreness for pain', () => {
    assert.equal(hurting({ '2026-02-23.md': '- #sore lower-back 9/10', '2026-02-26.md': hard }).length, 0);
  });

  it('knows a region with and without its side, and two of a pair as one', () => {
    for (const [trained, painful] of [
      ['hips', 'hips'],
      ['hips', 'left-hip'],
      ['left-hip', 'hips'],
      ['left-hip', 'left-hips'],
    ] as const) {
      assert.equal(loads(trained, painful), true, `${trained} loads ${painful}`);
    }
    for (const [trained, painful] of [
      ['left-hip', 'right-hip'],
      ['hips', 'hip-flexors'],
      ['shoulders', 'left-hip'],
    ] as const) {
      assert.equal(loads(trained, painful), false, `${trained} does not load ${painful}`);
    }
  });
});
