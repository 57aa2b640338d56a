import * as vscode from 'vscode';
import { parseIsoDate } from '../../notation/time/iso-date';
import { addWeeks, isoWeekOf, parseIsoWeek } from '../../notation/time/iso-week';
import { daysOfMonth, type ShareSubject } from '../../planning/share-note';
import type { OpenJournal } from '../open-journal';

interface SubjectChoice extends vscode.QuickPickItem {
  readonly subject?: ShareSubject;
}

/** A subject, as another command or a key binding may hand it over: `{ "week": "2026-W09" }` and the like. */
export function subjectFrom(asked: unknown): ShareSubject | undefined {
  if (typeof asked !== 'object' || asked === null) return undefined;
  const text = (name: string): string => {
    const value: unknown = Reflect.get(asked, name);
    return typeof value === 'string' ? value : '';
  };
  const week = parseIsoWeek(text('week'));
  if (week) return { is: 'week', week };
  if (daysOfMonth(text('month'))) return { is: 'month', month: text('month') };
  if (text('goal') !== '') return { is: 'goal', goal: text('goal') };
  return text('partner') === '' ? undefined : { is: 'partner', partner: text('partner') };
}

function monthBefore(month: string): string {
  const first = parseIsoDate(`${month}-01`);
  if (!first) return month;
  const [year = 0, number = 0] = month.split('-').map(Number);
  return number === 1
    ? `${String(year - 1).padStart(4, '0')}-12`
    : `${month.slice(0, 4)}-${String(number - 1).padStart(2, '0')}`;
}

function separator(label: string): SubjectChoice {
  return { label, kind: vscode.QuickPickItemKind.Separator };
}

function rows(journal: OpenJournal): readonly SubjectChoice[] {
  const today = journal.today();
  const week = isoWeekOf(today);
  const last = addWeeks(week, -1);
  const month = today.slice(0, 7);
  const before = monthBefore(month);
  const { plan } = journal.journal;
  const goals = [...plan.goals.values()].filter(({ closed }) => !closed);
  const partners = journal.journal.names('with');
  return [
    separator(vscode.l10n.t('A span of days')),
    { label: vscode.l10n.t('Last week'), description: last, subject: { is: 'week', week: last } },
    { label: vscode.l10n.t('This week'), description: week, subject: { is: 'week', week } },
    { label: vscode.l10n.t('Last month'), description: before, subject: { is: 'month', month: before } },
    { label: vscode.l10n.t('This month'), description: month, subject: { is: 'month', month } },
    ...(goals.length === 0 ? [] : [separator(vscode.l10n.t('A goal'))]),
    ...goals.map(
      ({ id, title }): SubjectChoice => ({
        label: title,
        ...(title === id ? {} : { description: id }),
        subject: { is: 'goal', goal: id },
      }),
    ),
    ...(partners.length === 0 ? [] : [separator(vscode.l10n.t('Sessions booked with one partner'))]),
    ...partners.map((partner): SubjectChoice => ({ label: partner, subject: { is: 'partner', partner } })),
  ];
}

/** The week, month, goal or partner that the person picks. */
export async function askSubject(journal: OpenJournal): Promise<ShareSubject | undefined> {
  const picked = await vscode.window.showQuickPick([...rows(journal)], {
    title: vscode.l10n.t('What do you share?'),
    placeHolder: vscode.l10n.t('Nothing leaves before you have seen it'),
    matchOnDescription: true,
  });
  return picked?.subject;
}

/** The partner or coach that the person picks; tells when no session names one. */
export async function askPartner(journal: OpenJournal): Promise<ShareSubject | undefined> {
  const partners = journal.journal.names('with');
  if (partners.length === 0) {
    void vscode.window.showInformationMessage(
      vscode.l10n.t('No session names a partner or a coach yet. Write with:NAME on a session.'),
    );
    return undefined;
  }
  const partner = await vscode.window.showQuickPick([...partners], {
    title: vscode.l10n.t('Sessions booked with whom?'),
  });
  return partner === undefined ? undefined : { is: 'partner', partner };
}
