import { addWeeks, isoWeekOf } from '../notation/time/iso-week';
import type { LoadShare } from '../training/load/load-shares';
import { type WeekLoadFigures, weekLoads } from '../training/load/week-loads';
import { type WorkloadRatios, workloadRatios } from '../training/load/workload-ratios';
import type { LoadTotal } from '../training/statistics/session-load';
import { weekReader } from '../training/training-week';
import { counted, journalLines, journalsJson, number } from './printed-words';
import type { JournalsToRead, JournalToRead } from './read-journals';

/** Weeks that are printed when nothing else is asked for. */
export const weeksOfLoad = 12;

function figures({ journal, today }: JournalToRead, count: number) {
  const weeks = weekReader(journal, today);
  const last = isoWeekOf(today);
  const loads = weekLoads(journal, { today, first: addWeeks(last, 1 - count), last, weeks });
  return { loads, ratios: workloadRatios(journal, today, weeks) };
}

function weekValue({ sessions, spread, ...week }: WeekLoadFigures) {
  return {
    ...week,
    sessions: sessions.map(({ date, kind, regions, rating, minutes, load, facts }) => ({
      date,
      kind,
      regions,
      rating,
      minutes,
      load,
      note: facts.session.note,
      range: facts.session.entry.range,
    })),
    spread,
  };
}

/** The report as JSON: weeks with days, sessions, kinds and regions, and the two ratios with their criticism. */
export function loadJson(read: JournalsToRead, weeks = weeksOfLoad): string {
  return journalsJson(read, (one) => {
    const { loads, ratios } = figures(one, weeks);
    return { weeks: loads.map(weekValue), ratios };
  });
}

function totalWords({ knownTotal, unknown }: LoadTotal): string {
  return unknown === 0
    ? number(knownTotal, 0)
    : `at least ${number(knownTotal, 0)} (${counted(unknown, 'session')} unknown)`;
}

function shareWords({ name, load }: LoadShare): string {
  return `${name ?? 'no kind'} ${totalWords(load)}`;
}

function weekLine({
  week,
  isOver,
  load,
  minutes,
  spread,
  change,
  byKind,
  unmarked,
}: WeekLoadFigures): string {
  const monotony = spread.status === 'estimated' ? spread.monotony : undefined;
  const strain = spread.status === 'estimated' ? spread.strain : undefined;
  return [
    `${week}${isOver ? '' : ' so far'}: ${totalWords(load)} in ${counted(load.n, 'session')}, ${number(minutes, 0)} min`,
    ...(typeof monotony === 'number' ? [`monotony ${number(monotony)}`] : []),
    ...(typeof strain === 'number' ? [`strain ${number(strain, 0)}`] : []),
    ...(isOver && change.status === 'estimated'
      ? [
          `${Math.round(change.percent) > 0 ? '+' : ''}${number(change.percent, 0)} % against the three weeks before`,
        ]
      : []),
    ...(unmarked > 0 ? [`${unmarked} not marked, counted as not done`] : []),
    ...(byKind.length > 0 ? [byKind.map(shareWords).join(', ')] : []),
  ].join('; ');
}

function ratioLines(ratios: WorkloadRatios | undefined): readonly string[] {
  if (ratios?.rolling.status !== 'estimated' || ratios.exponential.status !== 'estimated') {
    return ['last 7 days against the 21 before: not enough known days in a row (28 are needed)'];
  }
  const { rolling, exponential, upTo } = ratios;
  return [
    `up to ${upTo}: last 7 days ${number(rolling.ratio)} times the mean day of the 21 before; with newer days weighing more ${number(exponential.ratio)}`,
    'These ratios describe a change of load. They are criticised, and say nothing about the chance of getting hurt: see --json.',
  ];
}

/** The report for people: a line a week. */
export function loadLines(read: JournalsToRead, weeks = weeksOfLoad): string {
  return journalLines(read, (one) => {
    const { loads, ratios } = figures(one, weeks);
    return loads.length === 0
      ? ['no sessions yet']
      : [
          ...loads.map(weekLine),
          ...ratioLines(ratios),
          'Load is effort x minutes. It compares your weeks with each other, not you with others.',
        ];
  });
}
