import * as vscode from 'vscode';
import type { TagName } from '../../notation/entries';

/** What each tag is for, in a line, as the list of completions shows it. */
export function tagDescription(tag: TagName): string {
  switch (tag) {
    case 'goal':
      return vscode.l10n.t('opens a goal');
    case 'why':
      return vscode.l10n.t('your private reason');
    case 'metric':
      return vscode.l10n.t('how the goal is measured');
    case 'step':
      return vscode.l10n.t('a smaller goal on the way');
    case 'need':
      return vscode.l10n.t('sessions that a week asks for');
    case 'routine':
      return vscode.l10n.t('what is done in a session');
    case 'rule':
      return vscode.l10n.t('a rule of your own');
    case 'kind':
      return vscode.l10n.t('your own kind of session');
    case 'free':
      return vscode.l10n.t('hours for sessions');
    case 'busy':
      return vscode.l10n.t('days or hours that are taken');
    case 'event':
      return vscode.l10n.t('a show, a test, a trip');
    case 'block':
      return vscode.l10n.t('weeks laid out ahead, in the table below it');
    case 'athlete':
      return vscode.l10n.t('whose journal it is');
    case 'zone':
      return vscode.l10n.t('the journal’s time zone');
    case 'session':
      return vscode.l10n.t('a session, planned or done');
    case 'measure':
      return vscode.l10n.t('one reading of a metric');
    case 'sore':
      return vscode.l10n.t('soreness of a region, 0 to 10');
    case 'pain':
      return vscode.l10n.t('pain, open until it says clear');
    case 'win':
      return vscode.l10n.t('what went well');
  }
}

/** What a named field is for. */
export function fieldDescription(name: string): string {
  switch (name) {
    case 'for':
      return vscode.l10n.t('the goals that it is for');
    case 'with':
      return vscode.l10n.t('company: coach, partner');
    case 'where':
      return vscode.l10n.t('the place');
    case 'routine':
      return vscode.l10n.t('what is done in it');
    case 'skipped':
      return vscode.l10n.t('it did not take place, with the reason');
    case 'moved':
      return vscode.l10n.t('the day to which it went');
    case 'side':
      return vscode.l10n.t('left or right');
    case 'photo':
      return vscode.l10n.t('the path of a picture');
    case 'by':
      return vscode.l10n.t('the date to reach it by');
    case 'from':
      return vscode.l10n.t('where it began');
    case 'to':
      return vscode.l10n.t('the target');
    case 'noise':
      return vscode.l10n.t('the error of the measuring itself');
    case 'metric':
      return vscode.l10n.t('the metric that is meant');
    case 'gap':
      return vscode.l10n.t('time between two sessions');
    case 'min':
      return vscode.l10n.t('the least a week');
    case 'max':
      return vscode.l10n.t('the most a week');
    case 'cap':
      return vscode.l10n.t('training time of a day');
    case 'like':
      return vscode.l10n.t('the kind that it counts as, too');
    case 'regions':
      return vscode.l10n.t('regions of the body that it loads');
    default:
      return '';
  }
}
