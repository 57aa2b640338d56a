import { addDays, dayNumber, daysBetween, type IsoDate } from '../../notation/time/iso-date';
import { sessionState, stands } from '../../training/session-state';
import { type Proposal, type ProposalSource, plain } from './proposal';

const weeksAhead = [4, 6, 8, 12, 16, 20, 26, 39, 52] as const;

function dateProposal({ journal, today }: ProposalSource, date: IsoDate): Proposal {
  const day = dayNumber(date);
  const sessions = journal
    .sessions(day, day)
    .filter((session) => stands(sessionState(session, today)))
    .map((session) => session.kind);
  const events = journal.plan.events.filter((event) => event.date === date);
  return plain(date, { is: 'date', date, days: daysBetween(today, date), events, sessions });
}

/** Days to reach something by: coming events, then whole weeks from today. */
export function deadlineProposals(source: ProposalSource): readonly Proposal[] {
  const { journal, today } = source;
  const events = journal.plan.events.map((event) => event.date).filter((date) => date > today);
  const weeks = weeksAhead.map((count) => addDays(today, count * 7));
  return [...new Set([...events.sort(), ...weeks])].map((date) => dateProposal(source, date));
}

/** The day itself and the `days` after it, or after the note's day when that is later. */
export function nextDays(source: ProposalSource, days: number): readonly Proposal[] {
  const from = source.date !== undefined && source.date > source.today ? source.date : source.today;
  return Array.from({ length: days + 1 }, (_, index) => dateProposal(source, addDays(from, index)));
}

/** Where a session of this note can go: the next seven days, its own left out. */
export function moveProposals(source: ProposalSource): readonly Proposal[] {
  return nextDays(source, 7).filter((proposal) => proposal.label !== source.date);
}

/** The present day. */
export function todayProposal(source: ProposalSource): readonly Proposal[] {
  return [dateProposal(source, source.today)];
}
