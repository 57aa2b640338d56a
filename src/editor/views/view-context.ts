import type { Journal } from '../../journal/journal';
import type { NotePlace } from '../../journal/note';
import type { IsoDate } from '../../notation/time/iso-date';
import type { ReviewDay } from '../../planning/week-review/review-due';
import type { Message } from '../../training/finding';
import { type WeekReader, weekReader } from '../../training/training-week';
import { message } from '../../training/wording';
import type { OpenJournal } from '../open-journal';
import type { Words } from '../words';
import type { ViewNode, ViewPlace } from './view-node';

/** What the views need of a journal that is open. */
export type ViewedJournal = Pick<OpenJournal, 'id' | 'title' | 'journal' | 'settings' | 'today' | 'zone'>;

/** A journal on one day, in the words of one language. */
export interface ViewContext {
  readonly id: string;
  readonly title: string;
  readonly journal: Journal;
  readonly today: IsoDate;
  readonly zone: string;
  readonly findingsEnabled: boolean;
  readonly reviewDay: ReviewDay;
  readonly weeks: WeekReader;
  readonly words: Words;
}

/** The journal as it is now. Make a new one when a note or the day has changed. */
export function viewContext(open: ViewedJournal, words: Words): ViewContext {
  const today = open.today();
  return {
    id: open.id,
    title: open.title,
    journal: open.journal,
    today,
    zone: open.zone(),
    findingsEnabled: open.settings.findings.enabled,
    reviewDay: open.settings.review.day,
    weeks: weekReader(open.journal, today),
    words,
  };
}

/** A sentence with its values, in the language of `context`. */
export function say(
  context: ViewContext,
  template: Message['template'],
  ...values: Message['values']
): string {
  return context.words.say(message(template, ...values));
}

/** A place in a note of the journal. */
export function viewPlace(context: ViewContext, place: NotePlace): ViewPlace {
  return { journal: context.id, note: place.note, range: place.range };
}

/** Pieces of a description in one line; those that are not there are left out. */
export function inOneLine(...pieces: readonly (string | undefined)[]): string {
  return pieces.filter((piece) => piece !== undefined && piece !== '').join(', ');
}

/** Lines of a tooltip; those that are not there are left out. */
export function inLines(...lines: readonly (string | undefined)[]): string {
  return lines.filter((line) => line !== undefined && line !== '').join('\n');
}

/**
 * The id of a row that may come to have rows below it. The editor keeps a row closed that once had none, so with its
 * first one it is another row, which opens as it is meant to.
 */
export function idWithRows(id: string, rows: readonly ViewNode[]): string {
  return rows.length === 0 ? `${id}/empty` : id;
}

/** What one journal shows in a view: its rows, and all of it in a few words. */
export interface JournalRows {
  readonly rows: readonly ViewNode[];
  readonly summary: string;
}

/**
 * The rows of a view over several journals: one row a journal when there is more than one, else the rows of the
 * only one.
 * @param collapsed Whether the journals' rows are closed at first.
 */
export function byJournal(
  contexts: readonly ViewContext[],
  rowsOf: (context: ViewContext) => JournalRows,
  collapsed: boolean,
): readonly ViewNode[] {
  const [only, ...others] = contexts;
  if (only && others.length === 0) return rowsOf(only).rows;
  return contexts.map((context) => {
    const { rows, summary } = rowsOf(context);
    return {
      id: idWithRows(context.id, rows),
      kind: 'journal',
      journal: context.id,
      label: context.title,
      description: summary,
      icon: 'person',
      accessibilityLabel: inOneLine(context.title, summary),
      collapsed,
      children: rows,
    };
  });
}
