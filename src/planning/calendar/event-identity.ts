import { isOwnUid, ownUid } from '../../journal/calendar/own-events';
import type { Journal } from '../../journal/journal';
import type { IsoDate } from '../../notation/time/iso-date';
import type { IsoWeek } from '../../notation/time/iso-week';
import type { SessionOrigin } from './session-chains';

/**
 * A short name for a journal in the identifiers of its events: the same wherever and however often it is exported, and
 * unlike that of other athletes. It is a hash (FNV-1a, 64 bits), so that the athlete's name does not stand in them.
 * @param folderName name of the journal's folder, which stands in for an athlete without a name
 */
export function journalCalendarId(journal: Journal, folderName: string): string {
  const name = journal.plan.athlete?.name ?? folderName;
  let hash = 0xcbf29ce484222325n;
  for (const byte of new TextEncoder().encode(name.normalize('NFC'))) {
    hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * 0x100000001b3n);
  }
  return hash.toString(16).padStart(16, '0');
}

/** A word of any script in the letters that every calendar takes; no two words become the same. */
function plainWord(word: string): string {
  return [...word.normalize('NFC')]
    .map((letter) => (/[A-Za-z0-9-]/.test(letter) ? letter : `_${letter.codePointAt(0)?.toString(16)}_`))
    .join('');
}

/** The identifier of a session: by where it was first written, never by words of the athlete's own. */
export function sessionUid({ date, kind, ordinal }: SessionOrigin, journalId: string): string {
  return ownUid(`session-${date}-${plainWord(kind)}-${ordinal}-${journalId}`);
}

/** The identifier of the `ordinal`-th event of a day, from 1. */
export function eventUid(date: IsoDate, ordinal: number, journalId: string): string {
  return ownUid(`event-${date}-${ordinal}-${journalId}`);
}

/** The identifier of the look back on a week, on whichever of its days it stands. */
export function reviewUid(week: IsoWeek, journalId: string): string {
  return ownUid(`review-${week}-${journalId}`);
}

/** Whether an event was exported from the journal with this id. */
export function isUidOf(uid: string, journalId: string): boolean {
  return isOwnUid(uid) && (uid.split('@')[0] ?? '').endsWith(`-${journalId}`);
}
