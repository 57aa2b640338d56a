import { type DayNumber, dayNumber, isoDate } from '../notation/time/iso-date';
import type { CalendarFile } from './calendar-file';
import { GoalReadings } from './goal-readings';
import type {
  BodyReport,
  DuplicateSession,
  Journal,
  JournalChange,
  JournalPlan,
  Measurement,
  Session,
  Win,
} from './journal';
import { NameCounts } from './name-counts';
import type { JournalFile, NamedThing, Note, NotePath } from './note';
import { comparePaths, isBelow } from './note-path';
import { planningEntries } from './planning-entries';
import { bodyReportsOf, measurementsOf, winsOf } from './resolve-logs';
import { resolvePlan } from './resolve-plan';
import {
  type DayNote,
  isDayNote,
  isOpenSession,
  resolveStandingSessions,
  resolveWrittenSessions,
  type WrittenSessions,
} from './resolve-sessions';
import { SortedDays } from './sorted-days';

const nothingChanged: JournalChange = { days: new Set(), plan: false };

/** One day: its notes, the days that moved sessions to it, and what was worked out from both so far. */
interface Day {
  readonly notes: DayNote[];
  readonly origins: Set<DayNumber>;
  written?: WrittenSessions | undefined;
  standing?: readonly Session[] | undefined;
  /** With the plan under which they were read: it says which metric a reading without one belongs to. */
  measurements?: { readonly plan: JournalPlan; readonly readings: readonly Measurement[] } | undefined;
  bodyReports?: readonly BodyReport[] | undefined;
  wins?: readonly Win[] | undefined;
}

/**
 * A journal in memory, kept up to date note by note. A changed note costs its own day and the days to which it
 * moves sessions; everything else is worked out when it is asked for and kept until it changes.
 */
export class JournalIndex implements Journal {
  readonly root: NotePath;
  readonly #notes = new Map<NotePath, Note>();
  #sortedNotes: readonly NotePath[] | undefined;
  readonly #days = new Map<DayNumber, Day>();
  /** Days with notes, or to which sessions were moved. */
  readonly #usedDays = new SortedDays();
  readonly #daysWithNotes = new SortedDays();
  /** Pain stays open until it is cleared, so that it is looked for in years of notes, and stands in few of them. */
  readonly #painDays = new SortedDays();
  /** Days on which a session may still be to do: one stands there without a mark, or was moved there. */
  readonly #openDays = new SortedDays();
  readonly #calendars = new Map<NotePath, CalendarFile>();
  readonly #planningNotes = new Set<NotePath>();
  #plan: JournalPlan | undefined;
  readonly #names = new NameCounts();
  /** How many notes of a day have readings of a goal. */
  readonly #measuredDays = new Map<string, Map<DayNumber, number>>();
  readonly #readingsOfGoals = new Map<string, GoalReadings>();

  /** @param root the journal's folder; empty for the source's own folder */
  constructor(root: NotePath = '') {
    this.root = root;
  }

  /** Puts `file` in place of the note or calendar at its path, or adds it. */
  replace(file: Note | CalendarFile): JournalChange {
    const before = this.file(file.path);
    if (before && before.text === file.text) return nothingChanged;
    if (!('calendar' in file)) return this.#exchange(this.#notes.get(file.path), file);
    this.#calendars.set(file.path, file);
    return this.#calendarsChanged();
  }

