import type { Journal } from '../journal/journal';
import { JournalCollection } from '../journal/journal-collection';
import type { NoteSource } from '../journal/note-source';
import type { IsoDate } from '../notation/time/iso-date';
import { type InstantMinutes, wallClockAt } from '../notation/time/zoned-time';
import type { FolderOptions } from './folder-options';

/** What the commands get from the machine; nothing else of it is looked at. */
export interface Machine {
  readonly now: InstantMinutes;
  readonly zone: string;
}

/** A journal, and how its time is told. */
export interface JournalToRead {
  readonly journal: Journal;
  readonly zone: string;
  readonly today: IsoDate;
}

/** The journals below a folder, and the day that is today for all of them together. */
export interface JournalsToRead {
  readonly journals: readonly JournalToRead[];
  readonly today: IsoDate;
}

/**
 * Reads every journal of `source`. The zone is the one asked for, else the one the journal names, else the
 * machine's; without a day that was asked for, today is the date that the clock of the zone shows.
 */
export async function readJournals(
  source: NoteSource,
  options: FolderOptions,
  machine: Machine,
): Promise<JournalsToRead> {
  const collection = new JournalCollection(source);
  await collection.load();
  const todayIn = (zone: string) => options.today ?? wallClockAt(machine.now, zone).date;
  const journals = collection.journals().map((journal) => {
    const zone = options.zone ?? journal.plan.zone ?? machine.zone;
    return { journal, zone, today: todayIn(zone) };
  });
  const zones = new Set(journals.map(({ zone }) => zone));
  const [only] = zones;
  const zone = zones.size === 1 && only !== undefined ? only : (options.zone ?? machine.zone);
  return { journals, today: todayIn(zone) };
}

/** Says that a folder holds several journals, and where they lie. */
export function severalJournals(folder: string, journals: readonly JournalToRead[]): string {
  const folders = journals.map(({ journal }) => (journal.root === '' ? '.' : journal.root)).join(', ');
  return `"${folder}" holds several: ${folders}`;
}
