import assert from 'node:assert/strict';
import type { IsoWeek } from '../../src/notation/time/iso-week';
import { checkWeek } from '../../src/training/check-week';
import type { FindingCode } from '../../src/training/finding';
import type { CheckOptions } from '../../src/training/week-under-check';
import { journalOf, type Notes } from './journal-of';

/** Findings of rules that are broken: what a plan may never add. */
export const brokenRules: readonly FindingCode[] = [
  'gap-too-short',
  'week-over-maximum',
  'day-over-cap',
  'outside-free-hours',
  'overlapping-sessions',
  'open-pain',
  'no-rest-day',
];

/** How many findings of each code stand in some weeks. */
export function countByCode(
  notes: Notes,
  weeks: readonly IsoWeek[],
  options: CheckOptions,
): ReadonlyMap<string, number> {
  const journal = journalOf(notes);
  const counts = new Map<string, number>();
  for (const week of weeks) {
    for (const { code } of checkWeek(journal, week, options)) counts.set(code, (counts.get(code) ?? 0) + 1);
  }
  return counts;
}

/** In none of the weeks is a rule broken more often than before. */
export function assertNoneBroken(
  before: Notes,
  after: Notes,
  weeks: readonly IsoWeek[],
  options: CheckOptions,
): void {
  const known = countByCode(before, weeks, options);
  const found = countByCode(after, weeks, options);
  for (const code of brokenRules)
    assert.ok((found.get(code) ?? 0) <= (known.get(code) ?? 0), `${code} was added`);
}
