import type { BodyReport, Journal } from '../journal/journal';
import type { DayNumber } from '../notation/time/iso-date';

/**
 * The pain that is not over on the day `today`: of each region the latest report up to then, when it does not say
 * `clear`, in order of region. Soreness is not pain.
 */
export function openPains(journal: Journal, today: DayNumber): readonly BodyReport[] {
  const span = journal.span();
  if (!span) return [];
  const latest = new Map<string, BodyReport>();
  for (const report of journal.bodyReports(span.first, today, 'pain')) {
    const known = latest.get(report.region);
    if (!known || report.day >= known.day) latest.set(report.region, report);
  }
  return [...latest.values()]
    .filter((report) => !report.clear)
    .sort((one, other) => (one.region < other.region ? -1 : 1));
}

function withoutSide(region: string): string {
  return region.replace(/^(left|right)-/, '');
}

/** Hips are a left hip and a right one. */
function singular(region: string): string {
  return region.endsWith('s') ? region.slice(0, -1) : region;
}

/**
 * Whether training `trained` loads `painful`: they are one region, or one of them is the other without its side
 * (`hips` and `left-hip`). The left and the right of a region are two.
 */
export function loads(trained: string, painful: string): boolean {
  const one = singular(trained);
  const other = singular(painful);
  return one === other || one === withoutSide(other) || withoutSide(one) === other;
}