  /** Takes the note or calendar at `path` out, if there is one. */
  remove(path: NotePath): JournalChange {
    if (this.#calendars.delete(path)) return this.#calendarsChanged();
    return this.#exchange(this.#notes.get(path), undefined);
  }

  /** Takes out every note and calendar below `folder`. */
  removeBelow(folder: NotePath): JournalChange {
    const days = new Set<DayNumber>();
    let plan = false;
    const paths = [...this.#notes.keys(), ...this.#calendars.keys()];
    for (const path of paths.filter((path) => isBelow(path, folder))) {
      const change = this.remove(path);
      for (const day of change.days) days.add(day);
      plan ||= change.plan;
    }
    return { days, plan };
  }

  get plan(): JournalPlan {
    this.#plan ??= resolvePlan(
      [...this.#planningNotes].sort(comparePaths).flatMap((path) => this.#notes.get(path) ?? []),
      this.root,
      [...this.#calendars.values()].sort((a, b) => comparePaths(a.path, b.path)),
    );
    return this.#plan;
  }

  *notes(): Iterable<Note> {
    this.#sortedNotes ??= [...this.#notes.keys()].sort(comparePaths);
    for (const path of this.#sortedNotes) {
      const note = this.#notes.get(path);
      if (note) yield note;
    }
  }

  note(path: NotePath): Note | undefined {
    return this.#notes.get(path);
  }

  file(path: NotePath): JournalFile | undefined {
    return this.#notes.get(path) ?? this.#calendars.get(path);
  }

  notesOf(day: DayNumber): readonly Note[] {
    return this.#days.get(day)?.notes ?? [];
  }

  span(): { readonly first: DayNumber; readonly last: DayNumber } | undefined {
    const { first, last } = this.#daysWithNotes;
    return first === undefined || last === undefined ? undefined : { first, last };
  }

  sessions(first: DayNumber, last: DayNumber): readonly Session[] {
    return this.#usedDays.between(first, last).flatMap((day) => this.#standing(day));
  }

  openSessions(first: DayNumber, last: DayNumber): readonly Session[] {
    return this.#openDays.between(first, last).flatMap((day) => this.#standing(day).filter(isOpenSession));
  }

  duplicateSessions(first: DayNumber, last: DayNumber): readonly DuplicateSession[] {
    return this.#daysWithNotes.between(first, last).flatMap((day) => this.#written(day).duplicates);
  }

  measurements(goal: string, metric?: string): readonly Measurement[] {
    let kept = this.#readingsOfGoals.get(goal);
    if (kept === undefined) {
      kept = new GoalReadings(this.#measuredDays.get(goal)?.keys() ?? []);
      this.#readingsOfGoals.set(goal, kept);
    }
    const readings = kept.all((day) => this.#measurementsOn(day).filter((reading) => reading.goal === goal));
    return metric === undefined ? readings : readings.filter((reading) => reading.metric === metric);
  }

  measurementsBetween(first: DayNumber, last: DayNumber): readonly Measurement[] {
    return this.#daysWithNotes.between(first, last).flatMap((day) => this.#measurementsOn(day));
  }

  bodyReports(first: DayNumber, last: DayNumber, kind?: BodyReport['kind']): readonly BodyReport[] {
    const days = kind === 'pain' ? this.#painDays : this.#daysWithNotes;
    return days.between(first, last).flatMap((number) => {
      const day = this.#days.get(number);
      if (!day) return [];
      day.bodyReports ??= bodyReportsOf(day.notes);
      return kind ? day.bodyReports.filter((report) => report.kind === kind) : day.bodyReports;
    });
  }

  wins(first: DayNumber, last: DayNumber): readonly Win[] {
    return this.#daysWithNotes.between(first, last).flatMap((number) => {
      const day = this.#days.get(number);
      if (!day) return [];
      day.wins ??= winsOf(day.notes);
      return day.wins;
    });
  }

  names(of: NamedThing): readonly string[] {
    return this.#names.names(of);
  }

  #written(number: DayNumber): WrittenSessions {
    const day = this.#days.get(number);
    if (!day) return { kept: [], duplicates: [] };
    day.written ??= resolveWrittenSessions(day.notes);
    return day.written;
  }

  #standing(number: DayNumber): readonly Session[] {
    const day = this.#days.get(number);
    if (!day) return [];
    if (day.standing === undefined) {
      const date = isoDate(number);
      const arriving = [...day.origins]
        .flatMap((origin) => this.#written(origin).kept)
        .filter((session) => session.entry.moved?.value === date);
      day.standing = resolveStandingSessions(date, this.#written(number).kept, arriving);
    }
    return day.standing;
  }

  #measurementsOn(number: DayNumber): readonly Measurement[] {
    const day = this.#days.get(number);
    if (!day) return [];
    if (day.measurements?.plan !== this.plan) {
      day.measurements = { plan: this.plan, readings: measurementsOf(day.notes, this.plan) };
    }
    return day.measurements.readings;
  }

  /** Any week may hold other hours now. */
  #calendarsChanged(): JournalChange {
    this.#plan = undefined;
    return { days: new Set(), plan: true };
  }

  #exchange(before: Note | undefined, after: Note | undefined): JournalChange {
    const path = after?.path ?? before?.path;
    if (path === undefined) return nothingChanged;
    if (after) this.#notes.set(path, after);
    else this.#notes.delete(path);
    if (!before || !after) this.#sortedNotes = undefined;
    if (before) this.#names.remove(before);
    if (after) this.#names.add(after);
    const days = new Set<DayNumber>();
    // The kind of a note follows from its path, so both are of the same day or neither is of any.
    const named = after ?? before;
    if (named && isDayNote(named)) {
      const number = dayNumber(named.name.date);
      days.add(number);
      this.#exchangeInDay(number, path, after && isDayNote(after) ? after : undefined, days);
      if (before) this.#countReadings(before, number, -1);
      if (after) this.#countReadings(after, number, 1);
    }
    return { days, plan: this.#exchangeInPlan(path, before, after) };
  }

  #exchangeInDay(
    number: DayNumber,
    path: NotePath,
    after: DayNote | undefined,
    changed: Set<DayNumber>,
  ): void {
    const day = this.#useDay(number);
    const targetsBefore = new Set(day.notes.flatMap((note) => note.outline.movedTo));
    const index = day.notes.findIndex((note) => note.path === path);
    if (index >= 0) day.notes.splice(index, 1);
    if (after) {
      const place = day.notes.findIndex((note) => comparePaths(note.path, path) > 0);
      day.notes.splice(place < 0 ? day.notes.length : place, 0, after);
    }
    if (day.notes.length > 0) this.#daysWithNotes.add(number);
    else this.#daysWithNotes.delete(number);
    if (day.notes.some((note) => note.outline.tellsOfPain)) this.#painDays.add(number);
    else this.#painDays.delete(number);
    const targetsAfter = new Set(day.notes.flatMap((note) => note.outline.movedTo));
    for (const target of targetsAfter) this.#useDay(target).origins.add(number);
    for (const target of targetsBefore) {
      if (!targetsAfter.has(target)) this.#days.get(target)?.origins.delete(number);
    }
    day.written = undefined;
    day.standing = undefined;
    day.measurements = undefined;
    day.bodyReports = undefined;
    day.wins = undefined;
    for (const target of [...targetsBefore, ...targetsAfter]) {
      changed.add(target);
      const standing = this.#days.get(target);
      if (standing) standing.standing = undefined;
      this.#followOpen(target);
      this.#dropWhenUnused(target);
    }
    this.#followOpen(number);
    this.#dropWhenUnused(number);
  }

