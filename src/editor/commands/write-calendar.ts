import * as vscode from 'vscode';
import { decodeFile } from '../../journal/decode-note';
import { baseName } from '../../journal/note-path';
import type { IsoDate } from '../../notation/time/iso-date';
import { journalCalendarId } from '../../planning/calendar/event-identity';
import { exportCalendar } from '../../planning/calendar/export-calendar';
import { contentsOf, type FileContents } from '../../planning/calendar/previous-export';
import type { OpenJournal } from '../open-journal';
import { say } from '../sentences';

/** What an export is about to be written over. */
export interface FileBefore {
  readonly contents: FileContents;
  /** Empty when there is no file. */
  readonly text: string;
}

function idOf(journal: OpenJournal): string {
  return journalCalendarId(journal.journal, baseName(journal.uri.path));
}

/** What stands in the file at `target`; a file that is not there holds nothing. */
export async function fileBefore(journal: OpenJournal, target: vscode.Uri): Promise<FileBefore> {
  let bytes: Uint8Array;
  try {
    bytes = await vscode.workspace.fs.readFile(target);
  } catch {
    return { contents: 'nothing', text: '' };
  }
  const text = decodeFile('export.ics', bytes) ?? '';
  return { contents: bytes.length === 0 ? 'nothing' : contentsOf(text, idOf(journal)), text };
}

/** How many events an export holds: those that take place, and those that are cancelled. */
export interface Exported {
  readonly standing: number;
  readonly cancelled: number;
}

/**
 * Writes the sessions of a span to `target`, following on the export that stands there. It is a file of its own and no
 * note: undo does not take it back. Nothing is written when there is nothing to export.
 * @throws vscode.FileSystemError when the file cannot be written
 */
export async function writeCalendar(
  journal: OpenJournal,
  span: { readonly first: IsoDate; readonly last: IsoDate },
  target: vscode.Uri,
  before: FileBefore,
): Promise<Exported> {
  const { alarmMinutes, calendarReviewAt: at, review } = journal.settings;
  const text = exportCalendar(journal.journal, {
    first: span.first,
    last: span.last,
    today: journal.today(),
    zone: journal.zone(),
    stamp: Math.floor(Date.now() / 60_000),
    journalId: idOf(journal),
    ...(alarmMinutes === undefined ? {} : { alarmMinutes }),
    ...(at === undefined || review.day === 'off' ? {} : { review: { weekday: review.day, at, say } }),
    ...(before.contents === 'this-journal' ? { previous: before.text } : {}),
  });
  const count = (status: string) => text.split(`\r\nSTATUS:${status}\r\n`).length - 1;
  const exported = { standing: count('CONFIRMED'), cancelled: count('CANCELLED') };
  if (exported.standing + exported.cancelled > 0 && text !== before.text) {
    await vscode.workspace.fs.writeFile(target, new TextEncoder().encode(text));
  }
  return exported;
}
