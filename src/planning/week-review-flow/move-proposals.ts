import type { Journal } from '../../journal/journal';
import { checkWeekIn } from '../../training/check-week';
import type { Finding, FindingCode, RemedyName } from '../../training/finding';
import { type CheckContext, checkContext } from '../../training/week-under-check';
import { message } from '../../training/wording';
import { joined } from '../plan-weeks/joined-messages';
import { type Remedy, remediesFor } from '../remedies';
import { foundSession } from '../remedies/found-session';
import type { Steps } from '../solver/slices';
import type { ProposedChange, ReviewedWeeks, ReviewProposal } from './review-proposal';

/** What another place for a session can mend. Whether an overdue one was done, only the athlete knows. */
const mendedByMoving: readonly FindingCode[] = [
  'gap-too-short',
  'day-over-cap',
  'week-over-maximum',
  'overlapping-sessions',
  'outside-free-hours',
];

const moves: readonly RemedyName[] = ['move-to-legal-day', 'swap-with-another-day'];

/** More than so many are not read; the views show them all. */
const mostMoves = 5;

/** Names a finding on a session by what is written there, so that it is found again when lines above it have come. */
function nameOf({ journal }: CheckContext, { code, note, range }: Finding): string {
  const text = journal.note(note)?.text.slice(range.start, range.end) ?? '';
  return `${code} ${note} ${text}`;
}

/** Findings on sessions that are still to come, one a session. */
function toMove(context: CheckContext, { reviewed, planned }: ReviewedWeeks): readonly Finding[] {
  const seen = new Set<string>();
  return [...new Set([reviewed, planned])]
    .flatMap((week) => checkWeekIn(context, week))
    .filter((finding) => mendedByMoving.includes(finding.code))
    .filter((finding) => {
      const session = foundSession({ journal: context.journal, finding, options: context });
      if (!session || session.day < context.todayNumber) return false;
      const place = `${session.note} ${session.entry.range.start}`;
      if (seen.has(place)) return false;
      seen.add(place);
      return true;
    });
}

function firstMove(context: CheckContext, finding: Finding, { check }: ReviewedWeeks): Remedy | undefined {
  const wanted = moves.filter((name) => finding.remedies.includes(name));
  for (const remedy of remediesFor(context.journal, { ...finding, remedies: wanted }, check)) return remedy;
  return undefined;
}

function changeFor(
  context: CheckContext,
  finding: Finding,
  weeks: ReviewedWeeks,
): ProposedChange | undefined {
  const remedy = firstMove(context, finding, weeks);
  if (!remedy) return undefined;
  const { kind = '', date = '' } =
    foundSession({ journal: context.journal, finding, options: context }) ?? {};
  return { title: joined([message('{0} of {1}: ', kind, date), remedy.title]), changes: remedy.changes };
}

/** Sessions still to come that stand where a rule does not want them, each with the first place that breaks none. */
export function* moveProposals(
  context: CheckContext,
  weeks: ReviewedWeeks,
): Steps<readonly ReviewProposal[]> {
  const proposals: ReviewProposal[] = [];
  for (const finding of toMove(context, weeks)) {
    if (proposals.length >= mostMoves) break;
    yield 0;
    const name = nameOf(context, finding);
    const first = changeFor(context, finding, weeks);
    if (!first) continue;
    const make = (journal: Journal): ProposedChange | undefined => {
      const now = checkContext(journal, weeks.check);
      const again = toMove(now, weeks).find((one) => nameOf(now, one) === name);
      return again && changeFor(now, again, weeks);
    };
    const { title } = first;
    proposals.push({
      id: `move ${name}`,
      subject: 'move',
      title,
      why: finding.message,
      cautions: [],
      effect: { does: 'change', make },
    });
  }
  return proposals;
}
