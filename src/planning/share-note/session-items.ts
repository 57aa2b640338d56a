import { addWeeks, isoWeekOfDay, mondayOf } from '../../notation/time/iso-week';
import { formatTime } from '../../notation/time/wall-clock';
import type { SessionFacts } from '../../training/session-facts';
import { message } from '../../training/wording';
import { bodyUnder } from '../session-block';
import { type ListItem, plainText } from './markdown-text';
import { dayWords, remarkLines, type ShareContext, type SharedDays } from './share-context';

/** What became of a session, in words; the reason only when reasons may leave. */
export function stateWords({ parts, say }: ShareContext, { state, session }: SessionFacts): string {
  const { skipped, moved } = session.entry;
  switch (state) {
    case 'done':
      return say(message('kept'));
    case 'skipped':
      return parts.has('reasons') && skipped
        ? say(message('not done ({0})', skipped.value))
        : say(message('not done'));
    case 'moved':
      return say(message('moved to {0}', moved?.value ?? ''));
    case 'overdue':
      return say(message('not marked'));
    case 'planned':
      return say(message('planned'));
  }
}

function exerciseLines({ check, parts }: ShareContext, { session }: SessionFacts): readonly string[] {
  const note = check.journal.note(session.note);
  if (!parts.has('exercises') || !note) return [];
  return bodyUnder(note.text, session.entry)
    .split('\n')
    .map((line) => plainText(line.replace(/^\s*(?:[-*+]|\d+[.)])\s+/, '')))
    .filter((line) => line !== '');
}

/**
 * A session as a list item: day, time, kind, length, effort, and what became of it.
 * @param except A name that is known anyway and not repeated.
 */
export function sessionItem(context: ShareContext, facts: SessionFacts, except?: string): ListItem {
  const { parts, say } = context;
  const { session, minutes } = facts;
  const { span, rating, where, with: names } = session.entry;
  const time = span ? `${formatTime(span.value.start)} ` : '';
  const what = [
    `${time}${plainText(session.kind)}`,
    ...(minutes === undefined ? [] : [say(message('{0} min', Math.round(minutes)))]),
    ...(rating ? [`${rating.value}/10`] : []),
  ].join(', ');
  const others = names.map(({ value }) => value).filter((name) => name !== except);
  return {
    text: `${dayWords(session.date)}: ${what}: ${stateWords(context, facts)}`,
    below: [
      ...(parts.has('partners') && others.length > 0 ? [say(message('With {0}', others.join(', ')))] : []),
      ...(parts.has('places') && where ? [say(message('Place: {0}', where.value))] : []),
      ...remarkLines(context, session.entry),
      ...exerciseLines(context, facts),
    ],
  };
}

/** Every session of the days, those that were skipped or moved too, in order of day and time. */
export function sessionsOfDays(
  { check }: ShareContext,
  { first, last }: SharedDays,
): readonly SessionFacts[] {
  const found: SessionFacts[] = [];
  for (let week = isoWeekOfDay(first); mondayOf(week) <= last; week = addWeeks(week, 1)) {
    found.push(
      ...check.weeks(week).sessions.filter(({ session }) => session.day >= first && session.day <= last),
    );
  }
  return found;
}
