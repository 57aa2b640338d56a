import type { JournalPlan } from '../../journal/journal';
import type { Finding, Severity } from '../finding';

/** A goal whose needed pace is faster than its readings show. */
export interface GoalBehind {
  readonly goal: string;
  readonly title: string;
  readonly finding: Finding;
}

/** What the findings of one journal come to. */
export interface AthleteFindings {
  readonly counts: Readonly<Record<Severity, number>>;
  /** The first of the gravest ones. */
  readonly worst?: Finding;
  /** That fewer sessions are kept than usual. */
  readonly slipping?: Finding;
  readonly behind: readonly GoalBehind[];
}

const gravestFirst: readonly Severity[] = ['error', 'warning', 'information'];

/** What `findings`, those of one journal in view, come to. */
export function athleteFindings(findings: readonly Finding[], plan: JournalPlan): AthleteFindings {
  const counts = { error: 0, warning: 0, information: 0 };
  for (const { severity } of findings) counts[severity] += 1;
  const [worst] = gravestFirst.flatMap((severity) => findings.filter((one) => one.severity === severity));
  const slipping = findings.find(({ code }) => code === 'slipping');
  const behind = findings.flatMap((finding): readonly GoalBehind[] => {
    if (finding.code !== 'goal-pace') return [];
    const goal = String(finding.facts.goal);
    return [{ goal, title: plan.goals.get(goal)?.title ?? goal, finding }];
  });
  // A goal of several measures is behind once.
  const once = behind.filter(({ goal }, index) => behind.findIndex((one) => one.goal === goal) === index);
  return {
    counts,
    ...(worst ? { worst } : {}),
    ...(slipping ? { slipping } : {}),
    behind: once,
  };
}
