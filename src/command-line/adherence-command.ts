import { dayNumber } from '../notation/time/iso-date';
import { weekdayNames } from '../notation/time/weekday-names';
import {
  type AdherenceFigures,
  type AdherenceGroup,
  adherenceFigures,
} from '../training/adherence/adherence-figures';
import type { AdherenceShare } from '../training/adherence/adherence-share';
import { blockWeek } from '../training/adherence/block-week';
import { plannedSessions } from '../training/adherence/planned-sessions';
import { type Slide, type SlideReason, slide } from '../training/adherence/slide';
import { latestBreak } from '../training/adherence/training-break';
import { WEEKS_OF_ADHERENCE } from '../training/history-rules/slipping';
import type { NotEstimable } from '../training/statistics/estimate';
import { weekReader } from '../training/training-week';
import { counted, journalLines, journalsJson, number, shareWords } from './printed-words';
import type { JournalsToRead, JournalToRead } from './read-journals';

interface Report {
  readonly figures: AdherenceFigures;
  readonly drop: Slide | NotEstimable<SlideReason>;
  readonly lastBreak: ReturnType<typeof latestBreak>;
  readonly block: ReturnType<typeof blockWeek>;
}

function report({ journal, today }: JournalToRead, count: number): Report {
  const last = dayNumber(today);
  const first = Math.max(last - 7 * count, journal.span()?.first ?? last);
  const sessions = plannedSessions(weekReader(journal, today), first, last - 1);
  const lastBreak = latestBreak(sessions, last);
  return {
    figures: adherenceFigures(sessions),
    drop: slide(sessions, last),
    lastBreak,
    block: blockWeek(journal.plan, today, lastBreak),
  };
}

/** The report as JSON: done of planned in all and in parts, and whether it drops. */
export function adherenceJson(read: JournalsToRead, weeks = WEEKS_OF_ADHERENCE): string {
  return journalsJson(read, (one) => ({ ...report(one, weeks) }));
}

function shareLine(name: string, { share, excused, unmarked, reasons }: AdherenceShare): string {
  const words = 'status' in share ? 'nothing planned that counts' : shareWords(share);
  return [
    `${name}: ${words}`,
    ...(excused > 0 ? [`${excused} excused`] : []),
    ...(unmarked > 0 ? [`${unmarked} not marked`] : []),
    ...(reasons.length > 0 ? [reasons.map(({ reason, count }) => `${reason} ${count}`).join(', ')] : []),
  ].join('; ');
}

function groupLines<Key>(
  title: string,
  groups: readonly AdherenceGroup<Key>[],
  nameOf: (key: Key) => string,
): readonly string[] {
  return [`${title}:`, ...groups.map((group) => `  ${shareLine(nameOf(group.key), group)}`)];
}

/** Rarer false alarms are not counted out. */
const rareEnough = 1000;

function dropLine(drop: Report['drop']): string {
  if (drop.status === 'not-estimable') {
    return drop.reason === 'usual-share-too-low'
      ? 'a drop could not be told from chance: the usual share is too low'
      : `not enough notes yet to notice a drop: ${counted(drop.n, 'session')} of ${drop.missing[0]?.need ?? 0}`;
  }
  const sessions = drop.sessionsToFalseAlarm;
  const often =
    sessions > rareEnough ? `less than once in ${rareEnough}` : `about once in ${number(sessions, 0)}`;
  const chance = `a false alarm comes ${often} sessions`;
  return drop.isSliding
    ? `fewer done lately: ${drop.recent.done} of ${drop.recent.n} since ${drop.since}; ${chance}`
    : `no drop: score ${drop.score} of ${drop.limit}; ${chance}`;
}

/** The report for people. */
export function adherenceLines(read: JournalsToRead, weeks = WEEKS_OF_ADHERENCE): string {
  const asIs = (key: string): string => key;
  return journalLines(read, (one) => {
    const { figures, drop, lastBreak, block } = report(one, weeks);
    if (figures.all.n + figures.all.excused === 0) return ['no planned session lies in the past yet'];
    return [
      shareLine('all', figures.all),
      ...groupLines('by month', figures.byMonth, asIs),
      ...groupLines('by week', figures.byWeek, asIs),
      ...groupLines('by kind', figures.byKind, asIs),
      ...groupLines('by weekday', figures.byWeekday, (day) => weekdayNames[day - 1] ?? ''),
      ...groupLines('by time of day', figures.byTimeOfDay, asIs),
      dropLine(drop),
      ...(lastBreak ? [`last break: ${lastBreak.days} days from ${lastBreak.lastDone}`] : []),
      ...(block ? [`week ${block.week} since ${block.began}`] : []),
    ];
  });
}
