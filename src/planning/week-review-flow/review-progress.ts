/** A step of the review: what happened, what could be done otherwise, the next week. */
export type ReviewStep = 'facts' | 'proposals' | 'plan';

/** How far a person has come in a review, and what they have decided so far. */
export interface ReviewProgress {
  readonly step: ReviewStep;
  /** Ids of the proposals that are taken. None is at first: they are offered, never set. */
  readonly taken: ReadonlySet<string>;
  /** Names of planned sessions that are not to be written. */
  readonly unticked: ReadonlySet<string>;
  readonly withRestDays: boolean;
}

/** Where a review begins. */
export const reviewBegins: ReviewProgress = {
  step: 'facts',
  taken: new Set(),
  unticked: new Set(),
  withRestDays: true,
};

/** The steps of a review; without anything to propose there are two. */
export function stepsOf(proposals: readonly unknown[]): readonly ReviewStep[] {
  return proposals.length === 0 ? ['facts', 'plan'] : ['facts', 'proposals', 'plan'];
}

/** The step before or behind the present one; the present one where there is none. */
export function reviewStepped(
  progress: ReviewProgress,
  steps: readonly ReviewStep[],
  by: 1 | -1,
): ReviewProgress {
  const now = steps.indexOf(progress.step);
  // A step that is no more, for its proposals have gone, leads to the nearest one.
  const step = now < 0 ? steps[by === 1 ? steps.length - 1 : 0] : steps[now + by];
  return { ...progress, step: step ?? progress.step };
}

function toggled(set: ReadonlySet<string>, id: string): ReadonlySet<string> {
  const after = new Set(set);
  if (!after.delete(id)) after.add(id);
  return after;
}

/** Takes a proposal, or leaves it again. */
export function proposalToggled(progress: ReviewProgress, id: string): ReviewProgress {
  return { ...progress, taken: toggled(progress.taken, id) };
}

/** Ticks a session of the next week, or takes the tick away. */
export function sessionToggled(progress: ReviewProgress, name: string): ReviewProgress {
  return { ...progress, unticked: toggled(progress.unticked, name) };
}

/** The progress after the notes have changed: proposals that have gone are no longer taken. */
export function reviewRenewed(
  progress: ReviewProgress,
  proposals: readonly { readonly id: string }[],
): ReviewProgress {
  const steps = stepsOf(proposals);
  return {
    ...progress,
    step: steps.includes(progress.step) ? progress.step : 'facts',
    taken: new Set([...progress.taken].filter((id) => proposals.some((one) => one.id === id))),
  };
}
