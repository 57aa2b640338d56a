import type { Entry, GoalEntry } from './entries';
import type { Heading } from './note-reading';

/** Depth of the heading under which `offset` stands, or `undefined` above the first heading. */
function depthAt(headings: readonly Heading[], offset: number): number | undefined {
  let depth: number | undefined;
  for (const heading of headings) {
    if (heading.range.start >= offset) break;
    depth = heading.depth;
  }
  return depth;
}

function scopeEnd(
  goal: GoalEntry,
  next: GoalEntry | undefined,
  headings: readonly Heading[],
  length: number,
): number {
  const depth = depthAt(headings, goal.range.start);
  const heading = headings.find(
    (one) => depth !== undefined && one.range.start > goal.range.start && one.depth <= depth,
  );
  return Math.min(next?.itemRange.start ?? length, heading?.range.start ?? length);
}

/**
 * Gives each goal its scope, and each `#why`, `#metric`, `#step` and `#need` in it the goal's id. A goal's scope
 * ends at the next goal, or at the next heading as deep as its own or less deep; a goal above every heading
 * keeps what follows to the end of the note.
 */
export function withGoalScopes(
  entries: readonly Entry[],
  headings: readonly Heading[],
  length: number,
): readonly Entry[] {
  const goals = entries.filter((entry): entry is GoalEntry => entry.tag === 'goal');
  if (goals.length === 0) return entries;
  const ends = new Map(
    goals.map((goal, index) => [goal, scopeEnd(goal, goals[index + 1], headings, length)]),
  );
  let current: GoalEntry | undefined;
  return entries.map((entry) => {
    if (entry.tag === 'goal') {
      current = entry;
      return { ...entry, scope: { start: entry.range.start, end: ends.get(entry) ?? entry.range.end } };
    }
    const within =
      entry.tag === 'why' || entry.tag === 'metric' || entry.tag === 'step' || entry.tag === 'need';
    if (!within || !current?.id || entry.range.start >= (ends.get(current) ?? 0)) return entry;
    return { ...entry, goal: current.id.value };
  });
}
