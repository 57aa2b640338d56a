import { adherenceShare } from '../../training/adherence/adherence-share';
import { plannedSessions } from '../../training/adherence/planned-sessions';
import type { SessionFacts } from '../../training/session-facts';
import { isToDo } from '../../training/session-state';
import { message } from '../../training/wording';
import type { Section } from './markdown-text';
import { sessionItem, sessionsOfDays } from './session-items';
import type { ShareContext, SharedDays } from './share-context';

/** Weeks of sessions before today and from today on. */
const weeksBefore = 8;
const weeksAfter = 8;

/** The days whose sessions a partner's list holds. */
export function partnerDays(today: number): SharedDays {
  return { first: today - 7 * weeksBefore, last: today + 7 * weeksAfter };
}

function isWith(name: string, { session }: SessionFacts): boolean {
  return session.entry.with.some(({ value }) => value === name);
}

/** The sessions booked together: those to come, then those of the past, the latest first. */
export function partnerSections(context: ShareContext, name: string): readonly Section[] {
  const { check, say } = context;
  const days = partnerDays(check.todayNumber);
  const together = sessionsOfDays(context, days).filter((facts) => isWith(name, facts));
  const next = together.filter(({ state, session }) => isToDo(state) && session.day >= check.todayNumber);
  const past = together.filter((facts) => !next.includes(facts)).reverse();
  const kept = adherenceShare(
    plannedSessions(check.weeks, days.first, check.todayNumber).filter(({ facts }) => isWith(name, facts)),
  );
  return [
    {
      heading: say(message('Next')),
      paragraphs:
        next.length === 0 ? [say(message('No session is booked in the next {0} weeks.', weeksAfter))] : [],
      items: next.map((facts) => sessionItem(context, facts, name)),
    },
    {
      heading: say(message('Past')),
      paragraphs:
        kept.n === 0
          ? [say(message('No session was planned together in the last {0} weeks.', weeksBefore))]
          : [
              say(
                message(
                  'Kept together in the last {2} weeks: {0} of {1} planned sessions.',
                  kept.done,
                  kept.n,
                  weeksBefore,
                ),
              ),
            ],
      items: past.map((facts) => sessionItem(context, facts, name)),
    },
  ];
}
