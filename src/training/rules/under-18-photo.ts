import type { Finding } from '../finding';
import { guardianConsent } from '../guardian-consent';
import type { WeekRule, WeekUnderCheck } from '../week-under-check';
import { message } from '../wording';

function findings(week: WeekUnderCheck): readonly Finding[] {
  const { journal, plan, today, monday, sunday } = week;
  if (guardianConsent(plan, today) !== 'missing') return [];
  return journal.measurementsBetween(monday, sunday).flatMap(({ note, entry, date }): readonly Finding[] =>
    entry.photo
      ? [
          {
            code: 'under-18-photo',
            severity: 'information',
            note,
            range: entry.photo.range,
            message: message(
              'A photo of an athlete under 18: photos are off until a guardian has agreed, which {0} says with a date behind {1}',
              'journal.md',
              'consent:',
            ),
            facts: { date },
            related: [],
            remedies: [],
          },
        ]
      : [],
  );
}

/**
 * A reading of an athlete under 18 names a photo, and no guardian's consent stands in the journal's own note. It stands
 * on the photo's path.
 *
 * A journal that breaks it:
 *
 *     journal.md
 *     #athlete "Swift" minor
 *     2026-02-24.md
 *     - #measure forward-fold fingertips 9cm photo:fold.jpg
 *
 * A journal that does not:
 *
 *     journal.md
 *     #athlete "Swift" minor consent:2026-01-05 -- her mother, in writing
 *     2026-02-24.md
 *     - #measure forward-fold fingertips 9cm photo:fold.jpg
 */
export const under18Photo: WeekRule = { code: 'under-18-photo', check: findings };
