import type { FromGoalPage, GoalPageState, PagePlace } from '../../pages/goal-page-data';

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}

function isPlace(value: unknown): value is PagePlace {
  return (
    isRecord(value) &&
    typeof value.note === 'string' &&
    isRecord(value.range) &&
    Number.isInteger(value.range.start) &&
    Number.isInteger(value.range.end)
  );
}

/** What a page asked for, or `undefined` when it is nothing that a page may ask for. */
export function readPageMessage(value: unknown): FromGoalPage | undefined {
  if (!isRecord(value)) return undefined;
  const { type, goal, place } = value;
  if (type === 'ready' || type === 'guide') return { type };
  if (type === 'open') return isPlace(place) ? { type, place } : undefined;
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
