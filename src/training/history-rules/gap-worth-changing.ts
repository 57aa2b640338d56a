import type { NotePlace } from '../../journal/note';
import { isoWeekOf } from '../../notation/time/iso-week';
import type { Finding } from '../finding';
import type { GapSuggestion } from '../recovery/gap-suggestion';
import { type RecoveryFigures, recoveryDays, recoveryFigures } from '../recovery/recovery-figures';
import { currentPlace } from '../recovery/recovery-subject';
import { related, sessionPlace } from '../session-place';
import type { CheckContext } from '../week-under-check';
import { message } from '../wording';
import type { HistoryRule } from './history-rule';

const mostRelated = 5;

type Suggested = RecoveryFigures & { readonly suggestion: GapSuggestion };

function distance({ suggestion }: Suggested): number {
  return Math.abs(suggestion.suggestedHours - (suggestion.currentHours ?? 0));
}

/** The one to be told this week: longer gaps before shorter ones, then the greatest change. */
function mostWorth(all: readonly RecoveryFigures[]): Suggested | undefined {
  const suggested = all.flatMap((one) => (one.suggestion ? [{ ...one, suggestion: one.suggestion }] : []));
  const isShorter = ({ suggestion }: Suggested): number => (suggestion.change === 'shorter' ? 1 : 0);
  return suggested.sort(
    (one, other) => isShorter(one) - isShorter(other) || distance(other) - distance(one),
  )[0];
}

function placeOf({ current, pairs }: Suggested): NotePlace | undefined {
  const latest = pairs.at(-1)?.second.session;
  return currentPlace(current) ?? (latest && sessionPlace(latest));
}

function sentence({ subject, suggestion }: Suggested) {
  const { interval, sore, pairs, suggestedHours, currentHours, acceptedChance, hours } = suggestion;
  const kept = currentHours === undefined ? 'no gap is kept now' : '{5} h are kept now';
  return message(
    `Still sore in {1} of {2} pairs of sessions ({0}); the chance falls to {3} % after about {4} h ({6} to {7} h), and ${kept}. {8} h may suit you better`,
    subject.name,
    sore,
    pairs,
    Math.round(100 * acceptedChance),
    Math.round(hours),
    currentHours ?? 0,
    Math.round(interval.lower),
    Math.round(interval.upper),
    suggestedHours,
  );
}

function finding(suggested: Suggested): readonly Finding[] {
  const { subject, suggestion, pairs } = suggested;
  const place = placeOf(suggested);
  if (!place) return [];
  const sore = pairs.filter((pair) => pair.sore).slice(-mostRelated);
  return [
    {
      code: 'gap-worth-changing',
      severity: 'information',
      ...place,
      message: sentence(suggested),
      facts: {
        subject: subject.name,
        about: subject.about,
        suggestedHours: suggestion.suggestedHours,
        ...(suggestion.currentHours === undefined ? {} : { currentHours: suggestion.currentHours }),
        hours: suggestion.hours,
        lower: suggestion.interval.lower,
        upper: suggestion.interval.upper,
        acceptedChance: suggestion.acceptedChance,
        pairs: suggestion.pairs,
        sore: suggestion.sore,
      },
      related: sore.map(({ second: { session }, hours }) =>
        related(
          sessionPlace(session),
          message('{0}, {1}: still sore after {2} h', session.kind, session.date, Math.round(hours)),
        ),
      ),
      remedies: ['write-rule'],
    },
  ];
}

/**
 * The notes show another gap between sessions of a kind, or sessions that train a region, than is kept now. At most
 * one is told a week, and it stands all week: sessions up to last Sunday are read. It stands on the rule or need that
 * keeps the gap, or on the latest session of that sort.
 *
 * A journal that breaks it, on Wednesday 2026-02-25:
 *
 *     journal.md
 *     - #routine split flexibility 60min regions:hamstrings
 *     - #rule flexibility gap:24h
 *     2026-01-05.md, 2026-01-06.md, 2026-01-09.md, 2026-01-10.md, 2026-01-13.md, 2026-01-14.md, 2026-01-18.md
 *     - [x] #session flexibility 18:30 60min 7/10 routine:split
 *     2026-01-19.md, 2026-01-22.md, 2026-01-23.md, 2026-01-27.md, 2026-01-28.md, 2026-01-31.md, 2026-02-01.md
 *     - [x] #session flexibility 18:30 60min 7/10 routine:split
 *     2026-01-06.md, 2026-01-10.md, 2026-01-14.md, 2026-01-19.md, 2026-01-23.md, 2026-01-28.md, 2026-02-01.md
 *     - #sore hamstrings 5/10 -- on every second day in a row, and never after three
 *
 * A journal that does not:
 *
 *     journal.md
 *     - #routine split flexibility 60min regions:hamstrings
 *     - #rule flexibility gap:60h
 *     - #rule hamstrings gap:60h
 *     2026-01-05.md, 2026-01-06.md, 2026-01-09.md, 2026-01-10.md, 2026-01-13.md, 2026-01-14.md, 2026-01-18.md
 *     - [x] #session flexibility 18:30 60min 7/10 routine:split
 *     2026-01-19.md, 2026-01-22.md, 2026-01-23.md, 2026-01-27.md, 2026-01-28.md, 2026-01-31.md, 2026-02-01.md
 *     - [x] #session flexibility 18:30 60min 7/10 routine:split
 *     2026-01-06.md, 2026-01-10.md, 2026-01-14.md, 2026-01-19.md, 2026-01-23.md, 2026-01-28.md, 2026-02-01.md
 *     - #sore hamstrings 5/10
 */
export const gapWorthChanging: HistoryRule = {
  code: 'gap-worth-changing',
  inputs(context: CheckContext) {
    const days = recoveryDays(context);
    const { journal, plan, zone, today, acceptedChance } = context;
    return [
      plan,
      zone,
      acceptedChance,
      isoWeekOf(today),
      ...(days
        ? [...journal.sessions(days.first, days.last), ...journal.bodyReports(days.first, days.last)]
        : []),
      ...context.openPains(),
    ];
  },
  check(context) {
    const worth = mostWorth(recoveryFigures(context));
    return worth ? finding(worth) : [];
  },
};
