import type { Entry, EntryOf, NeedEntry, WithinGoal } from '../notation/entries';
import { present } from '../notation/present';
import type { Located } from '../notation/source-range';
import { isKnownZone } from '../notation/time/zoned-time';
import type { CalendarFile } from './calendar-file';
import type {
  BusyTime,
  FreeHours,
  Goal,
  JournalEvent,
  JournalPlan,
  Metric,
  Need,
  Routine,
  Step,
  WrittenBlock,
  WrittenRule,
} from './journal';
import type { Note, NotePath } from './note';
import { folderOf, isJournalNote } from './note-path';
import { planningEntries } from './planning-entries';

/** A goal's own lines, while they are gathered. */
interface GoalParts {
  readonly entry: EntryOf<'goal'>;
  readonly whys: EntryOf<'why'>[];
  readonly metrics: Metric[];
  readonly steps: Step[];
  readonly needs: Need[];
}

function valuesOf<Value>(fields: readonly Located<Value>[]): readonly Value[] {
  return fields.map((field) => field.value);
}

function isWithinGoal(entry: Entry): entry is Extract<Entry, WithinGoal> {
  return entry.tag === 'why' || entry.tag === 'metric' || entry.tag === 'step' || entry.tag === 'need';
}

function needOf(note: NotePath, entry: NeedEntry, goal: string | undefined): Need | undefined {
  if (!entry.kind || !entry.perWeek) return undefined;
  return {
    goal,
    kind: entry.kind.value,
    perWeek: entry.perWeek.value,
    ...present({
      length: entry.length?.value,
      rating: entry.rating?.value,
      gap: entry.gap?.value,
      max: entry.max?.value,
      where: entry.where?.value,
    }),
    with: valuesOf(entry.with),
    ...present({ routine: entry.routine?.value }),
    note,
    entry,
  };
}

function addToGoal(note: NotePath, parts: GoalParts, entry: Extract<Entry, WithinGoal>): void {
  const goal = parts.entry.id?.value;
  switch (entry.tag) {
    case 'why':
      parts.whys.push(entry);
      return;
    case 'metric':
      if (!entry.name) return;
      parts.metrics.push({
        goal,
        name: entry.name.value,
        ...present({ from: entry.from?.value, to: entry.to?.value, noise: entry.noise?.value }),
        sides: entry.sides !== undefined,
        note,
        entry,
      });
      return;
    case 'step':
      if (!entry.id) return;
      parts.steps.push({
        goal,
        id: entry.id.value,
        ...present({ by: entry.by?.value, metric: entry.metric?.value, to: entry.to?.value }),
        ticked: entry.task?.checked === true,
        note,
        entry,
      });
      return;
    case 'need': {
      const need = needOf(note, entry, goal);
      if (need) parts.needs.push(need);
    }
  }
}

/** Gathers a plan note by note. */
class PlanBuilder {
  readonly #root: NotePath;
  readonly #goals = new Map<string, Goal>();
  readonly #duplicateGoals: Goal[] = [];
  readonly #namelessGoals: { readonly note: NotePath; readonly entry: EntryOf<'goal'> }[] = [];
  readonly #everyWeek: Need[] = [];
  readonly #routines = new Map<string, Routine>();
  readonly #rules: WrittenRule[] = [];
  readonly #kinds = new Map<string, string | undefined>();
  readonly #free: FreeHours[] = [];
  readonly #busy: BusyTime[] = [];
  readonly #events: JournalEvent[] = [];
  readonly #blocks: WrittenBlock[] = [];
  /** Lines outside goals, and the note that had each first. */
  readonly #lines = new Map<string, NotePath>();
  #athlete: JournalPlan['athlete'];
  #zone: string | undefined;

  constructor(root: NotePath) {
    this.#root = root;
  }

  add(note: Note): void {
    const goals: GoalParts[] = [];
    for (const entry of planningEntries(note)) {
      if (entry.tag === 'goal') {
        goals.push({ entry, whys: [], metrics: [], steps: [], needs: [] });
      } else if (isWithinGoal(entry)) {
        this.#addWithinGoal(note, goals.at(-1), entry);
      } else if (entry.tag === 'block') {
        // All of them have the same line; what tells them apart stands below it.
        this.#addOther(note.path, entry);
      } else if (!this.#isCopy(note, entry)) {
        this.#addOther(note.path, entry);
      }
    }
    for (const parts of goals) this.#addGoal(note.path, parts);
  }

  /** The journal's own note speaks for it; any other note only where that one is silent. */
  addJournalFacts(notes: readonly Note[]): void {
    const own = notes.filter((note) => isJournalNote(note.path) && folderOf(note.path) === this.#root);
    const entries = [...own, ...notes].flatMap((note) => note.reading.entries);
    const athlete = entries.find((entry) => entry.tag === 'athlete');
    if (athlete) {
      const athletes = (from: readonly Note[]) =>
        from.flatMap(({ reading }) => reading.entries.filter((entry) => entry.tag === 'athlete'));
      // A guardian's consent must not hang on the note in which the word stands, and only the own note can give it.
      const minor = entries.some((entry) => entry.tag === 'athlete' && entry.minor !== undefined);
      const consents = athletes(own).flatMap(({ consent }) => consent?.value ?? []);
      this.#athlete = {
        ...present({
          name: athlete.name?.value,
          consent: consents.sort()[0],
          born: athletes([...own, ...notes]).find(({ born }) => born !== undefined)?.born?.value,
        }),
        minor,
      };
    }
    this.#zone = entries
      .flatMap((entry) => (entry.tag === 'zone' && entry.zone ? [entry.zone.value] : []))
      .find(isKnownZone);
  }

