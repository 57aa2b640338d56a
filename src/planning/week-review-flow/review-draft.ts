import type { Journal } from '../../journal/journal';
import { dayNumber, type IsoDate, isoDate } from '../../notation/time/iso-date';
import { mondayOf } from '../../notation/time/iso-week';
import { fillMessage, type Message } from '../../training/finding';
import { isToDo } from '../../training/session-state';
import { checkContext } from '../../training/week-under-check';
import { addToDay } from '../day-note';
import { DraftJournal } from '../draft-journal';
import { changesKept, type KeptOfPlan } from '../kept-sessions';
import type { NoteChange } from '../note-change';
import { type PlanWeeksOptions, planWeeksSteps, type WeeksPlan } from '../plan-weeks';
import { gentleJournal } from '../return-plan/gentle-journal';
import type { Steps } from '../solver/slices';
import { learnedGaps } from '../week-problem/comfortable-gaps';
import type { TimeOfDay } from '../week-problem/places';
import type { ProposalEffect, ReviewedWeeks, ReviewProposal, WeekSizeLimit } from './review-proposal';

/** A review of which some proposals are taken. */
export interface TakenReview extends ReviewedWeeks {
  /** What writes the facts of the week. */
  readonly facts: readonly NoteChange[];
  readonly proposals: readonly ReviewProposal[];
  readonly timeOfDay?: TimeOfDay;
  readonly nodeLimit?: number;
  /** Makes the words that are written into notes; English ones when left out. */
  readonly say?: (message: Message) => string;
}

/** What became of a proposal that was taken. */
export interface TakenProposal {
  readonly proposal: ReviewProposal;
  /** What it does in the end; `undefined` when another one has made it needless. */
  readonly title: Message | undefined;
}

/** A review as if its facts were written and the taken proposals stood: what the next week is planned on. */
export interface ReviewDraft {
  readonly review: TakenReview;
  readonly draft: DraftJournal;
  readonly taken: readonly TakenProposal[];
  /** The most that the next week is to hold, when a proposal asks for less. */
  readonly limit?: WeekSizeLimit;
}

type EffectOf<Does extends ProposalEffect['does']> = Extract<ProposalEffect, { readonly does: Does }>;

function effectsOf<Does extends ProposalEffect['does']>(
  proposals: readonly ReviewProposal[],
  does: Does,
): readonly EffectOf<Does>[] {
  return proposals.flatMap(({ effect }) => (effect.does === does ? [effect as EffectOf<Does>] : []));
}

/** The least of several limits. */
function strictest(limits: readonly WeekSizeLimit[]): WeekSizeLimit | undefined {
  if (limits.length === 0) return undefined;
  const minutes = Math.min(...limits.map((limit) => limit.minutes ?? Number.POSITIVE_INFINITY));
  return {
    sessions: Math.min(...limits.map(({ sessions }) => sessions)),
    ...(Number.isFinite(minutes) ? { minutes } : {}),
    allowsHard: limits.every(({ allowsHard }) => allowsHard),
  };
}

/** Rules come before the sessions that they move. */
function inOrder(proposals: readonly ReviewProposal[]): readonly ReviewProposal[] {
  return [
    ...proposals.filter(({ subject }) => subject === 'gap'),
    ...proposals.filter(({ subject }) => subject !== 'gap'),
  ];
}

/**
 * Makes what the taken proposals change, one after the other: each is worked out for the notes as those before it leave
 * them.
 * @throws RangeError when the journal is no longer the one that the facts were made for
 */
export function draftReview(journal: Journal, review: TakenReview): ReviewDraft {
  const draft = new DraftJournal(journal);
  draft.write(review.facts);
  const taken = inOrder(review.proposals).map((proposal): TakenProposal => {
    const { effect, title } = proposal;
    if (effect.does !== 'change') return { proposal, title };
    const change = effect.make(draft.journal);
    if (change) draft.write(change.changes);
    return { proposal, title: change?.title };
  });
  const limit = strictest(effectsOf(review.proposals, 'limit').map((effect) => effect.limit));
  return { review, draft, taken, ...(limit ? { limit } : {}) };
}

