import * as vscode from 'vscode';
import { dayNumber, type IsoDate } from '../notation/time/iso-date';

function utcDate(date: IsoDate): Date {
  return new Date(dayNumber(date) * 86_400_000);
}

/** `Tuesday 24 February`, in the person's language and order. */
export function longDay(date: IsoDate): string {
  return new Intl.DateTimeFormat(vscode.env.language, {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    timeZone: 'UTC',
  }).format(utcDate(date));
}

/** `Tue 24 Feb`, in the person's language and order. */
export function shortDay(date: IsoDate): string {
  return new Intl.DateTimeFormat(vscode.env.language, {
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    timeZone: 'UTC',
  }).format(utcDate(date));
}
