import type { Journal, Need } from '../../journal/journal';
import { readNote } from '../../notation/read-note';
import type { IsoWeek } from '../../notation/time/iso-week';
import { formatSessionLength } from '../../notation/time/length-of-time';
import { formatField } from '../../notation/write-entry';
import { isKind } from '../../training/kinds';
import type { SessionFacts } from '../../training/session-facts';
import { type CheckOptions, checkContext } from '../../training/week-under-check';

/** A path that no note has: needs that nobody wrote down stand in it. */
const nowhere = 'copied';

/** A kind that the receiving journal knows: the session's own, or the nearest one that it is like. */
function kindFor(facts: SessionFacts, into: Journal): string {
  const known = facts.kinds.find((kind) => isKind(kind, into.plan.kinds));
  return known ?? facts.session.kind;
}

/** The words of a need for one session, but for how often it is asked for. */
function needWords(facts: SessionFacts, into: Journal): readonly [kind: string, fields: string] {
  const { minutes, effort, effortFrom, routine, session } = facts;
  // Partners and places of another athlete mean something only where they are known too.
  const where = session.entry.where?.value;
  const names = into.names('with');
  const partners = session.entry.with.map(({ value }) => value).filter((name) => names.includes(name));
  const fields = [
    ...(minutes === undefined ? [] : [formatSessionLength(minutes)]),
    ...(effortFrom === 'default' ? [] : [`${effort}/10`]),
    ...(where !== undefined && into.names('where').includes(where)
      ? [formatField({ name: 'where', text: where })]
      : []),
    ...(partners.length > 0 ? [formatField({ name: 'with', text: partners.join(',') })] : []),
    ...(routine ? [formatField({ name: 'routine', text: routine.id })] : []),
  ];
  return [kindFor(facts, into), fields.join(' ')];
}

function needOf(text: string): Need | undefined {
  const [entry] = readNote(text).entries;
  if (entry?.tag !== 'need' || !entry.kind || !entry.perWeek) return undefined;
  const { length, rating, where, routine } = entry;
  return {
    goal: undefined,
    kind: entry.kind.value,
    perWeek: entry.perWeek.value,
    ...(length ? { length: length.value } : {}),
    ...(rating ? { rating: rating.value } : {}),
    ...(where ? { where: where.value } : {}),
    with: entry.with.map(({ value }) => value),
    ...(routine ? { routine: routine.value } : {}),
    note: nowhere,
    entry,
  };
}

/** What a week of one athlete holds, as another one's week can be asked for it. */
export interface CopiedWeekNeeds {
  readonly sessions: number;
  /** Like sessions are one need. Gaps are left to the receiving journal's own rules. */
  readonly needs: readonly Need[];
  /** The routines of its sessions. */
  readonly routines: ReadonlySet<string>;
}

/** What stands in a week of `from`, asked of `into`. Skipped and moved sessions are left out. */
export function copiedNeeds(
  from: Journal,
  week: IsoWeek,
  into: Journal,
  options: CheckOptions,
): CopiedWeekNeeds {
  const { standing } = checkContext(from, options).weeks(week);
  const counts = new Map<string, { readonly kind: string; readonly fields: string; count: number }>();
  for (const facts of standing) {
    const [kind, fields] = needWords(facts, into);
    const known = counts.get(`${kind} ${fields}`);
    if (known) known.count += 1;
    else counts.set(`${kind} ${fields}`, { kind, fields, count: 1 });
  }
  return {
    sessions: standing.length,
    needs: [...counts.values()].flatMap(
      ({ kind, fields, count }) => needOf(`- #need ${kind} ${count}/week ${fields}`.trimEnd()) ?? [],
    ),
    routines: new Set(standing.flatMap(({ routine }) => (routine ? [routine.id] : []))),
  };
}
