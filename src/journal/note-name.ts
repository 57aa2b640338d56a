import { parseIsoDate } from '../notation/time/iso-date';
import { parseIsoWeek } from '../notation/time/iso-week';
import type { NoteName } from './note';
import { baseName } from './note-path';

/** A date or a week at the start of a name, with no further digit behind it. */
const dated = /^(\d{4}-(?:\d{2}-\d{2}|W\d{2}))(?!\d)/;

/**
 * Reads what a note's file name says of it. `2026-02-24.md` and `2026-02-24 evening.md` are day notes,
 * `2026-W09.md` is a week note, with or without words behind it. A path may be given; its folders do not count.
 */
export function readNoteName(fileName: string): NoteName {
  const written = dated.exec(baseName(fileName).replace(/\.md$/i, ''))?.[1];
  if (written === undefined) return { kind: 'other' };
  const date = parseIsoDate(written);
  if (date !== undefined) return { kind: 'day', date };
  const week = parseIsoWeek(written);
  if (week !== undefined) return { kind: 'week', week };
  return { kind: 'other', badDate: written };
}
