import type { Unit } from '../../notation/quantity';
import type { StepView } from '../../pages/goal-page-data';
import type { GoalProgress } from '../../training/goal-progress';
import type { StepProgress } from '../../training/step-progress';
import { type PageContext, pagePlace, quantityInWords, say } from '../page/page-context';

function aim(step: StepProgress, unit: Unit | undefined, context: PageContext): string | undefined {
  if (step.to === undefined) return undefined;
  const value = quantityInWords(context, step.to, unit);
  return step.metric === undefined ? value : say(context, '{0} {1}', step.metric, value);
}

function state(step: StepProgress, context: PageContext): string {
  const { dates } = context.words;
  const by = step.by === undefined ? undefined : dates.day(step.by, context.today);
  switch (step.state) {
    case 'done':
      return say(context, 'done');
    case 'reached':
      return step.reachedOn === undefined
        ? say(context, 'reached')
        : say(context, 'reached on {0}', dates.day(step.reachedOn, context.today));
    case 'overdue':
      return by === undefined ? say(context, 'overdue') : say(context, 'overdue, was due by {0}', by);
    case 'open':
      return by === undefined ? say(context, 'open') : say(context, 'open, by {0}', by);
  }
}

/** What a step asks for and how it stands: `gap 7 cm, open, by 12 April`. */
export function stepInWords(step: StepProgress, unit: Unit | undefined, context: PageContext): string {
  const wanted = aim(step, unit, context);
  const how = state(step, context);
  return wanted === undefined ? how : say(context, '{0}, {1}', wanted, how);
}

/** The steps of a goal, as they stand in its notes. */
export function stepViews(goal: GoalProgress, context: PageContext): readonly StepView[] {
  return goal.steps.map((step) => ({
    state: step.state,
    name: step.id,
    text: stepInWords(step, goal.metrics.find((metric) => metric.name === step.metric)?.unit, context),
    place: pagePlace(step),
  }));
}
