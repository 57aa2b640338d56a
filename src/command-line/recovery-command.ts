import {
  DEFAULT_ACCEPTED_CHANCE,
  type RecoveryFigures,
  type RecoveryOptions,
  recoveryFigures,
} from '../training/recovery/recovery-figures';
import type { SessionPair } from '../training/recovery/session-pairs';
import type { SessionFacts } from '../training/session-facts';
import { checkContext } from '../training/week-under-check';
import { counted, journalLines, journalsJson, number } from './printed-words';
import type { JournalsToRead, JournalToRead } from './read-journals';

function figures(
  { journal, today, zone }: JournalToRead,
  options: RecoveryOptions,
): readonly RecoveryFigures[] {
  return recoveryFigures(checkContext(journal, { today, zone }), options);
}

function sessionValue({ session }: SessionFacts) {
  return { date: session.date, kind: session.kind, note: session.note, range: session.entry.range };
}

function pairValue({ first, second, reports, ...pair }: SessionPair) {
  return {
    ...pair,
    first: sessionValue(first),
    second: sessionValue(second),
    reports: reports.map(({ region, rating, note, entry }) => ({ region, rating, note, range: entry.range })),
  };
}

function subjectValue({ subject, current, pairs, pairsInDays, learned, suggestion }: RecoveryFigures) {
  return {
    ...subject,
    current: current && { hours: current.hours, by: current.by },
    pairs: pairs.map(pairValue),
    pairsInDays,
    learned,
    suggestion,
  };
}

/** The report as JSON: one entry a kind and region, with the pairs of sessions it stands on. */
export function recoveryJson(read: JournalsToRead, options: RecoveryOptions = {}): string {
  return journalsJson(read, (one) => ({
    acceptedChance: options.acceptedChance ?? DEFAULT_ACCEPTED_CHANCE,
    subjects: figures(one, options).map(subjectValue),
  }));
}

function refusalWords(one: RecoveryFigures): string {
  const { learned, pairs } = one;
  if (learned.status === 'estimated') return '';
  const sore = pairs.filter((pair) => pair.sore).length;
  const so = `${counted(pairs.length, 'pair')}, ${sore} still sore`;
  const missing = learned.missing.map(
    ({ what, have, need }) => `${need - have} more ${what.replaceAll('-', ' ')}`,
  );
  return missing.length > 0
    ? `not enough notes yet (${so}; needs ${missing.join(', ')})`
    : `no gap can be told: ${learned.reason.replaceAll('-', ' ')} (${so})`;
}

function subjectLine(one: RecoveryFigures): string {
  const { subject, current, learned, suggestion } = one;
  const kept = current ? `${number(current.hours, 1)} h kept (${current.by})` : 'no gap kept';
  if (learned.status === 'not-estimable')
    return `${subject.name} (${subject.about}): ${kept}; ${refusalWords(one)}`;
  const { hours, interval, sore, n, beyondObserved } = learned;
  const outside = beyondObserved === 'no' ? '' : `, ${beyondObserved} than any gap seen`;
  const gap = `${number(hours, 0)} h (${number(interval.lower, 0)} to ${number(interval.upper, 0)} h${outside})`;
  const asked = suggestion ? `; ${suggestion.suggestedHours} h may suit you better` : '';
  return `${subject.name} (${subject.about}): ${kept}; ${gap} learned from ${n} pairs, ${sore} still sore${asked}`;
}

/** The report for people: a line a kind and region. */
export function recoveryLines(read: JournalsToRead, options: RecoveryOptions = {}): string {
  const chance = number(100 * (options.acceptedChance ?? DEFAULT_ACCEPTED_CHANCE), 0);
  return journalLines(read, (one) => {
    const lines = figures(one, options).map(subjectLine);
    return lines.length === 0
      ? ['no sessions yet']
      : [
          `The gap after which the chance of still being sore has fallen to ${chance} %:`,
          ...lines.map((line) => `  ${line}`),
          'What goes together in your notes need not be the cause of anything.',
        ];
  });
}
