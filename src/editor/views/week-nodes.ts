import { dayNumber, type IsoDate, isoDate } from '../../notation/time/iso-date';
import { daysOfWeek, type IsoWeek } from '../../notation/time/iso-week';
import { checkWeek } from '../../training/check-week';
import type { Finding, Severity } from '../../training/finding';
import type { SessionFacts } from '../../training/session-facts';
import { summariseWeek, type WeekSummary } from '../../training/week-summary';
import { weekVolume } from '../../training/week-volume';
import { needNode } from './need-node';
import { sessionNodes } from './session-node';
import {
  byJournal,
  idWithRows,
  inOneLine,
  type JournalRows,
  say,
  type ViewContext,
  viewPlace,
} from './view-context';
import type { ViewNode } from './view-node';

const findingIcons: Readonly<Record<Severity, string>> = {
  error: 'error',
  warning: 'warning',
  information: 'info',
};

/** `1 of 2 done`, or `2 sessions` on a day to come; what was moved away or skipped does not stand in the day. */
function dayInWords(
  sessions: readonly SessionFacts[],
  date: IsoDate,
  context: ViewContext,
): string | undefined {
  const standing = sessions.filter((facts) => facts.stands);
  if (standing.length === 0) return undefined;
  const done = standing.filter((facts) => facts.state === 'done').length;
  if (date <= context.today || done > 0) return say(context, '{0} of {1} done', done, standing.length);
  return standing.length === 1 ? say(context, '1 session') : say(context, '{0} sessions', standing.length);
}

/** The days of the week, each with its sessions. */
function dayNodes(week: IsoWeek, context: ViewContext): readonly ViewNode[] {
  const { sessions, standing } = context.weeks(week);
  return daysOfWeek(week).map((day) => {
    const date = isoDate(day);
    const ofDay = sessions.filter((facts) => facts.session.day === day);
    const isRestDay = !ofDay.some((facts) => facts.stands && !facts.isRecovery);
    const label = context.words.dates.weekdayAndDay(date, context.today);
    const description = inOneLine(
      date === context.today ? say(context, 'today') : undefined,
      dayInWords(ofDay, date, context),
      // Days of a week in which nothing stands are not rest, they are not written.
      isRestDay && standing.length > 0 ? say(context, 'rest day') : undefined,
    );
    const [note] = context.journal.notesOf(day);
    const children = sessionNodes(ofDay, context, () => ({ within: `${week}` }));
    return {
      id: idWithRows(`${context.id}#${week}/${date}`, children),
      kind: 'day',
      journal: context.id,
      label,
      description,
      accessibilityLabel: inOneLine(label, description),
      ...(note ? { place: viewPlace(context, { note: note.path, range: { start: 0, end: 0 } }) } : {}),
      date,
      children,
    };
  });
}

function summaryInWords(summary: WeekSummary, context: ViewContext): string {
  if (summary.planned === 0) return say(context, 'no sessions');
  const { number } = context.words;
  return inOneLine(
    say(context, '{0} of {1} sessions done', summary.done, summary.planned),
    summary.minutesPlanned === 0
      ? undefined
      : say(context, '{0} of {1} min', number(summary.minutesDone, 0), number(summary.minutesPlanned, 0)),
  );
}

/** What the week gives to each need that it is asked to meet. */
function volumeNode(week: IsoWeek, summary: string, context: ViewContext): ViewNode {
  const isOver = (daysOfWeek(week)[6] ?? 0) < dayNumber(context.today);
  const label = say(context, 'Volume');
  const children = weekVolume(context.journal, week, context.today, context.weeks).map((volume, ordinal) => {
    const { kind, goal } = volume.need;
    return needNode(volume, context, {
      within: `${week}`,
      ordinal,
      label: goal === undefined ? kind : say(context, '{0} for {1}', kind, goal),
      isOver,
    });
  });
  return {
    id: idWithRows(`${context.id}#${week}/volume`, children),
    kind: 'group',
    journal: context.id,
    label,
    description: summary,
    accessibilityLabel: inOneLine(label, summary),
    children,
  };
}

function severityInWords(severity: Severity, context: ViewContext): string {
  switch (severity) {
    case 'error':
      return say(context, 'error');
    case 'warning':
      return say(context, 'warning');
    case 'information':
      return say(context, 'information');
  }
}

function findingNode(finding: Finding, id: string, context: ViewContext): ViewNode {
  const label = context.words.say(finding.message);
  return {
    id,
    kind: 'finding',
    journal: context.id,
    label,
    tooltip: label,
    icon: findingIcons[finding.severity],
    accessibilityLabel: `${severityInWords(finding.severity, context)}: ${label}`,
    place: viewPlace(context, finding),
    children: [],
  };
}

/** What the rules and needs find in the week, which need not be one of those in whose notes it is shown. */
function findingsNode(week: IsoWeek, context: ViewContext): ViewNode | undefined {
  if (!context.findingsEnabled) return undefined;
  const findings = checkWeek(context.journal, week, { today: context.today, zone: context.zone });
  if (findings.length === 0) return undefined;
  const id = `${context.id}#${week}/findings`;
  const label = say(context, 'Findings');
  const description =
    findings.length === 1 ? say(context, '1 finding') : say(context, '{0} findings', findings.length);
  return {
    id,
    kind: 'group',
    journal: context.id,
    label,
    description: String(findings.length),
    accessibilityLabel: description,
    collapsed: true,
    children: findings.map((finding, ordinal) => findingNode(finding, `${id}/${ordinal}`, context)),
  };
}

function rowsOf(week: IsoWeek, context: ViewContext): JournalRows {
  const summary = summaryInWords(summariseWeek(context.journal, week, context.today, context.weeks), context);
  const findings = findingsNode(week, context);
  return {
    rows: [...dayNodes(week, context), volumeNode(week, summary, context), ...(findings ? [findings] : [])],
    summary,
  };
}

/**
 * A week: seven days with their sessions, the volume against what is asked, and what was found.
 * @param weekOf The week that is shown of a journal.
 */
export function weekNodes(
  contexts: readonly ViewContext[],
  weekOf: (context: ViewContext) => IsoWeek,
): readonly ViewNode[] {
  return byJournal(contexts, (context) => rowsOf(weekOf(context), context), true);
}
