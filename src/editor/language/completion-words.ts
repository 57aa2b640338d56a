import * as vscode from 'vscode';
import { formatQuantity } from '../../notation/quantity';
import type { IsoDate } from '../../notation/time/iso-date';
import type { Proposal, ProposalSubject } from '../../planning/proposals/proposal';
import { lengthInWords } from '../../training/wording';
import { editorWords } from '../editor-words';
import { fieldDescription, tagDescription } from './tag-descriptions';
import { daysFromNow } from './words';

/** The sign that the editor's list shows before a proposal. */
export function completionKind({ subject }: Proposal): vscode.CompletionItemKind {
  const kinds = vscode.CompletionItemKind;
  switch (subject.is) {
    case 'tag':
      return kinds.Keyword;
    case 'session-for-need':
      return kinds.Snippet;
    case 'kind':
      return kinds.EnumMember;
    case 'goal':
    case 'routine':
      return kinds.Reference;
    case 'metric':
    case 'field':
      return kinds.Property;
    case 'date':
      return kinds.Event;
    case 'partner':
      return kinds.User;
    case 'place':
      return kinds.Folder;
    case 'reading':
      return kinds.Unit;
    default:
      return kinds.Value;
  }
}

function kindDescription(subject: Extract<ProposalSubject, { is: 'kind' }>): string {
  if (subject.like !== undefined) return vscode.l10n.t('like {0}', subject.like);
  if (subject.origin === 'built-in') return vscode.l10n.t('kind of session');
  return subject.origin === 'own' ? vscode.l10n.t('your own kind') : vscode.l10n.t('seen in your notes');
}

function metricDescription({ metric }: Extract<ProposalSubject, { is: 'metric' }>): string {
  const { from, to } = metric;
  if (from && to) return vscode.l10n.t('from {0} to {1}', formatQuantity(from), formatQuantity(to));
  return to ? vscode.l10n.t('to {0}', formatQuantity(to)) : '';
}

function dateDescription(subject: Extract<ProposalSubject, { is: 'date' }>, today: IsoDate): string {
  const weekday = editorWords().dates.weekdayAndDay(subject.date, today);
  const events = subject.events.map((event) => event.name);
  const what = [...events, ...subject.sessions].join(', ');
  const distance = daysFromNow(subject.days);
  return what === ''
    ? vscode.l10n.t('{0}, {1}', weekday, distance)
    : vscode.l10n.t('{0}, {1}: {2}', weekday, distance, what);
}

function readingDescription({ latest }: Extract<ProposalSubject, { is: 'reading' }>, today: IsoDate): string {
  if (!latest) return vscode.l10n.t('first reading');
  const date = editorWords().dates.day(latest.date, today);
  return latest.side === undefined
    ? vscode.l10n.t('latest reading, {0}', date)
    : latest.side === 'left'
      ? vscode.l10n.t('latest reading, {0}, left', date)
      : vscode.l10n.t('latest reading, {0}, right', date);
}

/** What stands beside a proposal, small. */
export function completionDescription({ subject }: Proposal, today: IsoDate): string {
  switch (subject.is) {
    case 'tag':
      return tagDescription(subject.tag);
    case 'session-for-need': {
      const { perWeek, length } = subject.need;
      const asked =
        perWeek.count === undefined
          ? vscode.l10n.t('{0} min a week', perWeek.minutes)
          : vscode.l10n.t('{0} a week', perWeek.count);
      return length ? vscode.l10n.t('{0}, {1}', asked, lengthInWords(length)) : asked;
    }
    case 'kind':
      return kindDescription(subject);
    case 'goal':
      return subject.goal.title === subject.goal.id ? '' : subject.goal.title;
    case 'metric':
      return metricDescription(subject);
    case 'reading':
      return readingDescription(subject, today);
    case 'routine': {
      const { kind, length } = subject.routine;
      return [kind, length && lengthInWords(length)].filter((one) => one !== undefined).join(', ');
    }
    case 'date':
      return dateDescription(subject, today);
    case 'field':
      return fieldDescription(subject.name);
    case 'region':
      return subject.openPain ? vscode.l10n.t('pain that is not cleared yet') : '';
    default:
      return '';
  }
}
