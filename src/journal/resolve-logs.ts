import type { Entry } from '../notation/entries';
import { present } from '../notation/present';
import { dayNumber } from '../notation/time/iso-date';
import { copiesOf } from './copies';
import type { BodyReport, JournalPlan, Measurement, Win } from './journal';
import type { DayNote } from './resolve-sessions';

/** An entry and the note of the day that holds it. */
interface Found<Tag extends Entry['tag']> {
  readonly note: DayNote;
  readonly entry: Extract<Entry, { tag: Tag }>;
}

function hasTag<Tag extends Entry['tag']>(
  entry: Entry,
  tags: readonly Tag[],
): entry is Extract<Entry, { tag: Tag }> {
  return (tags as readonly string[]).includes(entry.tag);
}

/**
 * The entries with one of `tags` in a day's notes, which stand in order of path: a line that a copy of a note
 * repeats is found once, in the first of them.
 */
function distinctEntries<Tag extends Entry['tag']>(
  notes: readonly DayNote[],
  ...tags: readonly Tag[]
): readonly Found<Tag>[] {
  const perNote = notes.map((note) =>
    note.reading.entries.flatMap((entry) =>
      hasTag(entry, tags)
        ? [
            {
              key: note.text.slice(entry.range.start, entry.range.end).replace(/\s+/gu, ' '),
              value: { note, entry },
            },
          ]
        : [],
    ),
  );
  return copiesOf(perNote).flatMap((group) => group.slice(0, 1));
}

/** The metric that a reading without a metric's name belongs to: the only one of its goal. */
function onlyMetric(plan: JournalPlan, goal: string): string | undefined {
  const metrics = plan.goals.get(goal)?.metrics ?? [];
  return metrics.length === 1 ? metrics[0]?.name : undefined;
}

/** The readings in one day's notes, in order of note and place; one without goal or quantity is none. */
export function measurementsOf(notes: readonly DayNote[], plan: JournalPlan): readonly Measurement[] {
  return distinctEntries(notes, 'measure').flatMap(({ note, entry }) => {
    if (!entry.goal || !entry.quantity) return [];
    const goal = entry.goal.value;
    return [
      {
        note: note.path,
        entry,
        date: note.name.date,
        day: dayNumber(note.name.date),
        goal,
        metric: entry.metric?.value ?? onlyMetric(plan, goal),
        quantity: entry.quantity.value,
        ...present({ side: entry.side?.value, condition: entry.condition?.value }),
      },
    ];
  });
}

/** Soreness and pain in one day's notes, in order of note and place. */
export function bodyReportsOf(notes: readonly DayNote[]): readonly BodyReport[] {
  return distinctEntries(notes, 'sore', 'pain').flatMap(({ note, entry }) => {
    if (!entry.region) return [];
    return [
      {
        kind: entry.tag,
        note: note.path,
        entry,
        date: note.name.date,
        day: dayNumber(note.name.date),
        region: entry.region.value,
        ...present({ rating: entry.rating?.value }),
        clear: entry.tag === 'pain' && entry.clear !== undefined,
      },
    ];
  });
}

/** What went well, in one day's notes, in order of note and place. */
export function winsOf(notes: readonly DayNote[]): readonly Win[] {
  return distinctEntries(notes, 'win').map(({ note, entry }) => ({
    note: note.path,
    entry,
    date: note.name.date,
    day: dayNumber(note.name.date),
  }));
}
