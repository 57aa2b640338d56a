import { isoWeekOf } from '../../notation/time/iso-week';
import type { SessionFacts } from '../../training/session-facts';
import { sessionPlace } from '../../training/session-place';
import type { SessionState } from '../../training/session-state';
import { partnersInWords, sessionLabel, sessionLines, stateInWords } from './session-words';
import { inOneLine, type ViewContext, viewPlace } from './view-context';
import type { ViewNode, ViewNodeKind } from './view-node';

/** One shape a state, so that no state is told by colour. */
const icons: Readonly<Record<SessionState, string>> = {
  planned: 'circle-large-outline',
  overdue: 'history',
  done: 'pass',
  skipped: 'circle-slash',
  moved: 'arrow-right',
};

const kinds: Readonly<Record<SessionState, ViewNodeKind>> = {
  planned: 'session.open',
  overdue: 'session.open',
  done: 'session.done',
  skipped: 'session.skipped',
  moved: 'session.moved',
};

/** What a row of a session says besides the session itself. */
export interface SessionRow {
  /** Sets the row apart from rows of the same session elsewhere in the view. */
  readonly within: string;
  /** Begins the description, such as the weekday where the rows around do not tell it. */
  readonly before?: string;
  /** Takes the place of kind and time. */
  readonly label?: string;
  /** Takes the place of the state's own shape, where all rows of this sort have one state. */
  readonly icon?: string;
}

/** A row for a session. `ordinal` tells sessions of one day, kind and time apart. */
export function sessionNode(
  facts: SessionFacts,
  context: ViewContext,
  row: SessionRow,
  ordinal = 0,
): ViewNode {
  const { session, state } = facts;
  const label = row.label ?? sessionLabel(session);
  const partners = partnersInWords(session, context);
  const day = context.words.dates.weekdayAndDay(session.date, context.today);
  const isMissed = state === 'overdue' && isoWeekOf(session.date) === isoWeekOf(context.today);
  return {
    id: `${context.id}#${row.within}/${session.date}/${sessionLabel(session)}/${ordinal}`,
    kind: isMissed ? 'session.missed' : kinds[state],
    journal: context.id,
    label,
    description: inOneLine(row.before, stateInWords(facts, context), partners),
    tooltip: sessionLines(facts, context),
    icon: row.icon ?? icons[state],
    accessibilityLabel: inOneLine(label, day, stateInWords(facts, context), partners),
    place: viewPlace(context, sessionPlace(session)),
    session,
    date: session.date,
    children: [],
  };
}

/** Rows for sessions, in their order. */
export function sessionNodes(
  sessions: readonly SessionFacts[],
  context: ViewContext,
  rowOf: (facts: SessionFacts) => SessionRow,
): readonly ViewNode[] {
  const counts = new Map<string, number>();
  return sessions.map((facts) => {
    const key = `${facts.session.date} ${sessionLabel(facts.session)}`;
    const ordinal = counts.get(key) ?? 0;
    counts.set(key, ordinal + 1);
    return sessionNode(facts, context, rowOf(facts), ordinal);
  });
}
