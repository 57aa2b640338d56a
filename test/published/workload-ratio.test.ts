// Checks of the ratio of acute to chronic load.
// Sources of the formulas: Williams S et al (2017) Br J Sports Med 51(3):209-210 [R]; the worked loads are recomputed
// [C]. That paper's own three athletes (1.25, 1.41, 1.55 and 1.43) cannot be a check: their daily loads stand in a
// figure that was not to be had.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import {
  exponentialLoad,
  exponentialWorkloadRatio,
  rollingWorkloadRatio,
} from '../../src/training/statistics/workload-ratio';
import { at, estimated } from './estimated';
import { printed, printedRow } from './printed';

const repeat = (load: number, days: number): number[] => new Array<number>(days).fill(load);
const doubled = [...repeat(300, 21), ...repeat(600, 7)];

describe('published: workload ratio', () => {
  it('21 days at 300, then 7 at 600: rolling 1.6 coupled, 2.0 uncoupled [C]', () => {
    printed(estimated(rollingWorkloadRatio(doubled, 'coupled')).ratio, '1.600000');
    printed(estimated(rollingWorkloadRatio(doubled, 'uncoupled')).ratio, '2.000000');
  });

  it('the same, exponentially weighted, seeded with the first day [C]', () => {
    const ratio = estimated(exponentialWorkloadRatio(doubled));
    printed(ratio.acute, '559.954834');
    printed(ratio.chronic, '418.079509');
    printed(ratio.ratio, '1.339350');
    assert.equal(ratio.n, 28);
  });

  it('days 22 to 28 of it [C]', () => {
    const acute = exponentialLoad(doubled, 7);
    const chronic = exponentialLoad(doubled, 28);
    const ratios = acute.slice(21).map((value, i) => value / at(chronic, i + 21));
    printedRow(ratios, '1.1694 1.2686 1.3229 1.3484 1.3555 1.3510 1.3394');
  });

  it('a short run: lambda 0.25 and 0.0689655 [C; lambda = 2/(N + 1): R Williams 2017]', () => {
    const loads = [100, 0, 200, 0, 0, 300, 100];
    printedRow(exponentialLoad(loads, 7), '100 75 106.25 79.6875 59.7656 119.8242 114.8682');
    printedRow(exponentialLoad(loads, 28), '100 93.1034 100.4756 93.5463 87.0948 101.7779 101.6553');
  });

  it('coupled c and uncoupled u of the same days: c = 4u/(u + 3), u = 3c/(4 - c) [C]', () => {
    const pairs: readonly (readonly [uncoupled: number, coupled: string])[] = [
      [1.5, '1.3333'],
      [1.8, '1.5'],
      [1.66926, '1.43'],
    ];
    for (const [uncoupled, coupled] of pairs) {
      const loads = [...repeat(100, 21), ...repeat(100 * uncoupled, 7)];
      printed(estimated(rollingWorkloadRatio(loads, 'uncoupled')).ratio, String(uncoupled));
      printed(estimated(rollingWorkloadRatio(loads, 'coupled')).ratio, coupled);
    }
  });

  it('a coupled ratio can never exceed 4 [C]', () => {
    printed(
      estimated(rollingWorkloadRatio([...repeat(0, 21), ...repeat(700, 7)], 'coupled')).ratio,
      '4.0000',
    );
  });

  it('Lolli (2019) Br J Sports Med 53:921-922: unrelated weeks correlate at about 0.5 when coupled [R: 0.52 in 1000 athletes; theory 0.5]', () => {
    let state = 2019;
    const load = (): number => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return 1000 * (state / 2 ** 32);
    };
    // One load a week, spread over its days, so that the weeks are independent.
    const athletes = Array.from({ length: 4000 }, () =>
      Array.from({ length: 4 }, load).flatMap((week) => repeat(week, 7)),
    );
    for (const [form, theory] of [
      ['coupled', 0.5],
      ['uncoupled', 0],
    ] as const) {
      const ratios = athletes.map((loads) => estimated(rollingWorkloadRatio(loads, form)));
      const r = correlation(
        ratios.map(({ acute }) => acute),
        ratios.map(({ chronic }) => chronic),
      );
      // Four standard errors of a correlation from 4000 athletes.
      assert.ok(Math.abs(r - theory) < 4 / Math.sqrt(4000), `${form}: ${r}`);
    }
  });
});

function correlation(xs: readonly number[], ys: readonly number[]): number {
  const average = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
  const [mx, my] = [average(xs), average(ys)];
  const product = (as: readonly number[], a: number, bs: readonly number[], b: number): number =>
    as.reduce((total, value, i) => total + (value - a) * (at(bs, i) - b), 0);
  return product(xs, mx, ys, my) / Math.sqrt(product(xs, mx, xs, mx) * product(ys, my, ys, my));
}
