import assert from 'node:assert/strict';
import fc from 'fast-check';
import {
  type Column,
  compareCosts,
  costWith,
  layOutCosts,
  sumOf,
  unpackCost,
} from '../../../src/planning/solver/cost';

/** Columns, and two plans whose sum stays within them. */
const columnsAndValues = fc
  .array(fc.tuple(fc.nat(1_000_000), fc.nat(1_000_000), fc.nat(1_000_000)), { minLength: 1, maxLength: 14 })
  .map((list) => ({
    columns: list.map(([a, b, more]): Column => ({ level: 'preference', largest: a + b + more })),
    first: list.map(([a]) => a),
    second: list.map(([, b]) => b),
  }));

function compareInTurn(a: readonly number[], b: readonly number[]): number {
  const place = a.findIndex((value, index) => value !== b[index]);
  return place < 0 ? 0 : Math.sign((a[place] ?? 0) - (b[place] ?? 0));
}

describe('packed costs', () => {
  it('compare and add exactly as their columns do', () => {
    fc.assert(
      fc.property(columnsAndValues, ({ columns, first, second }) => {
        const layout = layOutCosts(columns);
        const [a, b] = [costWith(layout, first), costWith(layout, second)];
        const values = (cost: Float64Array) => unpackCost(layout, cost).map((figure) => figure.value);
        assert.deepEqual(values(a), first);
        assert.deepEqual(
          values(sumOf(a, b)),
          first.map((value, index) => value + (second[index] ?? 0)),
        );
        assert.equal(Math.sign(compareCosts(a, b)), compareInTurn(first, second));
      }),
      { seed: 20260306, numRuns: 500 },
    );
  });
});
