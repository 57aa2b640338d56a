import type { Measurement } from './measure';

/** Three digits that count, all of them from a hundred on. */
export function digits(value: number): string {
  return value >= 100 ? value.toFixed(0) : value.toPrecision(3);
}

/** A median with the middle half of the runs around it. */
export function withSpread({ median, low, high }: Measurement, unit: string): string {
  return `${digits(median)}${unit} (${digits(low)} to ${digits(high)})`;
}

/**
 * Prints one row of the table of the README, which `npm run bench` puts together from the rows of all benches.
 * @param bound what is asked for, in words
 * @param measured what was measured, with its spread
 */
export function printRow(what: string, bound: string, measured: string): void {
  console.log(`| ${what} | ${bound} | ${measured} |`);
}
