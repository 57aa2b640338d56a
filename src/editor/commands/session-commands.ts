import * as vscode from 'vscode';
import type { Session } from '../../journal/journal';
import { skipReasons } from '../../notation/skip-reasons';
import { addDays, dayNumber, type IsoDate } from '../../notation/time/iso-date';
import { isoWeekOf, isoWeekOfDay } from '../../notation/time/iso-week';
import { changeChecker, speaksAgainst } from '../../planning/findings-added';
import { moveSession, rateSession, skipSession, tickSession } from '../../planning/session-changes';
import { sessionState } from '../../training/session-state';
import { applyChanges } from '../apply-changes';
import { editorWords } from '../editor-words';
import type { FeatureContext } from '../feature-context';
import { say } from '../sentences';
import { registerCommand } from './run-command';
import { type SessionInHand, sessionInHand } from './session-in-hand';

/** How far ahead a session can be moved from the list; further ones are moved by writing `moved:`. */
const daysOffered = 14;

/** The reasons of the notation, each with its word in the person's language. */
function reasonChoices() {
  return skipReasons.map((reason) => ({ label: vscode.l10n.t(reason), reason }));
}

async function tick({ journal, session }: SessionInHand): Promise<void> {
  const done = sessionState(session, journal.today()) !== 'done';
  await applyChanges(journal, tickSession(journal.journal, session, done));
}

async function skip({ journal, session }: SessionInHand): Promise<void> {
  const picked = await vscode.window.showQuickPick(reasonChoices(), {
    title: vscode.l10n.t('Why is it left out?'),
    placeHolder: vscode.l10n.t('{0}, {1}', session.kind, editorWords().dates.short(session.date)),
  });
  if (picked) await applyChanges(journal, skipSession(journal.journal, session, picked.reason));
}

async function rate({ journal, session }: SessionInHand): Promise<void> {
  const picked = await vscode.window.showQuickPick(
    Array.from({ length: 10 }, (_, index) => ({ label: `${index + 1}/10`, rating: index + 1 })),
    { title: vscode.l10n.t('How hard was it?') },
  );
  if (picked) await applyChanges(journal, rateSession(journal.journal, session, picked.rating));
}

/** The days a session can go to, the legal ones first in words, each with what stands there. */
function dayChoices({ journal, session }: SessionInHand) {
  const today = journal.today();
  const check = changeChecker(journal.journal, { today, zone: journal.zone() });
  const first = session.date < today ? today : session.date;
  return Array.from({ length: daysOffered }, (_, offset) => addDays(first, offset))
    .filter((date) => date !== session.date)
    .map((date) => {
      const day = dayNumber(date);
      const moved: Session = { ...session, date, day };
      const against = check({ without: [session], added: [moved] }).filter(speaksAgainst);
      const standing = journal.journal.sessions(day, day).map((one) => one.kind);
      return {
        date,
        label: editorWords().dates.short(date),
        description: standing.length === 0 ? vscode.l10n.t('nothing yet') : standing.join(', '),
        detail: against[0]
          ? `$(warning) ${say(against[0].message)}`
          : vscode.l10n.t('$(check) breaks no rule'),
      };
    });
}

async function move(inHand: SessionInHand): Promise<void> {
  const picked = await vscode.window.showQuickPick(dayChoices(inHand), {
    title: vscode.l10n.t(
      'Move {0} of {1} to',
      inHand.session.kind,
      editorWords().dates.short(inHand.session.date),
    ),
    matchOnDescription: true,
  });
  if (!picked) return;
  const { journal, session } = inHand;
  await applyChanges(journal, moveSession(journal.journal, session, { date: picked.date }));
  showIfElsewhere(session.date, picked.date);
}

/** A session that went to another week is out of sight in the week view; a word in the status bar says where. */
function showIfElsewhere(from: IsoDate, to: IsoDate): void {
  if (isoWeekOf(from) !== isoWeekOfDay(dayNumber(to)))
    vscode.window.setStatusBarMessage(vscode.l10n.t('Moved to {0}.', editorWords().dates.short(to)), 5000);
}

/** Commands on one session: the one of a view's row, or the one under the cursor. */
export function registerSessionCommands(context: FeatureContext): vscode.Disposable {
  const on = (name: string, run: (inHand: SessionInHand) => Promise<void>) =>
    registerCommand(context, name, async (handed) => {
      const inHand = await sessionInHand(context.journals, handed);
      if (inHand) await run(inHand);
    });
  return vscode.Disposable.from(
    on('tickSession', tick),
    on('moveSession', move),
    on('skipSession', skip),
    on('rateSession', rate),
  );
}
