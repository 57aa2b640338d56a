/** The evidence for a drop, session by session. */
export interface BernoulliCusum {
  readonly n: number;
  /** Log-likelihood ratio of the lower against the usual chance, never below zero, after each session. */
  readonly scores: readonly number[];
  /** Positions (from 0) whose score is at or above the limit; empty without a limit. */
  readonly alarms: readonly number[];
}

/** The two chances of a planned session being done that are weighed against each other, both inside 0..1. */
export interface DropHypotheses {
  readonly usual: number;
  readonly dropped: number;
}

/**
 * The cumulative sum of log-likelihood ratios for done (true) and missed (false) sessions: done adds
 * ln(dropped/usual), missed adds ln((1 - dropped)/(1 - usual)), floor 0.
 *
 * Sources: Reynolds & Stoumbos (1999) J Qual Technol 31:87-108; Steiner et al (2000) Biostatistics 1:441-452.
 */
export function bernoulliCusum(
  done: readonly boolean[],
  { usual, dropped }: DropHypotheses,
  limit = Number.POSITIVE_INFINITY,
): BernoulliCusum {
  const weights = { done: Math.log(dropped / usual), missed: Math.log((1 - dropped) / (1 - usual)) };
  const scores: number[] = [];
  for (const session of done) {
    scores.push(Math.max(0, (scores.at(-1) ?? 0) + (session ? weights.done : weights.missed)));
  }
  return { n: done.length, scores, alarms: scores.flatMap((score, i) => (score >= limit ? [i] : [])) };
}
