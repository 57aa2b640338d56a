import type { FromGoalPage, GoalPageState } from '../../pages/goal-page-data';
import { isRecord, readCommonMessage } from '../page/read-message';

/** What a page asked for, or `undefined` when it is nothing that a page may ask for. */
export function readPageMessage(value: unknown): FromGoalPage | undefined {
  const common = readCommonMessage(value);
  if (common || !isRecord(value)) return common;
  const { type, goal } = value;
  if (type === 'choose' || type === 'why' || type === 'copy') {
    return typeof goal === 'string' ? { type, goal } : undefined;
  }
  return undefined;
}

/** Which journal and goal a page that was kept showed. */
export function readPageState(value: unknown): GoalPageState | undefined {
  if (!isRecord(value) || typeof value.journal !== 'string') return undefined;
  return { journal: value.journal, goal: typeof value.goal === 'string' ? value.goal : '' };
}
