import fc from 'fast-check';
import { type DayNumber, isoDate } from '../../src/notation/time/iso-date';
import type { Notes } from './journal-of';

const kind = fc.constantFrom('flexibility', 'strength', 'skill', 'conditioning', 'duo');
const time = fc.constantFrom('07:00', '12:15', '18:00', '18:30', '20:00', '23:30');
const optional = (text: fc.Arbitrary<string>) => fc.oneof(fc.constant(''), text);
const joined = (...parts: fc.Arbitrary<string>[]) =>
  fc.tuple(...parts).map((all) => all.filter((part) => part !== '').join(' '));

const need = joined(
  fc.constant('- #need'),
  kind,
  fc.constantFrom('1/week', '2/week', '3/week', '150min/week'),
  optional(fc.constantFrom('45min', '60min', '75min', '2h')),
  optional(fc.constantFrom('5/10', '7/10', '9/10')),
  optional(fc.constantFrom('gap:24h', 'gap:3d', 'gap:7d')),
  optional(fc.constantFrom('max:1/week', 'max:3/week')),
  optional(fc.constantFrom('with:coach', 'where:studio')),
  optional(fc.constantFrom('routine:back', 'routine:legs')),
);
const rule = fc.constantFrom(
  '- #rule hard gap:20h',
  '- #rule any cap:90min',
  '- #rule any max:5/week',
  '- #rule flexibility gap:72h',
  '- #rule strength max:120min/week',
  '- #rule skill min:2/week',
  '- #rule rest-day min:2/week',
  '- #rule recovery min:2/week',
  '- #rule lower-back gap:3d',
  '- #rule hoop gap:30h',
);
const hours = fc.constantFrom(
  '- #free mon tue wed thu fri 18:00-21:00',
  '- #free sat sun 09:00-13:00',
  '- #free mon wed 06:30-08:00 where:home',
  '- #free thu 18:00-20:00 where:studio with:coach',
  '- #free fri 22:00-02:00',
  '- #busy 2026-03-31',
  '- #busy 2026-04-01..2026-04-02 18:00-19:00',
);
const planNote = fc
  .tuple(
    fc.array(need, { minLength: 1, maxLength: 3 }),
    fc.array(need, { maxLength: 2 }),
    fc.uniqueArray(rule, { maxLength: 3 }),
    fc.uniqueArray(hours, { maxLength: 4 }),
  )
  .map(([ofGoal, weekly, rules, open]) =>
    [
      '- #kind duo like:skill',
      '- #routine back flexibility 60min regions:lower-back',
      '  - bridges',
      '- #routine legs regions:legs',
      ...rules,
      ...open,
      ...weekly,
      '- #goal hoop by:2026-06-14',
      ...ofGoal,
    ].join('\n'),
  );

const session = joined(
  fc.constantFrom('- [ ] #session', '- [x] #session'),
  kind,
  optional(time),
  optional(fc.constantFrom('60min', '90min')),
  optional(fc.constantFrom('4/10', '8/10')),
  optional(fc.constantFrom('for:hoop', 'for:hoop routine:back', 'with:coach', 'skipped:work')),
);
/** Notes of the two weeks before a week, of the week itself, and of the Monday after it. */
const dayNotesAround = (monday: DayNumber) =>
  fc
    .array(fc.tuple(fc.integer({ min: -14, max: 7 }), session, fc.constantFrom('\n', '\r\n')), {
      maxLength: 8,
    })
    .map((days): Notes => {
      const notes: Record<string, string> = {};
      for (const [offset, line, ending] of days)
        notes[`${isoDate(monday + offset)}.md`] = `Words.${ending}${ending}${line}${ending}  - body`;
      return notes;
    });
const pain = fc.constantFrom('', '- #pain lower-back 5/10');

/** Journals with needs, rules, hours, pain, and sessions in the weeks around the one that begins on `monday`. */
export function anyJournalAround(monday: DayNumber): fc.Arbitrary<Notes> {
  return fc.tuple(planNote, dayNotesAround(monday), pain).map(([plan, days, hurts]) => ({
    'journal.md': plan,
    ...days,
    ...(hurts === '' ? {} : { [`${isoDate(monday - 10)} pain.md`]: hurts }),
  }));
}