  /** @returns whether the plan may read differently now */
  #exchangeInPlan(path: NotePath, before: Note | undefined, after: Note | undefined): boolean {
    const entriesBefore = before?.outline.plans ? planningEntries(before) : [];
    const entriesAfter = after?.outline.plans ? planningEntries(after) : [];
    if (entriesAfter.length > 0) this.#planningNotes.add(path);
    else this.#planningNotes.delete(path);
    // Words below the last planning line leave the plan as it is, its exact places included.
    if (
      entriesBefore.length === entriesAfter.length &&
      JSON.stringify(entriesBefore) === JSON.stringify(entriesAfter)
    ) {
      return false;
    }
    this.#plan = undefined;
    this.#readingsOfGoals.clear();
    return true;
  }

  #countReadings(note: Note, day: DayNumber, by: 1 | -1): void {
    for (const goal of note.outline.measured) {
      this.#readingsOfGoals.get(goal)?.changedOn(day);
      let days = this.#measuredDays.get(goal);
      if (!days) {
        days = new Map();
        this.#measuredDays.set(goal, days);
      }
      const count = (days.get(day) ?? 0) + by;
      if (count === 0) days.delete(day);
      else days.set(day, count);
      if (days.size === 0) this.#measuredDays.delete(goal);
    }
  }

  #followOpen(number: DayNumber): void {
    const day = this.#days.get(number);
    if (day && (day.origins.size > 0 || day.notes.some((note) => note.outline.hasOpenSession)))
      this.#openDays.add(number);
    else this.#openDays.delete(number);
  }

  #useDay(number: DayNumber): Day {
    let day = this.#days.get(number);
    if (!day) {
      day = { notes: [], origins: new Set() };
      this.#days.set(number, day);
      this.#usedDays.add(number);
    }
    return day;
  }

  #dropWhenUnused(number: DayNumber): void {
    const day = this.#days.get(number);
    if (day && day.notes.length === 0 && day.origins.size === 0) {
      this.#days.delete(number);
      this.#usedDays.delete(number);
    }
  }
}
