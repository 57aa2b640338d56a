// Checks of a length read off a photo beside a reference. Error propagation and similar triangles; recomputed [C].
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { depthFactor, foreshortening, scaledLength } from '../../src/training/statistics/scaled-length';
import { printed } from './printed';

describe('published: length by a reference', () => {
  it('100 +- 0.2 cm as 400 px, target 850 px, clicks +- 2 px: 212.5 +- 1.7142 cm [C]', () => {
    const found = scaledLength({
      target: 850,
      reference: 400,
      referenceLength: 100,
      referenceError: 0.2,
      clickError: 2,
    });
    assert.ok(found);
    printed(found.length, '212.5');
    printed(found.standardError, '1.7142');
    printed(100 * found.relativeError, '0.8067');
  });

  it('10 cm nearer at 3 m reads 3.45 % too long [C]', () => {
    printed(100 * (depthFactor(300, 10) - 1), '3.45');
  });

  it('a limb out of the plane by 10 degrees reads 1.5 % short, by 20 degrees 6.0 % [C]', () => {
    printed(100 * (1 - foreshortening(10)), '1.5');
    printed(100 * (1 - foreshortening(20)), '6.0');
  });
});
