import * as vscode from 'vscode';
import { withoutDirectionMarks } from '../../notation/direction-marks';
import type { Unit } from '../../notation/quantity';
import type { Words } from '../words';

/** A value with its unit when that is known. */
export function quantityWords(words: Words, value: number, unit: Unit | undefined): string {
  return unit === undefined ? words.number(value, 2) : words.quantity(value, unit);
}

/** `text` from a note as plain words in Markdown: nothing in it is a link, code, HTML or a mark. */
export function escaped(text: string): string {
  return withoutDirectionMarks(text)
    .replace(/[\\`*_{}[\]()#+\-.!~|$:@]/g, '\\$&')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/\s+/g, ' ');
}

/** Days from now in words: `today`, `tomorrow`, `in 12 days`, `3 days ago`. */
export function daysFromNow(days: number): string {
  if (days === 0) return vscode.l10n.t('today');
  if (days === 1) return vscode.l10n.t('tomorrow');
  if (days === -1) return vscode.l10n.t('yesterday');
  return days > 0 ? vscode.l10n.t('in {0} days', days) : vscode.l10n.t('{0} days ago', -days);
}