/** The next week of a review, and what it was planned with. */
export interface PlannedReview {
  readonly reviewed: ReviewDraft;
  /** The notes as the taken proposals leave them, with what the needs of the week ask for then. */
  readonly journal: Journal;
  readonly options: PlanWeeksOptions;
  readonly plan: WeeksPlan;
}

/** Minutes of training that the week would hold. */
function minutesIn({ draft, review }: ReviewDraft, plan: WeeksPlan): number {
  const standing = checkContext(draft.journal, review.check)
    .weeks(review.planned)
    .standing.filter(({ isRecovery }) => !isRecovery)
    .reduce((sum, { minutes }) => sum + (minutes ?? 0), 0);
  return plan.placed
    .filter(({ asked }) => !asked.facts.isRecovery)
    .reduce((sum, { minutes }) => sum + minutes, standing);
}

/**
 * Plans the next week on the draft: with the wishes of the taken proposals beside the gaps that the notes have taught,
 * and with no more training than the taken limits allow, one session at the least.
 */
export function* planReviewSteps(reviewed: ReviewDraft): Steps<PlannedReview> {
  const { review, draft, limit } = reviewed;
  const { check, planned, timeOfDay, nodeLimit } = review;
  const options: PlanWeeksOptions = {
    ...check,
    weeks: [planned],
    mode: 'new',
    comfortable: [
      ...learnedGaps(checkContext(draft.journal, check)),
      ...effectsOf(review.proposals, 'wish').flatMap(({ gaps }) => gaps),
    ],
    ...(timeOfDay === undefined ? {} : { timeOfDay }),
    ...(nodeLimit === undefined ? {} : { nodeLimit }),
    // Minima of rules, but for recovery, are not for weeks that are to hold less.
    ...(limit
      ? { only: ({ need, kinds }) => need !== undefined || kinds.includes('recovery'), explain: false }
      : {}),
  };
  yield 0;
  for (let sessions = limit?.sessions ?? 0; ; sessions -= 1) {
    const journal = limit
      ? gentleJournal(draft.journal, planned, { sessions, allowsHard: limit.allowsHard })
      : draft.journal;
    const plan = yield* planWeeksSteps(journal, options);
    const isTooLong = limit?.minutes !== undefined && minutesIn(reviewed, plan) > limit.minutes;
    if (!isTooLong || sessions <= 1) return { reviewed, journal, options, plan };
  }
}

/** The day of the week's first session for a goal, else of its first session, else its first day to come. */
function dayToMeasure(journal: Journal, { check, planned }: TakenReview, goal: string): IsoDate {
  const ahead = checkContext(journal, check)
    .weeks(planned)
    .standing.filter(({ state, session }) => isToDo(state) && session.date >= check.today);
  const found = ahead.find(({ goals }) => goals.includes(goal)) ?? ahead[0];
  return found?.session.date ?? isoDate(Math.max(mondayOf(planned), dayNumber(check.today)));
}

/**
 * All that one confirmation writes: the facts of the week, the taken proposals, what is kept of the next week, and the
 * reminders to measure in it. One change a note.
 */
export function reviewChanges(
  { reviewed, journal, options, plan }: PlannedReview,
  kept: KeptOfPlan,
): readonly NoteChange[] {
  const { review } = reviewed;
  const { say = fillMessage } = review;
  const draft = reviewed.draft.copy();
  if (plan.placed.length === 0 || kept.sessions.length > 0)
    draft.write(changesKept(journal, options, plan, kept));
  for (const { goal, line } of effectsOf(review.proposals, 'remind')) {
    const day = dayToMeasure(draft.journal, review, goal);
    draft.write(addToDay(draft.journal, day, [`- [ ] ${say(line)}`]));
  }
  return draft.changes;
}
