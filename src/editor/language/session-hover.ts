import * as vscode from 'vscode';
import type { Need } from '../../journal/journal';
import type { Note } from '../../journal/note';
import type { SessionEntry } from '../../notation/entries';
import { dayNumber, type IsoDate } from '../../notation/time/iso-date';
import { isoWeekOf } from '../../notation/time/iso-week';
import { formatTimeSpan } from '../../notation/time/wall-clock';
import { loadOf } from '../../training/load/session-loads';
import type { SessionFacts } from '../../training/session-facts';
import { daysLookedBack, sinceLastOfKind } from '../../training/since-last-of-kind';
import { type TrainingWeek, type WeekReader, weekReader } from '../../training/training-week';
import { minutesInWords } from '../../training/wording';
import { editorWords } from '../editor-words';
import type { OpenJournal } from '../open-journal';
import { escaped } from './words';

/** The load of a session that was done, or what is missing for one. Unknown is never zero. */
function loadLine(facts: SessionFacts): readonly string[] {
  if (facts.state !== 'done') return [];
  const { load, rating } = loadOf(facts);
  if (load !== undefined) {
    return [vscode.l10n.t('Load {0} (effort x minutes).', editorWords().number(load, 0))];
  }
  return rating === undefined
    ? [vscode.l10n.t('Load unknown: you have not written how hard it was, such as 6/10.')]
    : [vscode.l10n.t('Load unknown: nothing says how long it was.')];
}

function whenWords(facts: SessionFacts, today: IsoDate): string {
  const { session } = facts;
  const date = editorWords().dates.weekdayAndDay(session.date, today);
  const span = session.entry.span?.value;
  return span ? vscode.l10n.t('{0}, {1}', date, formatTimeSpan(span)) : date;
}

function stateLine(facts: SessionFacts, today: IsoDate): string {
  const { entry } = facts.session;
  const when = whenWords(facts, today);
  switch (facts.state) {
    case 'done':
      return vscode.l10n.t('Done: {0}.', when);
    case 'overdue':
      return vscode.l10n.t('Overdue: planned for {0}, and neither ticked, skipped nor moved.', when);
    case 'skipped':
      return vscode.l10n.t('Skipped: {0}.', escaped(entry.skipped?.value ?? ''));
    case 'moved':
      return entry.moved
        ? vscode.l10n.t('Moved to {0}.', editorWords().dates.weekdayAndDay(entry.moved.value, today))
        : vscode.l10n.t('Moved.');
    case 'planned':
      return vscode.l10n.t('Planned for {0}.', when);
  }
}

function amountLine(facts: SessionFacts): string {
  const effort = editorWords().number(facts.effort, 1);
  const length = facts.minutes === undefined ? undefined : minutesInWords(facts.minutes);
  const effortWords =
    facts.effortFrom === 'session'
      ? vscode.l10n.t('effort {0} of 10', effort)
      : facts.effortFrom === 'need'
        ? vscode.l10n.t('effort {0} of 10, as its need asks', effort)
        : vscode.l10n.t('counted at effort {0} of 10, because nothing says', effort);
  return length === undefined
    ? vscode.l10n.t('Length unknown, {0}.', effortWords)
    : vscode.l10n.t('{0}, {1}.', length, effortWords);
}

function lastLine(facts: SessionFacts, weeks: WeekReader, journal: OpenJournal): string {
  const kind = escaped(facts.session.kind);
  const since = sinceLastOfKind(facts, weeks, journal.zone());
  if (!since) return vscode.l10n.t('No {0} session in the {1} days before.', kind, daysLookedBack);
  const { last, gap } = since;
  const lastKind = escaped(last.session.kind);
  const date = editorWords().dates.weekdayAndDay(last.session.date, journal.today());
  if (gap.countedIn === 'minutes') {
    return vscode.l10n.t('{0} after the last {1} session ({2}).', minutesInWords(gap.amount), lastKind, date);
  }
  if (gap.amount === 0) return vscode.l10n.t('On the same day as another {0} session.', lastKind);
  return gap.amount === 1
    ? vscode.l10n.t('A day after the last {0} session ({1}).', lastKind, date)
    : vscode.l10n.t('{0} days after the last {1} session ({2}).', gap.amount, lastKind, date);
}

function needWords(need: Need, facts: SessionFacts, week: TrainingWeek): string {
  const counting = week.standing.filter((one) => one.countsFor.includes(need));
  const place = counting.findIndex((one) => one.session === facts.session) + 1;
  const whose =
    need.goal === undefined
      ? vscode.l10n.t('every week’s {0}', escaped(need.kind))
      : vscode.l10n.t('{0} of {1}', escaped(need.kind), escaped(need.goal));
  return need.perWeek.count === undefined
    ? vscode.l10n.t('{0} ({1} min a week)', whose, need.perWeek.minutes)
    : vscode.l10n.t('{0} (number {1} of {2} this week)', whose, place, need.perWeek.count);
}

function needLine(facts: SessionFacts, week: TrainingWeek): readonly string[] {
  if (!facts.stands) return [];
  if (facts.countsFor.length === 0) return [vscode.l10n.t('It counts for no need of the week.')];
  return [
    vscode.l10n.t('Counts for {0}.', facts.countsFor.map((need) => needWords(need, facts, week)).join(', ')),
  ];
}

/** A session in words: state, length and effort, load, time since the last of its kind, what it counts for. */
export function sessionHover(
  journal: OpenJournal,
  note: Note,
  entry: SessionEntry,
): readonly string[] | undefined {
  if (note.name.kind !== 'day' || !entry.kind) return undefined;
  const today = journal.today();
  const weeks = weekReader(journal.journal, today);
  const week = weeks(isoWeekOf(note.name.date));
  const day = dayNumber(note.name.date);
  const facts = week.sessions.find(
    ({ session }) =>
      session.note === note.path && session.day === day && session.entry.range.start === entry.range.start,
  );
  if (!facts) return [vscode.l10n.t('The same session stands in another note of the day, and counts there.')];
  return [
    `**${escaped(entry.kind.value)}**`,
    stateLine(facts, today),
    amountLine(facts),
    ...loadLine(facts),
    ...(facts.stands ? [lastLine(facts, weeks, journal)] : []),
    ...needLine(facts, week),
  ];
}
