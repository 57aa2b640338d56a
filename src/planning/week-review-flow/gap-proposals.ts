import type { Journal } from '../../journal/journal';
import { gapWorthChanging } from '../../training/history-rules/gap-worth-changing';
import { sorenessAsker } from '../../training/recovery/gap-askers';
import { type SorePair, sorePairsOf, soreWords } from '../../training/recovery/reorder-week';
import { isToDo } from '../../training/session-state';
import { type CheckContext, checkContext } from '../../training/week-under-check';
import { lengthInWords, message } from '../../training/wording';
import { remediesFor } from '../remedies';
import type { ComfortableGap } from '../week-problem/problem-rules';
import type { ProposedChange, ReviewedWeeks, ReviewProposal } from './review-proposal';

function changeFor(journal: Journal, subject: unknown, { check }: ReviewedWeeks): ProposedChange | undefined {
  const finding = gapWorthChanging
    .check(checkContext(journal, check))
    .find(({ facts }) => subject === undefined || facts.subject === subject);
  if (!finding) return undefined;
  for (const { title, changes } of remediesFor(journal, finding, check)) return { title, changes };
  return undefined;
}

/** The gap that the whole of the notes suggests, written into the rule that keeps another. */
export function newGapProposals(context: CheckContext, weeks: ReviewedWeeks): readonly ReviewProposal[] {
  return gapWorthChanging.check(context).flatMap((finding): ReviewProposal[] => {
    const { subject } = finding.facts;
    const change = changeFor(context.journal, subject, weeks);
    if (!change) return [];
    return [
      {
        id: `gap ${subject}`,
        subject: 'gap',
        title: change.title,
        why: finding.message,
        cautions: [],
        effect: { does: 'change', make: (journal) => changeFor(journal, subject, weeks) },
      },
    ];
  });
}

/** What sore pairs of one second session ask: the longest gap of each kind and region. */
function gapsOf(pairs: readonly SorePair[]): readonly ComfortableGap[] {
  return pairs.map(({ subject, pair }) => ({
    subject: subject.name,
    minutes: sorenessAsker(subject, pair).asked.minutes,
  }));
}

/**
 * Sessions of the week after which the body was still sore at the next one: next week, such sessions stand further
 * apart where there is room for it. It is a wish of that week alone and no rule.
 */
export function keepApartProposals(
  context: CheckContext,
  { reviewed }: ReviewedWeeks,
): readonly ReviewProposal[] {
  const sessions = context
    .weeks(reviewed)
    .sessions.filter(({ state }) => !isToDo(state) && state !== 'moved');
  const bySecond = new Map<SorePair['pair']['second'], SorePair[]>();
  for (const one of sorePairsOf(context, sessions))
    bySecond.set(one.pair.second, [...(bySecond.get(one.pair.second) ?? []), one]);
  return [...bySecond.values()].flatMap((pairs): ReviewProposal[] => {
    const [first] = pairs;
    if (!first) return [];
    const { subject, pair } = first;
    const { second } = pair;
    return [
      {
        id: `apart ${second.session.note} ${second.session.entry.range.start}`,
        subject: 'apart',
        title: message(
          'Keep {0} sessions {1} apart next week, where there is room',
          subject.name,
          lengthInWords(sorenessAsker(subject, pair).asked),
        ),
        why: soreWords(pair),
        cautions: [],
        effect: { does: 'wish', gaps: gapsOf(pairs) },
      },
    ];
  });
}
