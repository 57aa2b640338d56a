import type { FreeHours, Need } from '../../journal/journal';
import type { NotePlace } from '../../journal/note';
import type { PerWeek } from '../../notation/entries';
import { dayNumber } from '../../notation/time/iso-date';
import { formatTime } from '../../notation/time/wall-clock';
import type { Message } from '../../training/finding';
import { ruleSubject } from '../../training/rule-subject';
import { entryPlace, sessionPlace } from '../../training/session-place';
import type { CheckContext } from '../../training/week-under-check';
import { lengthInWords, message, weekdayName } from '../../training/wording';
import type { AskedSessions } from '../week-problem/asked-sessions';
import type { ProblemSource } from '../week-problem/problem-source';
import { joined, listed } from './joined-messages';

/** 1 January 1970 was a Thursday, so this is a Monday. */
const someMonday = 4;

/** The English name of a weekday, 1 for Monday. */
export function weekdayWord(weekday: number): string {
  return weekdayName(someMonday + weekday - 1);
}

/** `3 flexibility sessions for low-split with coach`. */
export function sessionsInWords(asked: AskedSessions, count: number): Message {
  const { facts } = asked;
  const { session, goals } = facts;
  const goal = asked.what.is === 'new' ? asked.what.demand.need?.goal : goals[0];
  const partners = session.entry.with.map(({ value }) => value).join(', ');
  return joined([
    count === 1 ? message('1 {0} session', session.kind) : message('{0} {1} sessions', count, session.kind),
    ...(goal === undefined ? [] : [message(' for {0}', goal)]),
    ...(partners === '' ? [] : [message(' with {0}', partners)]),
  ]);
}

/** What is kept apart or counted by a rule, in the plural. */
function subjectInWords(subject: string, { plan }: CheckContext): Message {
  const about = ruleSubject(subject, plan);
  switch (about.about) {
    case 'any':
      return message('training sessions');
    case 'hard':
      return message('hard sessions');
    case 'goal':
      return message('sessions for {0}', about.name);
    case 'region':
      return message('hard sessions that load {0}', about.name);
    default:
      return message('{0} sessions', subject);
  }
}

function perWeekInWords(asked: PerWeek | undefined): Message {
  return asked?.count === undefined ? message('{0} min', asked?.minutes ?? 0) : message('{0}', asked.count);
}

function needInWords({ kind, goal }: Need): Message {
  return joined([message('{0} sessions', kind), ...(goal === undefined ? [] : [message(' for {0}', goal)])]);
}

function ruleInWords(source: Extract<ProblemSource, { about: 'rule' }>, context: CheckContext): Message {
  const { rule, aspect } = source;
  const subject = subjectInWords(rule.subject, context);
  switch (aspect) {
    case 'gap':
      return rule.gap ? joined([message('{0} between ', lengthInWords(rule.gap)), subject]) : subject;
    case 'max':
      return joined([message('no more than '), perWeekInWords(rule.max), ' ', subject, ' a week']);
    case 'min':
      return joined([message('at least '), perWeekInWords(rule.min), ' ', subject, ' a week']);
    case 'cap':
      return joined([
        message('no more than {0} of ', rule.cap ? lengthInWords(rule.cap) : ''),
        subject,
        ' a day',
      ]);
    case 'rest-day':
      return rule.min?.count === 1
        ? message('a rest day a week')
        : message('{0} rest days a week', rule.min?.count ?? 0);
  }
}

function needRuleInWords({ need, aspect }: Extract<ProblemSource, { about: 'need' }>): Message {
  if (aspect === 'gap' && need.gap)
    return joined([message('{0} between ', lengthInWords(need.gap)), needInWords(need)]);
  return joined([message('no more than '), perWeekInWords(need.max), ' ', needInWords(need), ' a week']);
}

/** `Wednesday 19:30-21:30`. */
function lineInWords({ weekdays, span }: FreeHours): Message {
  const days = weekdays.map(weekdayWord).join(', ');
  const end = span.end === undefined ? '' : `-${formatTime(span.end)}`;
  return message('{0} {1}', days, `${formatTime(span.start)}${end}`);
}

/** `no free hours on Saturday and Sunday`. */
export function closedDaysInWords(closed: readonly Extract<ProblemSource, { about: 'hours' }>[]): Message {
  const days = listed(closed.map(({ weekday }) => message('{0}', weekdayWord(weekday))));
  const isEmpty = closed.every(
    ({ weekday, lines }) => !lines.some((line) => line.weekdays.includes(weekday)),
  );
  return joined([message(isEmpty ? 'no free hours on ' : 'no free hours for it on '), days]);
}

/** A part of a question in the athlete's words, as it can stand in a list. */
export function partInWords(source: ProblemSource, context: CheckContext): Message {
  switch (source.about) {
    case 'asked':
      return sessionsInWords(source.asked, source.asked.count);
    case 'standing': {
      const { session } = source.facts;
      const start = session.entry.span?.value.start;
      const company = session.entry.with.map(({ value }) => value).join(', ');
      return joined([
        start === undefined
          ? message("{0}'s {1} session", weekdayName(session.day), session.kind)
          : message("{0}'s {1} session at {2}", weekdayName(session.day), session.kind, formatTime(start)),
        ...(company === '' ? [] : [message(' with {0}', company)]),
      ]);
    }
    case 'rule':
      return ruleInWords(source, context);
    case 'need':
      return needRuleInWords(source);
    case 'pain':
      return message('pain in {0} that is not cleared', source.report.region);
    case 'busy': {
      const { busy } = source;
      const day = weekdayName(dayNumber(busy.days.first));
      if (busy.days.first !== busy.days.last)
        return message('the busy days {0} to {1}', busy.days.first, busy.days.last);
      return busy.span
        ? message('the busy time on {0} from {1}', day, formatTime(busy.span.start))
        : message('the busy day {0}', busy.days.first);
    }
    case 'calendar':
      return source.summary === undefined
        ? message('a time that a calendar takes')
        : message('"{0}" in the calendar', source.summary);
    case 'event':
      return message('"{0}" on {1}', source.event.name, source.event.date);
    case 'hours':
      return closedDaysInWords([source]);
    case 'company':
      return source.lines.length === 0
        ? message("{0}'s hours", source.name)
        : joined([message("{0}'s hours on ", source.name), listed(source.lines.map(lineInWords))]);
    case 'wish':
      return message('a wish');
  }
}

/** Where a part is written; `undefined` for what no line says. */
export function partPlaces(source: ProblemSource): readonly NotePlace[] {
  switch (source.about) {
    case 'asked': {
      const { what } = source.asked;
      if (what.is === 'moving') return [sessionPlace(what.session)];
      const written = what.demand.need ?? what.demand.rule?.written;
      return written ? [entryPlace(written)] : [];
    }
    case 'standing':
      return [sessionPlace(source.facts.session)];
    case 'rule':
      return source.rule.written ? [entryPlace(source.rule.written)] : [];
    case 'need':
      return [entryPlace(source.need)];
    case 'pain':
      return [entryPlace(source.report)];
    case 'busy':
      return [entryPlace(source.busy)];
    case 'calendar':
      return [source.place];
    case 'event':
      return [entryPlace(source.event)];
    case 'hours':
      return source.lines.filter((line) => line.weekdays.includes(source.weekday)).map(entryPlace);
    case 'company':
      return source.lines.map(entryPlace);
    case 'wish':
      return [];
  }
}
