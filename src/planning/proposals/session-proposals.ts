import type { Need } from '../../journal/journal';
import type { FieldContext } from '../../notation/cursor-context';
import { dayNumber, isoWeekday } from '../../notation/time/iso-date';
import { isoWeekOf } from '../../notation/time/iso-week';
import { formatSessionLength } from '../../notation/time/length-of-time';
import { formatTime, formatTimeSpan } from '../../notation/time/wall-clock';
import { kindsOf } from '../../training/kinds';
import { openNeeds } from '../../training/open-needs';
import { fieldsOfNeed, kindProposals } from './name-proposals';
import { blank, type Proposal, type ProposalSource, plain, snippet, snippetText } from './proposal';

/** How many days back a session of the same kind says at which hour it usually is. */
const usualDays = 28;

/** The start of the latest session of `kind`, or of the free hours of the note's weekday. */
function usualStart({ journal, date, today }: ProposalSource, kind: string): string | undefined {
  const day = dayNumber(date ?? today);
  const latest = journal
    .sessions(day - usualDays, day - 1)
    .filter((session) => session.kind === kind && session.entry.span)
    .at(-1)?.entry.span?.value;
  const free = journal.plan.free.find((hours) => hours.weekdays.some((one) => one === isoWeekday(day)));
  const span = latest ?? free?.span;
  return span && formatTime(span.start);
}

function sessionForNeed(source: ProposalSource, need: Need, label: string): Proposal {
  const start = usualStart(source, need.kind);
  const named = fieldsOfNeed(need);
  const fields = [
    need.kind,
    ...(start === undefined ? [] : [blank(1, start)]),
    ...(need.length ? [formatSessionLength(need.length.minutes)] : []),
    ...(need.rating === undefined ? [] : [`${need.rating}/10`]),
    ...named.map(snippetText),
  ];
  return snippet(label, fields.join(' '), { is: 'session-for-need', need }, { asked: true });
}

/** A need by all that its session takes over. */
function fullLabel(need: Need): string {
  return [need.kind, ...fieldsOfNeed(need)].join(' ');
}

/** A need by its kind and its goal, or by the first thing that it asks for. */
function shortLabel(need: Need): string {
  return [need.kind, ...fieldsOfNeed(need).slice(0, 1)].join(' ');
}

/** Sessions that the week asks for, whole, and then kinds alone. */
export function newSessionProposals(source: ProposalSource, context: FieldContext): readonly Proposal[] {
  const kinds = kindProposals(source).map((one) => ({ ...one, asked: true }));
  if (context.fields.length > 0) return kinds;
  const needs = openNeeds(source.journal.plan, isoWeekOf(source.date ?? source.today)).filter(
    (need) => fieldsOfNeed(need).length > 0,
  );
  const whole = new Map(needs.map((need) => [fullLabel(need), need]));
  const short = [...whole.values()].map(shortLabel);
  const labels = [...whole].map(([full, need]) =>
    short.filter((one) => one === shortLabel(need)).length > 1 ? full : shortLabel(need),
  );
  return [
    ...[...whole.values()].map((need, index) => sessionForNeed(source, need, labels[index] ?? need.kind)),
    ...kinds,
  ];
}

function unique(texts: readonly (string | undefined)[]): readonly string[] {
  return [...new Set(texts.filter((text): text is string => text !== undefined))];
}

/** Time, length and effort of a session of a kind, from free hours, needs and the sessions before. */
export function sessionDetailProposals(source: ProposalSource, context: FieldContext): readonly Proposal[] {
  const { plan } = source.journal;
  const kind = context.wordsBefore[0] ?? '';
  const needs = plan.needs.filter((need) => kindsOf(kind, plan.kinds).includes(need.kind));
  const weekday = isoWeekday(dayNumber(source.date ?? source.today));
  const free = plan.free.filter((hours) => hours.weekdays.some((one) => one === weekday));
  const times = unique([
    usualStart(source, kind),
    ...free.flatMap((hours) => [formatTime(hours.span.start), formatTimeSpan(hours.span)]),
  ]);
  const lengths = unique([
    ...needs.map((need) => need.length && formatSessionLength(need.length.minutes)),
    '60min',
  ]);
  const ratings = unique([...needs.map((need) => need.rating?.toString()), '7']);
  const bare = context.fields.filter((one) => !one.name).map((one) => one.text);
  const has = (shape: RegExp): boolean => bare.some((text) => shape.test(text));
  return [
    ...(has(/^\d{1,2}:\d{2}/) ? [] : times.map((text) => plain(text, { is: 'value' }))),
    ...(has(/^\d+(?:[.,]\d+)?(?:min|h\d*|s)$/) ? [] : lengths.map((text) => plain(text, { is: 'value' }))),
    ...(has(/\/10$/)
      ? []
      : ratings.map((text) => snippet(`${text}/10`, `${blank(1, text)}/10`, { is: 'value' }))),
  ];
}
