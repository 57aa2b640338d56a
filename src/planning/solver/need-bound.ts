/**
 * What the sessions of one need must still cost, whatever the other needs do: the additive part of the
 * search's lower bound.
 *
 * For one need alone, the cheapest way to place its remaining sessions is found exactly, backwards through
 * its places, with its own gap and the air between its own sessions. Other needs only get in the way, so
 * the sum over the needs never exceeds what must really follow.
 */
import { missingAir } from './air';
import { type Cost, compareCosts, multipleOf, sumOf } from './cost';
import { firstAtLeast } from './sorted';
import { opensAt, type PreparedNeed, type PreparedProblem } from './tables';

/** The lower bound for one need. */
export interface NeedBound {
  /** Limbs of the least cost at `(place * (count + 1) + remaining) * limbs`, for places from `place` on. */
  readonly least: Float64Array;
  /** For each start of the need's signature (and after the last), its first place at or after it. */
  readonly firstPlaceFrom: Int32Array;
  /** For each place, how many sessions the places from there on can hold, at most `count`. */
  readonly holds: Int32Array;
}

/** Computes the bound of one need. */
export function boundNeed(prepared: PreparedProblem, need: PreparedNeed): NeedBound {
  const { places, count } = need;
  const { limbs } = prepared.layout;
  const airs = prepared.airs.filter(
    (_, rule) => need.airEarlier.includes(rule) && need.airLater.includes(rule),
  );
  const reach = airs.reduce((longest, rule) => Math.max(longest, rule.comfortable), 0);
  const starts = places.map((place) => place.start);
  const airCost = (minutes: number): Cost =>
    multipleOf(
      prepared.airUnit,
      airs.reduce((sum, rule) => sum + missingAir(rule, minutes), 0),
    );

  /** Cost of leaving out 0, 1, ... `count` sessions. */
  const nothing = Array.from({ length: count + 1 }, (_, left) => multipleOf(need.leftOut, left));
  /** `least[place][left]`: `left` sessions at places from `place` on. */
  const least: Cost[][] = [];
  /** `after[place][left]`: `left` sessions, when one has just been placed at `place`. */
  const after: Cost[][] = [];
  const holds = new Int32Array(places.length + 1);
  least[places.length] = nothing;
  for (let index = places.length - 1; index >= 0; index -= 1) {
    const place = at(places, index);
    const open = firstAtLeast(starts, opensAt(prepared, place, need.signature));
    const roomy = Math.max(open, firstAtLeast(starts, place.end + reach));
    after[index] = nothing.slice(0, count).map((_, left) => {
      let best = at(at(least, roomy), left);
      for (let next = open; left > 0 && next < roomy; next += 1) {
        const follower = at(places, next);
        const cost = sumOf(
          sumOf(follower.cost, airCost(follower.start - place.end)),
          at(at(after, next), left - 1),
        );
        if (compareCosts(cost, best) < 0) best = cost;
      }
      return best;
    });
    const skipped = at(least, index + 1);
    const rest = at(after, index);
    least[index] = nothing.map((_, left) => {
      const without = at(skipped, left);
      if (left === 0) return without;
      const taken = sumOf(place.cost, at(rest, left - 1));
      return compareCosts(taken, without) < 0 ? taken : without;
    });
    holds[index] = Math.min(count, Math.max(holds[index + 1] as number, 1 + (holds[open] as number)));
  }

  const flat = new Float64Array((places.length + 1) * (count + 1) * limbs);
  least.forEach((row, index) => {
    row.forEach((cost, left) => {
      flat.set(cost, (index * (count + 1) + left) * limbs);
    });
  });
  const signatureStarts = prepared.starts[need.signature] ?? new Int32Array(0);
  const firstPlaceFrom = Int32Array.from([...signatureStarts, Infinity], (start) =>
    firstAtLeast(starts, start),
  );
  return { least: flat, firstPlaceFrom, holds };
}

/** The entry at an index that is known to exist. */
function at<T>(list: readonly T[], index: number): T {
  return list[index] as T;
}
