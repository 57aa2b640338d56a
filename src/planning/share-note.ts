import type { Journal, JournalPlan } from '../journal/journal';
import { type DayNumber, dayNumber, type IsoDate, isoDate, parseIsoDate } from '../notation/time/iso-date';
import { type IsoWeek, mondayOf } from '../notation/time/iso-week';
import { fillMessage, type Message } from '../training/finding';
import { guardianConsent } from '../training/guardian-consent';
import { type CheckOptions, checkContext } from '../training/week-under-check';
import { message } from '../training/wording';
import { sessionsSection, tickedSections } from './share-note/day-sections';
import { goalSections } from './share-note/goal-sections';
import { plainText, type Section, sectionText } from './share-note/markdown-text';
import { monthTable } from './share-note/month-table';
import { partnerDays, partnerSections } from './share-note/partner-sections';
import { type ShareContext, type SharedDays, shareContext } from './share-note/share-context';
import { type SharePart, shareParts } from './share-note/share-parts';

export { type SharePart, shareParts, sharePartTitle } from './share-note/share-parts';

/** A month, `YYYY-MM`. */
export type ShareMonth = string;

/** What is shared. */
export type ShareSubject =
  | { readonly is: 'week'; readonly week: IsoWeek }
  | { readonly is: 'month'; readonly month: ShareMonth }
  | { readonly is: 'goal'; readonly goal: string }
  /** The sessions booked with one partner or coach, eight weeks back and ahead. */
  | { readonly is: 'partner'; readonly partner: string };

/** What may leave, and how it is said. */
export interface ShareOptions extends CheckOptions {
  readonly subject: ShareSubject;
  /** The parts that were ticked by name; none when left out. */
  readonly parts?: Iterable<SharePart>;
  /** Makes sentences of messages; English ones when left out. */
  readonly say?: (message: Message) => string;
}

/** A part that would add something to a note. */
export interface SharePartOnOffer {
  readonly part: SharePart;
  /** Lines that it adds. */
  readonly lines: number;
}

/** There is nothing to share under this name, or a month that no calendar has. */
export class NothingToShareError extends Error {
  override readonly name = 'NothingToShareError';
}

/** First and last day of a month, or `undefined` when no calendar has it. */
export function daysOfMonth(month: ShareMonth): SharedDays | undefined {
  const first = parseIsoDate(`${month}-01`);
  if (!first) return undefined;
  const start = dayNumber(first);
  let last: DayNumber = start + 27;
  while (isoDate(last + 1).slice(0, 7) === month) last += 1;
  return { first: start, last };
}

/**
 * Whether share notes are off: the journal is that of an athlete under 18, and no guardian has agreed.
 * For minors a guardian decides what leaves the house.
 */
export function isSharingOff(plan: JournalPlan, today: IsoDate): boolean {
  return guardianConsent(plan, today) === 'missing';
}

function goalOf(plan: JournalPlan, id: string) {
  const goal = plan.goals.get(id);
  if (!goal) throw new NothingToShareError(`There is no goal ${id}.`);
  return goal;
}

function daysOf(subject: ShareSubject, today: DayNumber): SharedDays {
  switch (subject.is) {
    case 'week':
      return { first: mondayOf(subject.week), last: mondayOf(subject.week) + 6 };
    case 'month': {
      const days = daysOfMonth(subject.month);
      if (!days) throw new NothingToShareError(`There is no month ${subject.month}.`);
      return days;
    }
    default:
      return partnerDays(today);
  }
}

function spanWords(context: ShareContext, { first, last }: SharedDays): string {
  return context.say(message('{0} to {1}.', isoDate(first), isoDate(last)));
}

/** Title, lines beneath it, and sections. */
interface Written {
  readonly title: Message;
  readonly lead: readonly string[];
  readonly sections: readonly Section[];
}

function written(context: ShareContext, subject: ShareSubject): Written {
  const { check, say } = context;
  const days = daysOf(subject, check.todayNumber);
  switch (subject.is) {
    case 'week':
      return {
        title: message('Training in the week {0}', subject.week),
        lead: [spanWords(context, days)],
        sections: [sessionsSection(context, days), ...tickedSections(context, days)],
      };
    case 'month':
      return {
        title: message('Training in the month {0}', subject.month),
        lead: [monthTable(context, days)],
        sections: [sessionsSection(context, days), ...tickedSections(context, days)],
      };
    case 'goal': {
      const goal = goalOf(check.plan, subject.goal);
      return {
        title: message('{0}', goal.title),
        lead: goal.by === undefined ? [] : [say(message('To be reached by {0}.', goal.by))],
        sections: goalSections(context, goal),
      };
    }
    case 'partner':
      return {
        title: message('Sessions with {0}', subject.partner),
        lead: [],
        sections: partnerSections(context, subject.partner),
      };
  }
}

/**
 * A note to be shared, as Markdown: the facts of a week, a month, a goal, or the sessions booked with one partner. It is
 * put together from what the journal counts, never copied from notes, and private by default: without a ticked part it
 * holds the days, times, kinds, lengths and efforts of sessions and what became of them; of a goal its title, date,
 * measures and steps. Words of the athlete's own, reasons, body, names, places and file names each leave only when their
 * part is ticked. What stands in notes outside of tags, and front matter, never leaves.
 * @throws NothingToShareError when there is no such goal or month.
 */
export function shareNote(journal: Journal, options: ShareOptions): string {
  const { subject, say = fillMessage } = options;
  const context = shareContext(checkContext(journal, options), new Set(options.parts), say);
  const { title, lead, sections } = written(context, subject);
  const name = context.parts.has('name') ? context.check.plan.athlete?.name : undefined;
  return `${[
    `# ${context.say(title)}`,
    ...(name === undefined ? [] : [plainText(name)]),
    ...lead,
    ...sections.map(sectionText),
    context.say(message('As of {0}.', context.check.today)),
  ]
    .filter((block) => block !== '')
    .join('\n\n')}\n`;
}

/** The parts that would add something to the note, with how much. */
export function partsOnOffer(
  journal: Journal,
  options: Omit<ShareOptions, 'parts'>,
): readonly SharePartOnOffer[] {
  const linesWith = (parts: readonly SharePart[]) =>
    shareNote(journal, { ...options, parts })
      .split('\n')
      .filter((line) => line !== '').length;
  const plain = shareNote(journal, options);
  const lines = linesWith([]);
  return shareParts.flatMap((part) => {
    if (shareNote(journal, { ...options, parts: [part] }) === plain) return [];
    return [{ part, lines: Math.max(1, linesWith([part]) - lines) }];
  });
}
