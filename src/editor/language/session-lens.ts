import * as vscode from 'vscode';
import type { Note } from '../../journal/note';
import { dayNumber, type IsoDate } from '../../notation/time/iso-date';
import { isoWeekOf } from '../../notation/time/iso-week';
import type { SessionFacts } from '../../training/session-facts';
import { sessionPlace } from '../../training/session-place';
import { daysLookedBack, type SinceLast, sinceLastOfKind } from '../../training/since-last-of-kind';
import { type WeekReader, weekReader } from '../../training/training-week';
import { minutesInWords } from '../../training/wording';
import { rangeInNote } from '../document-ranges';
import { editorWords } from '../editor-words';
import type { FeatureContext } from '../feature-context';
import type { OpenJournal } from '../open-journal';
import { noteSelector } from './note-selector';

/** `19 h after flexibility on Tuesday`. */
function sinceWords({ last, gap }: SinceLast, from: IsoDate): string {
  const { kind, date } = last.session;
  const day = editorWords().dates.near(date, from);
  if (gap.countedIn === 'minutes')
    return vscode.l10n.t('{0} after {1} on {2}', minutesInWords(gap.amount), kind, day);
  if (gap.amount === 0) return vscode.l10n.t('on the same day as {0}', kind);
  return gap.amount === 1
    ? vscode.l10n.t('a day after {0} on {1}', kind, day)
    : vscode.l10n.t('{0} days after {1} on {2}', gap.amount, kind, day);
}

/** A line above a session, whose words are worked out when it comes into view. */
class SinceLens extends vscode.CodeLens {
  constructor(
    range: vscode.Range,
    readonly journal: OpenJournal,
    readonly facts: SessionFacts,
    readonly weeks: WeekReader,
  ) {
    super(range);
  }
}

/** What the line says, and the session that it leads to. */
function sinceCommand({ journal, facts, weeks }: SinceLens): vscode.Command {
  const since = sinceLastOfKind(facts, weeks, journal.zone());
  const last = since?.last.session;
  const note = last && journal.journal.note(last.note);
  // Without a command the line is words alone.
  if (!since || !note)
    return {
      title: vscode.l10n.t('no {0} in the {1} days before', facts.session.kind, daysLookedBack),
      command: '',
    };
  const selection = rangeInNote(note, sessionPlace(last).range);
  return {
    title: sinceWords(since, facts.session.date),
    tooltip: vscode.l10n.t('Open that session'),
    command: 'vscode.open',
    arguments: [journal.uriOf(last.note), { selection } satisfies vscode.TextDocumentShowOptions],
  };
}

/** Whether it can be ticked by now: what lies ahead is not done. */
function isOpenByNow({ state, session }: SessionFacts, today: number): boolean {
  return state === 'overdue' || (state === 'planned' && session.day <= today);
}

/** Above each session of a day note that stands: the time since the last of its kind, and a tick where one is due. */
function sessionLenses(journal: OpenJournal, note: Note): vscode.CodeLens[] {
  if (note.name.kind !== 'day') return [];
  const today = journal.today();
  const weeks = weekReader(journal.journal, today);
  const week = weeks(isoWeekOf(note.name.date));
  return week.sessions
    .filter(({ session, stands }) => stands && session.note === note.path)
    .flatMap((facts) => {
      const range = rangeInNote(note, facts.session.entry.nameRange);
      const since = new SinceLens(range, journal, facts, weeks);
      if (!isOpenByNow(facts, dayNumber(today))) return [since];
      // Behind the other one: lenses of a line are shown in the order of their places.
      const tick = new vscode.CodeLens(new vscode.Range(range.end, range.end), {
        title: vscode.l10n.t('tick as done'),
        command: 'trainingJournal.tickSession',
        arguments: [{ journal: journal.id, session: facts.session }],
      });
      return [since, tick];
    });
}

/** Lenses above sessions, where the setting asks for them. */
export function registerSessionLenses({ journals, onDidChangeDay }: FeatureContext): vscode.Disposable {
  const changed = new vscode.EventEmitter<void>();
  const provider: vscode.CodeLensProvider = {
    onDidChangeCodeLenses: changed.event,
    async provideCodeLenses(document, token) {
      await journals.ready;
      const found = token.isCancellationRequested ? undefined : journals.noteOf(document);
      if (!found?.journal.settings.sessionLenses) return [];
      return sessionLenses(found.journal, found.note);
    },
    resolveCodeLens(lens) {
      if (lens instanceof SinceLens) lens.command = sinceCommand(lens);
      return lens;
    },
  };
  return vscode.Disposable.from(
    changed,
    journals.onDidChange(() => changed.fire()),
    onDidChangeDay(() => changed.fire()),
    vscode.languages.registerCodeLensProvider(noteSelector, provider),
  );
}
