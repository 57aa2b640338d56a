import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { fillMessage } from '../../../src/training/finding';
import { printed } from '../../published/printed';
import { metricOf, seriesOf, withReadings } from './figures-of';

/** Invented repeats, recomputed with a numerical library [C]: typical error 1.290994, times 1.959964 sqrt(2) 3.5784. */
const nine = {
  '2026-02-02': '92cm + 94cm + 93cm',
  '2026-02-09': '95cm + 97cm + 96cm',
  '2026-02-16': '91cm + 94cm + 94cm',
};
const goal = (metric: string) => `- #goal low-split by:2026-06-14\n- #metric gap ${metric}`;

describe('the measuring error of a series', () => {
  it("is the athlete's own, pooled over days of repeats, once there are three days and six more readings", () => {
    const { noise } = seriesOf(withReadings(nine, goal('from:96cm to:80cm noise:5cm')), '2026-03-01');
    assert.equal(noise.basis, 'repeats');
    assert.equal(noise.n, 9);
    printed(noise.typicalError, '1.290994');
    printed(noise.detectableChange, '3.5784');
    printed(noise.interval?.lower, '0.8319');
    printed(noise.interval?.upper, '2.8429');
    assert.equal(noise.source, undefined);
  });

  it('does not take a warm and a cold reading of one day for repeats', () => {
    const { noise } =
      metricOf(
        withReadings({ '2026-02-02': '92cm warm + 99cm cold' }, goal('from:96cm to:80cm noise:2cm')),
        '2026-03-01',
      ).series[0] ?? assert.fail();
    assert.equal(noise.basis, 'written');
    assert.equal(noise.own.status, 'not-estimable');
  });

  it('is the written one until then, and says what is missing', () => {
    const { '2026-02-16': _, ...six } = nine;
    const { noise } = seriesOf(withReadings(six, goal('from:96cm to:80cm noise:2cm')), '2026-03-01');
    assert.equal(noise.basis, 'written');
    assert.equal(noise.typicalError, 2);
    assert(noise.own.status === 'estimated');
    assert.deepEqual(noise.own.shortOfRecommended, [
      { what: 'days-with-repeats', have: 2, need: 3 },
      { what: 'repeats', have: 4, need: 6 },
    ]);
  });

  describe('without either is assumed, and says where from', () => {
    const assumed = (unit: string, readings: Readonly<Record<string, string>>) => {
      const { noise } = seriesOf(withReadings(readings, goal(`from:50${unit} to:60${unit}`)), '2026-03-01');
      assert.equal(noise.basis, 'assumed');
      assert.equal(noise.n, 0);
      return [noise.typicalError, fillMessage(noise.source ?? assert.fail())] as const;
    };
    const sitAndReach =
      'Borrowed from the sit-and-reach test (PMC3737781): no figure is published for this one';

    it('for a distance: the sit-and-reach test, 1.4 cm [R PMC3737781, table 1], in the metric’s unit', () => {
      assert.deepEqual(assumed('cm', { '2026-02-02': '51cm' }), [1.4, sitAndReach]);
      printed(assumed('mm', { '2026-02-02': '51cm' })[0], '14.000');
    });

    it('for an angle: the straight-leg raise, 4.2 degrees [R the same]', () => {
      assert.equal(assumed('deg', { '2026-02-02': '51deg' })[0], 4.2);
    });

    it('for successes out of attempts: what chance alone does, sqrt(0.25/5) [C]', () => {
      const [error, source] = assumed('%', { '2026-02-02': '3/5' });
      printed(error, '22.3607');
      assert.match(source, /in 5 attempts/);
    });

    it('for a time, a weight, a count: a guess without a source', () => {
      assert.deepEqual(assumed('s', { '2026-02-02': '40s' }), [
        4,
        'A guess without a source: 10 % of the usual reading',
      ]);
      assert.equal(assumed('s', { '2026-02-02': '4s' })[0], 1);
      assert.equal(assumed('reps', { '2026-02-02': '4reps' })[0], 1);
      assert.equal(assumed('kg', { '2026-02-02': '40kg' })[0], 2);
    });

    it('unless the few repeats that there are wander more', () => {
      const { noise } = seriesOf(
        withReadings({ '2026-02-02': '50cm + 60cm' }, goal('from:50cm to:60cm')),
        '2026-03-01',
      );
      assert.equal(noise.basis, 'few-repeats');
      printed(noise.typicalError, '7.0711');
    });

    it('also when the few repeats agree: that would call every change real', () => {
      assert.equal(assumed('cm', { '2026-02-02': '50cm + 50cm', '2026-02-03': '51cm + 51cm' })[0], 1.4);
    });
  });
});
