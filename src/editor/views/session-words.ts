import type { Session } from '../../journal/journal';
import { daysBetween } from '../../notation/time/iso-date';
import { formatTime, formatTimeSpan } from '../../notation/time/wall-clock';
import type { SessionFacts } from '../../training/session-facts';
import { minutesInWords } from '../../training/wording';
import { reasonInWords } from '../reason-words';
import { inLines, inOneLine, say, type ViewContext } from './view-context';

/** Kind and time, as the athlete wrote them: `flexibility 18:30`. */
export function sessionLabel(session: Session): string {
  const span = session.entry.span?.value;
  return span ? `${session.kind} ${formatTime(span.start)}` : session.kind;
}

/** What has become of the session: `overdue since Tuesday`, `done 7/10`, `skipped (work)`. */
export function stateInWords(facts: SessionFacts, context: ViewContext): string {
  const { session, state } = facts;
  const { today } = context;
  const { dates, number } = context.words;
  const { rating, skipped, moved } = session.entry;
  switch (state) {
    case 'planned':
      return say(context, 'planned');
    case 'overdue':
      return daysBetween(session.date, today) === 1
        ? say(context, 'overdue since yesterday')
        : say(context, 'overdue since {0}', dates.near(session.date, today));
    case 'done':
      return rating ? say(context, 'done {0}/10', number(rating.value, 1)) : say(context, 'done');
    case 'skipped':
      return say(context, 'skipped ({0})', reasonInWords(skipped?.value ?? 'other', context.words));
    case 'moved':
      return moved ? say(context, 'moved to {0}', dates.near(moved.value, today)) : say(context, 'moved');
  }
}

/** `with coach`, or nothing when the session is trained alone. */
export function partnersInWords(session: Session, context: ViewContext): string | undefined {
  const names = session.entry.with.map((name) => name.value);
  return names.length === 0 ? undefined : say(context, 'with {0}', names.join(', '));
}

function effortLine(facts: SessionFacts, context: ViewContext): string | undefined {
  if (facts.state === 'done' || facts.effortFrom === 'default') return undefined;
  return say(context, 'planned effort {0}/10', context.words.number(facts.effort, 1));
}

function goalsLine(facts: SessionFacts, context: ViewContext): string | undefined {
  const titles = facts.goals.map((id) => context.journal.plan.goals.get(id)?.title ?? id);
  return titles.length === 0 ? undefined : say(context, 'for: {0}', titles.join(', '));
}

/** All that a session's line says, a line a thing. */
export function sessionLines(facts: SessionFacts, context: ViewContext): string {
  const { session, minutes, routine } = facts;
  const { span, where, remark } = session.entry;
  const { dates } = context.words;
  return inLines(
    inOneLine(
      session.kind,
      dates.weekdayAndDay(session.date, context.today),
      span && formatTimeSpan(span.value),
      minutes === undefined ? undefined : minutesInWords(minutes),
    ),
    inOneLine(stateInWords(facts, context), effortLine(facts, context)),
    goalsLine(facts, context),
    inOneLine(partnersInWords(session, context), where && say(context, 'at: {0}', where.value)),
    routine && say(context, 'routine: {0}', routine.id),
    session.movedFrom &&
      say(context, 'moved here from {0}', dates.weekdayAndDay(session.movedFrom, context.today)),
    remark?.value,
  );
}
