import type { BodyReport } from '../../journal/journal';
import { formatQuantity } from '../../notation/quantity';
import { dayNumber } from '../../notation/time/iso-date';
import { adherenceShare } from '../../training/adherence/adherence-share';
import { plannedSessions } from '../../training/adherence/planned-sessions';
import { painCaution } from '../../training/cautions';
import { message } from '../../training/wording';
import { type ListItem, plainText, type Section } from './markdown-text';
import { sessionItem, sessionsOfDays } from './session-items';
import { dayWords, remarkLines, type ShareContext, type SharedDays } from './share-context';

/** How much of what was planned was kept, in a sentence each. */
export function keptParagraphs({ check, say }: ShareContext, { first, last }: SharedDays): readonly string[] {
  const kept = adherenceShare(plannedSessions(check.weeks, first, Math.min(last, check.todayNumber)));
  const called = kept.excused === 0 ? [] : [say(message('Called off and not counted: {0}.', kept.excused))];
  const unmarked = kept.unmarked === 0 ? [] : [say(message('Not marked yet: {0}.', kept.unmarked))];
  const share =
    kept.n === 0
      ? say(message('No session was planned up to now.'))
      : say(message('Kept: {0} of {1} planned sessions.', kept.done, kept.n));
  return [[share, ...called, ...unmarked].join(' ')];
}

/** The sessions of the days. */
export function sessionsSection(context: ShareContext, days: SharedDays): Section {
  return {
    heading: context.say(message('Sessions')),
    paragraphs: keptParagraphs(context, days),
    items: sessionsOfDays(context, days).map((facts) => sessionItem(context, facts)),
  };
}

function readingItems(context: ShareContext, { first, last }: SharedDays): readonly ListItem[] {
  const { check, parts, say } = context;
  if (!parts.has('readings')) return [];
  return check.journal.measurementsBetween(first, last).map((reading) => {
    const { goal, metric, quantity, side, condition, date, entry } = reading;
    const what = [goal, metric, side, condition].flatMap((word) => word ?? []).map(plainText);
    return {
      text: `${dayWords(date)}: ${what.join(' ')}: ${plainText(formatQuantity(quantity))}`,
      below: [
        ...remarkLines(context, entry),
        ...(parts.has('photos') && entry.photo ? [say(message('Photo: {0}', entry.photo.value))] : []),
      ],
    };
  });
}

/** Photos have an item of their own where the readings that they belong to stay here. */
function photoItems({ check, parts }: ShareContext, { first, last }: SharedDays): readonly ListItem[] {
  if (!parts.has('photos') || parts.has('readings')) return [];
  return check.journal
    .measurementsBetween(first, last)
    .flatMap(({ entry, date }) =>
      entry.photo ? [{ text: `${dayWords(date)}: ${plainText(entry.photo.value)}` }] : [],
    );
}

function bodyItem(context: ShareContext, { region, rating, clear, date, entry }: BodyReport): ListItem {
  const { say } = context;
  const how = clear ? [say(message('over'))] : rating === undefined ? [] : [`${rating}/10`];
  return {
    text: `${dayWords(date)}: ${[plainText(region), ...how].join(', ')}`,
    below: remarkLines(context, entry),
  };
}

function bodyItems(
  context: ShareContext,
  { first, last }: SharedDays,
  kind: BodyReport['kind'],
): readonly ListItem[] {
  const part = kind === 'sore' ? 'soreness' : 'pain';
  if (!context.parts.has(part)) return [];
  return context.check.journal
    .bodyReports(first, last, kind)
    .filter((report) => report.kind === kind)
    .map((report) => bodyItem(context, report));
}

function winItems({ check, parts }: ShareContext, { first, last }: SharedDays): readonly ListItem[] {
  if (!parts.has('wins')) return [];
  return check.journal
    .wins(first, last)
    .flatMap(({ entry, date }) =>
      entry.words ? [{ text: `${dayWords(date)}: ${plainText(entry.words.value)}` }] : [],
    );
}

function eventItems({ check, parts }: ShareContext, { first, last }: SharedDays): readonly ListItem[] {
  if (!parts.has('events')) return [];
  return check.plan.events
    .filter(({ date }) => dayNumber(date) >= first && dayNumber(date) <= last)
    .map(({ date, name }) => ({ text: `${dayWords(date)}: ${plainText(name)}` }));
}

function whyItems({ check, parts }: ShareContext): readonly ListItem[] {
  if (!parts.has('why')) return [];
  return [...check.plan.goals.values()]
    .filter(({ closed }) => !closed)
    .flatMap(({ title, whys }) =>
      whys.flatMap(({ words }) =>
        words ? [{ text: `${plainText(title)}: ${plainText(words.value)}` }] : [],
      ),
    );
}

function fileItems({ check, parts }: ShareContext, { first, last }: SharedDays): readonly ListItem[] {
  if (!parts.has('files')) return [];
  const paths: ListItem[] = [];
  for (let day = first; day <= last; day += 1)
    for (const { path } of check.journal.notesOf(day)) paths.push({ text: plainText(path) });
  return paths;
}

/** Everything else of the days that is ticked. */
export function tickedSections(context: ShareContext, days: SharedDays): readonly Section[] {
  const { say } = context;
  const pains = bodyItems(context, days, 'pain');
  return [
    { heading: say(message('Readings')), items: readingItems(context, days) },
    { heading: say(message('Photos')), items: photoItems(context, days) },
    { heading: say(message('What went well')), items: winItems(context, days) },
    { heading: say(message('Events')), items: eventItems(context, days) },
    { heading: say(message('Soreness')), items: bodyItems(context, days, 'sore') },
    {
      heading: say(message('Pain')),
      paragraphs: pains.length === 0 ? [] : [say(message(painCaution))],
      items: pains,
    },
    { heading: say(message('Why')), items: whyItems(context) },
    { heading: say(message('Notes')), items: fileItems(context, days) },
  ];
}
