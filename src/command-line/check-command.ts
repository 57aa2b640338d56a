import type { IsoDate } from '../notation/time/iso-date';
import type { IsoWeek } from '../notation/time/iso-week';
import { checkJournal } from '../training/check-journal';
import { type FindingCode, fillMessage, type Severity } from '../training/finding';
import { weekReader } from '../training/training-week';
import { summariseWeek, type WeekSummary } from '../training/week-summary';
import { weeksOf } from '../training/weeks-of-journal';
import { type PrintedPlace, printedPlace } from './printed-place';
import type { JournalsToRead, JournalToRead } from './read-journals';
import { terminalJson, terminalLine } from './terminal-text';

/** A finding as `check` prints it. */
export interface PrintedFinding extends PrintedPlace {
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly message: string;
}

/** What `check --json` prints. */
export interface CheckReport {
  readonly today: IsoDate;
  readonly findings: readonly PrintedFinding[];
  /** In order; journals of one folder are added up. */
  readonly weeks: readonly WeekSummary[];
}

function findingsOf({ journal, today, zone }: JournalToRead): readonly PrintedFinding[] {
  return checkJournal(journal, { today, zone }).map(({ code, severity, note, range, message }) => {
    const { file, ...place } = printedPlace(journal, note, range);
    return { code, severity, file, ...place, message: fillMessage(message) };
  });
}

function addWeeks(one: WeekSummary | undefined, other: WeekSummary): WeekSummary {
  if (!one) return other;
  return {
    week: one.week,
    planned: one.planned + other.planned,
    done: one.done + other.done,
    skipped: one.skipped + other.skipped,
    overdue: one.overdue + other.overdue,
    minutesPlanned: one.minutesPlanned + other.minutesPlanned,
    minutesDone: one.minutesDone + other.minutesDone,
  };
}

function weekSummaries(journals: readonly JournalToRead[]): readonly WeekSummary[] {
  const sums = new Map<IsoWeek, WeekSummary>();
  for (const { journal, today } of journals) {
    const weeks = weekReader(journal, today);
    for (const week of weeksOf(journal, today)) {
      sums.set(week, addWeeks(sums.get(week), summariseWeek(journal, week, today, weeks)));
    }
  }
  return [...sums.values()].sort((a, b) => (a.week < b.week ? -1 : 1));
}

/** Checks every journal: all notes, all goals, and all weeks that hold anything. */
export function checkReport({ journals, today }: JournalsToRead): CheckReport {
  return { today, findings: journals.flatMap(findingsOf), weeks: weekSummaries(journals) };
}

/** Whether there is something to mend. */
export function hasWarnings({ findings }: CheckReport): boolean {
  return findings.some(({ severity }) => severity !== 'information');
}

function counted(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}

function withoutLastSlashes(folder: string): string {
  let end = folder.length;
  while (end > 0 && (folder[end - 1] === '/' || folder[end - 1] === '\\')) end -= 1;
  return folder.slice(0, end);
}

/**
 * The findings for people: `path:line:column severity code message`, one a line, then their numbers.
 * @param folder as it was typed; put before each path, so that a terminal can open it
 */
export function checkLines({ findings }: CheckReport, folder: string): string {
  const before = folder === '.' ? '' : `${withoutLastSlashes(folder)}/`;
  const lines = findings.map(({ file, line, column, severity, code, message }) =>
    terminalLine(`${before}${file}:${line}:${column} ${severity} ${code} ${message}`),
  );
  const count = (severity: Severity) => findings.filter((finding) => finding.severity === severity).length;
  const sum = [
    counted(count('error'), 'error', 'errors'),
    counted(count('warning'), 'warning', 'warnings'),
    `${count('information')} for information`,
  ].join(', ');
  return `${[...lines, sum].join('\n')}\n`;
}

/** The report as JSON. */
export function checkJson(report: CheckReport): string {
  return `${terminalJson(report)}\n`;
}
