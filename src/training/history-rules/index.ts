import { gapWorthChanging } from './gap-worth-changing';
import { goalHours } from './goal-hours';
import { goalPace } from './goal-pace';
import type { HistoryRule } from './history-rule';
import { slipping } from './slipping';

/** Every check of what the whole of a journal shows. */
export const historyRules: readonly HistoryRule[] = [goalPace, goalHours, slipping, gapWorthChanging];
