import type { GoalRule } from './goal-rule';
import { goalWithoutDate } from './goal-without-date';
import { goalWithoutMetric } from './goal-without-metric';
import { goalWithoutWhy } from './goal-without-why';

/** Every check of an open goal. */
export const goalRules: readonly GoalRule[] = [goalWithoutMetric, goalWithoutDate, goalWithoutWhy];