  plan(calendars: readonly CalendarFile[]): JournalPlan {
    return {
      goals: this.#goals,
      duplicateGoals: this.#duplicateGoals,
      namelessGoals: this.#namelessGoals,
      needs: [...[...this.#goals.values()].flatMap((goal) => goal.needs), ...this.#everyWeek],
      routines: this.#routines,
      rules: this.#rules,
      kinds: this.#kinds,
      free: this.#free,
      busy: this.#busy,
      calendars,
      events: this.#events,
      blocks: this.#blocks,
      ...present({ athlete: this.#athlete, zone: this.#zone }),
    };
  }

  /** Whether an earlier note has the very same line, as the copy has that a sync program made of it. */
  #isCopy(note: Note, entry: Entry): boolean {
    const line = note.text.slice(entry.range.start, entry.range.end);
    const first = this.#lines.get(line);
    if (first === undefined) this.#lines.set(line, note.path);
    return first !== undefined && first !== note.path;
  }

  #addWithinGoal(note: Note, last: GoalParts | undefined, entry: Extract<Entry, WithinGoal>): void {
    if (last && entry.range.start < last.entry.scope.end) {
      addToGoal(note.path, last, entry);
    } else if (entry.tag === 'need' && !this.#isCopy(note, entry)) {
      const need = needOf(note.path, entry, undefined);
      if (need) this.#everyWeek.push(need);
    }
  }

  #addGoal(note: NotePath, parts: GoalParts): void {
    const { entry, whys, metrics, steps, needs } = parts;
    if (!entry.id) {
      this.#namelessGoals.push({ note, entry });
      return;
    }
    const id = entry.id.value;
    const goal: Goal = {
      id,
      title: entry.title?.value ?? id,
      ...present({ from: entry.from?.value, by: entry.by?.value }),
      closed: entry.task?.checked === true,
      whys,
      metrics,
      steps,
      needs,
      note,
      entry,
    };
    if (this.#goals.has(id)) this.#duplicateGoals.push(goal);
    else this.#goals.set(id, goal);
  }

  #addOther(note: NotePath, entry: Entry): void {
    switch (entry.tag) {
      case 'routine':
        if (!entry.id || this.#routines.has(entry.id.value)) return;
        this.#routines.set(entry.id.value, {
          id: entry.id.value,
          ...present({ kind: entry.kind?.value, length: entry.length?.value }),
          regions: valuesOf(entry.regions),
          note,
          entry,
        });
        return;
      case 'rule':
        if (!entry.subject) return;
        this.#rules.push({
          subject: entry.subject.value,
          ...present({
            gap: entry.gap?.value,
            min: entry.min?.value,
            max: entry.max?.value,
            cap: entry.cap?.value,
          }),
          note,
          entry,
        });
        return;
      case 'kind':
        if (!entry.name || this.#kinds.has(entry.name.value)) return;
        this.#kinds.set(entry.name.value, entry.like?.value);
        return;
      case 'free':
        if (entry.weekdays.length === 0 || !entry.span) return;
        this.#free.push({
          weekdays: valuesOf(entry.weekdays),
          span: entry.span.value,
          ...present({ where: entry.where?.value }),
          with: valuesOf(entry.with),
          note,
          entry,
        });
        return;
      case 'busy':
        if (!entry.days) return;
        this.#busy.push({ days: entry.days.value, ...present({ span: entry.span?.value }), note, entry });
        return;
      case 'block':
        if (!entry.table) return;
        this.#blocks.push({ rows: entry.table.rows, kinds: entry.table.kinds, note, entry });
        return;
      case 'event':
        if (!entry.date) return;
        this.#events.push({
          date: entry.date.value,
          name: entry.name?.value ?? entry.remark?.value ?? '',
          goals: valuesOf(entry.for),
          note,
          entry,
        });
    }
  }
}

/**
 * The plan that the notes of the journal at `root` write together. `notes` stand in order of path; of several
 * goals, routines or kinds with one name the first counts. A line that lacks what makes it count (a need without
 * its number, a goal without its name) is left out here and told of by the notation's own checks. A line outside
 * goals that another note repeats to the letter counts once.
 * @param calendars the journal's calendar files, in order of path
 */
export function resolvePlan(
  notes: readonly Note[],
  root: NotePath,
  calendars: readonly CalendarFile[] = [],
): JournalPlan {
  const builder = new PlanBuilder(root);
  for (const note of notes) builder.add(note);
  builder.addJournalFacts(notes);
  return builder.plan(calendars);
}
