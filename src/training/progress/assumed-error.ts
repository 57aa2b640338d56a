import { convert, dimensionOf, type Quantity, type Unit } from '../../notation/quantity';
import type { Message } from '../finding';
import { median } from '../statistics/order-statistics';
import { message } from '../wording';

/** A typical error that nobody measured for this metric. It is shown as assumed, with where it comes from. */
export interface AssumedError {
  /** In the unit asked for. */
  readonly typicalError: number;
  /** `borrowed` from another test, `counted` from chance alone, `guessed` without any source. */
  readonly basis: 'borrowed' | 'counted' | 'guessed';
  readonly source: Message;
}

/** No source: a share of the usual reading, and never less than `least`, where nothing is published. */
const guesses = {
  duration: { share: 0.1, least: { value: 1, unit: 's' } },
  mass: { share: 0.05, least: { value: 0.5, unit: 'kg' } },
  count: { share: 0.05, least: { value: 1, unit: 'reps' } },
} as const;

const tenPoints = 10;

function guessed(share: number, least: Quantity, unit: Unit, values: readonly number[]): AssumedError {
  const usual = median(values.map(Math.abs)) ?? 0;
  return {
    typicalError: Math.max(share * usual, convert(least, unit) ?? 0),
    basis: 'guessed',
    source: message('A guess without a source: {0} % of the usual reading', 100 * share),
  };
}

/** By chance alone, `of` attempts with an even chance each succeed in 50 % of them with this standard deviation. */
function chanceOf(attempts: readonly number[]): AssumedError | undefined {
  const usual = median(attempts);
  if (usual === undefined) return undefined;
  return {
    typicalError: 100 * Math.sqrt(0.25 / usual),
    basis: 'counted',
    source: message('What chance alone does in {0} attempts (binomial standard deviation at 50 %)', usual),
  };
}

/**
 * The typical error of one reading to be assumed until the athlete's own repeats tell it.
 *
 * Distances: 1.4 cm, the standard error of measurement of the sit-and-reach test in men (1.3 cm in women; read in
 * PMC3737781, table 1). Angles: 4.2 degrees, the largest of the same study's for the passive straight-leg raise. Both
 * are borrowed: for a gap under a split, measured by tape, none was found. Shares out of attempts: the binomial
 * standard deviation at even chances. Times, weights, counts and other shares: a guess, no source.
 *
 * @param values the readings in `unit`
 * @param attempts how many attempts each share was taken of, where the notes say
 */
export function assumedError(
  unit: Unit,
  values: readonly number[],
  attempts: readonly number[] = [],
): AssumedError {
  const dimension = dimensionOf(unit);
  switch (dimension) {
    case 'distance':
      return {
        typicalError: convert({ value: 1.4, unit: 'cm' }, unit) ?? 0,
        basis: 'borrowed',
        source: message(
          'Borrowed from the sit-and-reach test (PMC3737781): no figure is published for this one',
        ),
      };
    case 'angle':
      return {
        typicalError: 4.2,
        basis: 'borrowed',
        source: message(
          'Borrowed from the straight-leg raise (PMC3737781): no figure is published for this one',
        ),
      };
    case 'share':
      return (
        chanceOf(attempts) ?? {
          typicalError: tenPoints,
          basis: 'guessed',
          source: message('A guess without a source: {0} points', tenPoints),
        }
      );
    default: {
      const { share, least } = guesses[dimension];
      return guessed(share, least, unit, values);
    }
  }
}
