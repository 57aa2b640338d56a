import type { Entry } from './entries';
import type { Located, SourceRange } from './source-range';

/** A goal's or a routine's name in an entry. */
export interface EntryName {
  /** A rule's subject is a goal's name only when there is such a goal. */
  readonly of: 'goal' | 'routine' | 'subject';
  readonly id: string;
  readonly range: SourceRange;
  /** Whether the entry is the goal or the routine itself. */
  readonly declares: boolean;
}

function name(of: EntryName['of'], id: Located<string> | undefined, declares = false): readonly EntryName[] {
  return id ? [{ of, id: id.value, range: id.range, declares }] : [];
}

/** The names of goals and routines that stand in an entry, in the order of their fields' meaning. */
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
      return name('goal', entry.goal);
    case 'event':
      return entry.for.flatMap((goal) => name('goal', goal));
    case 'rule':
      return name('subject', entry.subject);
    default:
      return [];
  }
}
