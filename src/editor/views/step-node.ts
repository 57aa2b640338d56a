import type { Goal } from '../../journal/journal';
import type { MetricProgress } from '../../training/metric-progress';
import { type StepProgress, type StepState, stepProgress } from '../../training/step-progress';
import { inLines, inOneLine, say, type ViewContext, viewPlace } from './view-context';
import type { ViewNode } from './view-node';

const icons: Readonly<Record<StepState, string>> = {
  done: 'pass',
  reached: 'star-full',
  overdue: 'history',
  open: 'circle-large-outline',
};

function stateInWords(step: StepProgress, context: ViewContext): string {
  const { dates } = context.words;
  const by = step.by && dates.day(step.by, context.today);
  switch (step.state) {
    case 'done':
      return say(context, 'done');
    case 'reached':
      return step.reachedOn
        ? say(context, 'reached on {0}, not ticked yet', dates.day(step.reachedOn, context.today))
        : say(context, 'reached, not ticked yet');
    case 'overdue':
      return by === undefined ? say(context, 'past its date') : say(context, 'past its date, {0}', by);
    case 'open':
      return by === undefined ? say(context, 'open, no date') : say(context, 'open, by {0}', by);
  }
}

/** A row for one step towards a goal. */
export function stepNode(
  goal: Goal,
  ordinal: number,
  metrics: readonly MetricProgress[],
  context: ViewContext,
): ViewNode | undefined {
  const written = goal.steps[ordinal];
  if (!written) return undefined;
  const step = stepProgress(written, goal, metrics, context.today);
  const unit = metrics.find((metric) => metric.name === step.metric)?.unit;
  const target =
    step.to === undefined || unit === undefined
      ? undefined
      : `${step.metric ?? ''} ${context.words.quantity(step.to, unit)}`;
  const description = inOneLine(stateInWords(step, context), target);
  return {
    id: `${context.id}#${goal.id}/step/${ordinal}`,
    kind: 'step',
    journal: context.id,
    label: step.id,
    description,
    tooltip: inLines(step.id, description, written.entry.remark?.value),
    icon: icons[step.state],
    accessibilityLabel: say(context, 'step {0}', inOneLine(step.id, description)),
    place: viewPlace(context, step),
    goal: goal.id,
    children: [],
  };
}
