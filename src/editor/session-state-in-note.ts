import * as vscode from 'vscode';
import type { Note } from '../journal/note';
import type { SessionEntry } from '../notation/entries';
import { dayNumber, type IsoDate } from '../notation/time/iso-date';
import { type SessionState, sessionState } from '../training/session-state';

/** The state of a session in a word. */
function stateWord(state: SessionState): string {
  switch (state) {
    case 'done':
      return vscode.l10n.t('done');
    case 'overdue':
      return vscode.l10n.t('overdue');
    case 'skipped':
      return vscode.l10n.t('skipped');
    case 'moved':
      return vscode.l10n.t('moved');
    case 'planned':
      return vscode.l10n.t('planned');
  }
}

/** The state of a session as its note says it, and a word for it; `undefined` outside of day notes. */
export function sessionStateIn(
  note: Note | undefined,
  entry: SessionEntry,
  today: IsoDate,
): { readonly is: SessionState; readonly word: string } | undefined {
  if (note?.name.kind !== 'day' || !entry.kind) return undefined;
  const { date } = note.name;
  const session = { note: note.path, entry, date, day: dayNumber(date), kind: entry.kind.value };
  const is = sessionState(session, today);
  return { is, word: stateWord(is) };
}
