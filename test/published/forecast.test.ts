// Checks of the forecast to a goal, on Sen's published data; the dates themselves are recomputed [C].
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { forecastTarget } from '../../src/training/statistics/forecast';
import { theilSen } from '../../src/training/statistics/theil-sen';
import { estimated, paired } from './estimated';
import { printed } from './printed';

const sen = estimated(theilSen(paired([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78])));

describe('published: forecast', () => {
  it('Sen (1968) data, goal 100: reached at 24.000 through the medians [C]', () => {
    const forecast = estimated(forecastTarget(sen, 100, 'rising'));
    printed(forecast.at, '24.000');
    assert.equal(forecast.n, 7);
  });

  it('with the published bounds 26/7 and 35/8 the range is 22.2857 to 25.5385 [F bounds, C range]', () => {
    const forecast = estimated(
      forecastTarget({ ...sen, interval: { lower: 26 / 7, upper: 35 / 8 } }, 100, 'rising'),
    );
    printed(forecast.earliest, '22.2857');
    printed(forecast.latest, '25.5385');
  });

  it('with the joint intercept the line alone would say 23.5 [C]', () => {
    printed((100 - sen.intercept.joint) / sen.slope, '23.5');
  });

  it('says how far it reaches: 7.5385 ahead of readings that span 17', () => {
    const { extrapolation } = estimated(
      forecastTarget({ ...sen, interval: { lower: 26 / 7, upper: 35 / 8 } }, 100, 'rising'),
    );
    assert.equal(extrapolation.observedSpan, 17);
    printed(extrapolation.ahead, '7.5385');
    assert.equal(extrapolation.beyondObservedSpan, false);
    assert.equal(estimated(forecastTarget(sen, 160, 'rising')).extrapolation.beyondObservedSpan, true);
  });
});
