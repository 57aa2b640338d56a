// Checks of the exponentially weighted moving average chart.
// Source: NIST/SEMATECH e-Handbook 6.3.2.4 [F]; the 0/1 chart is recomputed [C].
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { ewmaChart } from '../../src/training/statistics/ewma-chart';
import { printed, printedRow } from './printed';

describe('published: exponentially weighted moving average chart', () => {
  const values = [
    52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6,
    52.4, 53.6, 52.1,
  ];
  const chart = ewmaChart(values, { start: 50, standardDeviation: 2.0539, weight: 0.3, width: 3 });

  it('NIST/SEMATECH 6.3.2.4: the averages [F]', () => {
    printedRow(
      chart.averages,
      `50.60 49.52 50.56 50.18 50.16 49.21 49.75 49.85 50.26 50.33
       50.11 49.36 49.52 50.05 49.38 49.92 50.73 51.23 51.94 51.99`,
    );
    assert.equal(chart.n, 20);
  });

  it('NIST/SEMATECH 6.3.2.4: limits 52.588432 and 47.411568, in control [C, the handbook prints 52.5884, 47.4115: M]', () => {
    printed(chart.asymptoticLimits.upper, '52.588');
    printed(chart.asymptoticLimits.lower, '47.412');
    // 50 +- 3 x 2.0539 x 0.420084, the factor sqrt(0.3/1.7).
    assert.ok(Math.abs(chart.asymptoticLimits.upper - (50 + 3 * 2.0539 * Math.sqrt(0.3 / 1.7))) < 1e-9);
    assert.deepEqual(chart.alarms, []);
  });

  it('done and missed sessions, weight 0.2, from 80 %: only the fourteenth is out [C]', () => {
    const done = [1, 1, 0, 1, 1, 1, 0, 0, 1, 0, 0, 1, 0, 0];
    const { averages, limits, alarms } = ewmaChart(done, {
      start: 0.8,
      standardDeviation: Math.sqrt(0.8 * 0.2),
      weight: 0.2,
      width: 3,
    });
    printedRow(averages, '.84 .872 .6976 .7581 .8065 .8452 .6761 .5409 .6327 .5062 .4049 .5240 .4192 .3353');
    printedRow(
      limits.map(({ lower }) => lower),
      '.56 .4927 .4564 .4351 .4221 .4140 .4089 .4057 .4036 .4023 .4015 .4009 .4006 .4004',
    );
    assert.deepEqual(alarms, [13]);
  });
});
