import type { Entry } from './entries';
import type { Located, SourceRange } from './source-range';

/** A goal's, a routine's or a metric's name in an entry. */
export interface EntryName {
  /** A rule's subject is a goal's name only when there is such a goal. */
  readonly of: 'goal' | 'routine' | 'metric' | 'subject';
  readonly id: string;
  /** Of a metric: the goal that it measures. */
  readonly goal?: string;
  readonly range: SourceRange;
  /** Whether the entry is the goal, the routine or the metric itself. */
  readonly declares: boolean;
}

function name(of: EntryName['of'], id: Located<string> | undefined, declares = false): readonly EntryName[] {
  return id ? [{ of, id: id.value, range: id.range, declares }] : [];
}

/** A metric's name says nothing without its goal's. */
function metric(
  goal: string | undefined,
  id: Located<string> | undefined,
  declares = false,
): readonly EntryName[] {
  return id && goal !== undefined ? [{ of: 'metric', id: id.value, goal, range: id.range, declares }] : [];
}

/** The names of goals, routines and metrics that stand in an entry, in the order of their fields' meaning. */
export function namesInEntry(entry: Entry): readonly EntryName[] {
  switch (entry.tag) {
    case 'goal':
      return name('goal', entry.id, true);
    case 'routine':
      return name('routine', entry.id, true);
    case 'session':
      return [...entry.for.flatMap((goal) => name('goal', goal)), ...name('routine', entry.routine)];
    case 'need':
      return name('routine', entry.routine);
    case 'measure':
      return [...name('goal', entry.goal), ...metric(entry.goal?.value, entry.metric)];
    case 'metric':
      return metric(entry.goal, entry.name, true);
    case 'step':
      return metric(entry.goal, entry.metric);
    case 'event':
      return entry.for.flatMap((goal) => name('goal', goal));
    case 'rule':
      return name('subject', entry.subject);
    default:
      return [];
  }
}
