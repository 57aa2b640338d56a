import * as vscode from 'vscode';
import type { Weekday } from '../notation/entries';
import { present } from '../notation/present';
import { parseIsoDate } from '../notation/time/iso-date';
import { readTimeSpan, type WallMinutes } from '../notation/time/wall-clock';
import { weekdayNames } from '../notation/time/weekday-names';
import { isKnownZone, wallClockAt } from '../notation/time/zoned-time';
import { type BlockSettings, usableBlockSettings } from '../planning/block/block-settings';
import { type ReviewDay, usualReviewDay } from '../planning/week-review/review-due';
import { DEFAULT_ACCEPTED_CHANCE } from '../training/recovery/recovery-figures';
import type { Paper } from './month-sheet/sheet-style';
import type { JournalSettings } from './open-journal';

/** The section of every setting and the prefix of every command. */
export const section = 'trainingJournal';

/** A week: nobody is reminded of a session earlier than that. */
const mostAlarmMinutes = 7 * 1440;

/** After a Sunday's training, before the evening. No source. */
const usualReviewTime: WallMinutes = 18 * 60;

function wholeNumber(value: unknown, fallback: number, most: number): number {
  return typeof value === 'number' && Number.isInteger(value) && value >= 0
    ? Math.min(value, most)
    : fallback;
}

/** A time of day; nothing when it is empty, 18:00 when it cannot be used. */
function reviewTime(value: unknown): WallMinutes | undefined {
  if (typeof value !== 'string') return usualReviewTime;
  if (value.trim() === '') return undefined;
  const span = readTimeSpan(value.trim());
  return span && span.end === undefined ? span.start : usualReviewTime;
}

/** A whole percentage as a chance; what cannot be used counts as not set. */
function chance(percent: unknown): number {
  const isUsable = typeof percent === 'number' && percent >= 5 && percent <= 50;
  return isUsable ? percent / 100 : DEFAULT_ACCEPTED_CHANCE;
}

/** A weekday by its name, or `off`; what is neither counts as not set. */
function reviewDay(name: unknown): ReviewDay {
  if (name === 'off') return 'off';
  const index = typeof name === 'string' ? weekdayNames.indexOf(name) : -1;
  return index < 0 ? usualReviewDay : ((index + 1) as Weekday);
}

/** The settings that hold for `scope`; values that cannot be used count as not set. */
export function readSettings(scope: vscode.Uri): JournalSettings {
  const settings = vscode.workspace.getConfiguration(section, scope);
  const today = parseIsoDate(settings.get<string>('today', '').trim());
  const timeZone = settings.get<string>('timeZone', '').trim();
  const alarm: unknown = settings.get('calendar.alarmMinutes');
  return {
    ...(typeof alarm === 'number' && Number.isInteger(alarm) && alarm >= 0 && alarm <= mostAlarmMinutes
      ? { alarmMinutes: alarm }
      : {}),
    ...(today ? { today } : {}),
    ...(isKnownZone(timeZone) ? { timeZone } : {}),
    ...present({ calendarReviewAt: reviewTime(settings.get('calendar.reviewAt')) }),
    recoveryChance: chance(settings.get('recovery.chance')),
    // Private: only a plain yes counts as one.
    review: {
      pain: settings.get<unknown>('review.pain') === true,
      why: settings.get<unknown>('review.why') === true,
      day: reviewDay(settings.get('review.day')),
    },
    sessionLenses: settings.get<unknown>('sessionLens.enabled') !== false,
    timeOfDay: settings.get<unknown>('planning.timeOfDay') === 'later' ? 'later' : 'earlier',
    findings: {
      enabled: settings.get<boolean>('findings.enabled', true),
      weeksBefore: wholeNumber(settings.get('findings.weeksBefore'), 1, 520),
      weeksAfter: wholeNumber(settings.get('findings.weeksAfter'), 2, 52),
    },
  };
}

/** How blocks of weeks are laid out; values that cannot be used count as not set. */
export function readBlockSettings(scope: vscode.Uri): BlockSettings {
  const settings = vscode.workspace.getConfiguration(section, scope);
  return usableBlockSettings({
    mostIncrease: settings.get('block.mostIncrease'),
    lighterEvery: settings.get('block.lighterEvery'),
    lighterVolume: settings.get('block.lighterVolume'),
    taperReduction: settings.get('block.taperReduction'),
    taperWeeks: settings.get('block.taperWeeks'),
  });
}

const weekStarts: Readonly<Record<string, Weekday>> = { monday: 1, saturday: 6, sunday: 7 };

/** The settings of the month's calendar; values that cannot be used count as not set. */
export function readMonthSettings(scope: vscode.Uri): { readonly weekStart: Weekday; readonly paper: Paper } {
  const settings = vscode.workspace.getConfiguration(section, scope);
  return {
    weekStart: weekStarts[settings.get<string>('month.weekStart', 'monday')] ?? 1,
    paper: settings.get<string>('month.paper') === 'letter' ? 'letter' : 'a4',
  };
}

/** The machine's own zone. */
export function machineZone(): string {
  return new Intl.DateTimeFormat().resolvedOptions().timeZone || 'UTC';
}

/** The date that the clock shows in `zone`. The only place where the editor looks at the clock for a day. */
export function clockDate(zone: string) {
  return wallClockAt(Math.floor(Date.now() / 60_000), zone).date;
}

/** The heading under which a coach's comments stand. */
export function readCoachHeading(scope: vscode.Uri): string {
  const settings = vscode.workspace.getConfiguration(section, scope);
  const heading: unknown = settings.get('coach.heading');
  return typeof heading === 'string' ? heading : '';
}
