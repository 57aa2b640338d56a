import type { JournalPlan } from '../journal/journal';
import { daysBetween, type IsoDate } from '../notation/time/iso-date';

/** What has to be said of a guardian's consent. */
export type GuardianConsent = 'not needed' | 'given' | 'missing';

/**
 * Whether a guardian has agreed to photos of an athlete under 18, and to notes that leave. Only the journal's own note
 * can say so, with the date of the consent; one dated ahead of `today` is not given yet. The age is not worked out: the
 * word `minor` decides until somebody takes it away.
 */
export function guardianConsent({ athlete }: JournalPlan, today: IsoDate): GuardianConsent {
  if (!athlete?.minor) return 'not needed';
  return athlete.consent !== undefined && athlete.consent <= today ? 'given' : 'missing';
}

/** Whole years of age on `day`; those born on 29 February count as older on 1 March where there is no such day. */
export function ageOn(born: IsoDate, day: IsoDate): number {
  const years = Number(day.slice(0, 4)) - Number(born.slice(0, 4));
  return day.slice(5) < born.slice(5) ? years - 1 : years;
}

/** The age of the athlete on `day`, when the journal says the day of birth and it is behind. */
export function athleteAge({ athlete }: JournalPlan, day: IsoDate): number | undefined {
  const born = athlete?.born;
  return born === undefined || daysBetween(born, day) < 0 ? undefined : ageOn(born, day);
}
