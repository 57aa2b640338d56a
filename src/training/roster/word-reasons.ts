import type { NotePlace } from '../../journal/note';
import type { Message } from '../finding';
import { message } from '../wording';
import type { AthleteFacts, GoalPastItsDate, OpenPainOfAthlete } from './athlete-facts';
import type { AthleteFindings, GoalBehind } from './athlete-findings';

/** Why somebody may need a word, the gravest first. Common practice, no source. */
export const wordReasonKinds = ['pain', 'slipping', 'silent', 'findings', 'behind'] as const;

export type WordReasonKind = (typeof wordReasonKinds)[number];

/** One reason for a word with an athlete. */
export interface WordReason {
  readonly kind: WordReasonKind;
  readonly message: Message;
  /** Where it stands, when it stands anywhere. */
  readonly place?: NotePlace;
  /** Of two reasons of one kind the heavier one comes first. */
  readonly weight: number;
}

/** From so many days without a logged word on, somebody asks. Common practice, no source. */
export const SILENT_DAYS = 7;

function painReason({ region, rating, date, place }: OpenPainOfAthlete): WordReason {
  return {
    kind: 'pain',
    message:
      rating === undefined
        ? message('Open pain: {0}, noted on {1}', region, date)
        : message('Open pain: {0} {2}/10, noted on {1}', region, date, rating),
    place,
    // Pain without a number is not taken for a light one.
    weight: rating ?? 5,
  };
}

function slippingReasons({ slipping }: AthleteFindings): readonly WordReason[] {
  if (!slipping) return [];
  const { note, range, facts } = slipping;
  const { done = 0, planned = 0, usualShare = 0, score = 0 } = facts;
  return [
    {
      kind: 'slipping',
      message: message(
        'Fewer done lately: {0} of the last {1} planned sessions, usually {2} %',
        done,
        planned,
        Math.round(100 * Number(usualShare)),
      ),
      place: { note, range },
      weight: Number(score),
    },
  ];
}

function silentReasons({ lastLog }: AthleteFacts): readonly WordReason[] {
  if (!lastLog) return [{ kind: 'silent', message: message('Nothing logged yet'), weight: 0 }];
  const { daysAgo, place } = lastLog;
  return daysAgo < SILENT_DAYS
    ? []
    : [{ kind: 'silent', message: message('Nothing logged for {0} days', daysAgo), place, weight: daysAgo }];
}

function findingReasons({ counts, worst }: AthleteFindings): readonly WordReason[] {
  const { error, warning } = counts;
  if (!worst || error + warning === 0) return [];
  const errors = error === 1 ? '{0} error' : '{0} errors';
  const warnings = warning === 1 ? '{1} warning' : '{1} warnings';
  const template = [...(error > 0 ? [errors] : []), ...(warning > 0 ? [warnings] : [])].join(', ');
  return [
    {
      kind: 'findings',
      message: message(`Found: ${template}`, error, warning),
      place: { note: worst.note, range: worst.range },
      weight: 1000 * error + warning,
    },
  ];
}

function behindReason({ title, finding: { note, range, facts } }: GoalBehind): WordReason {
  return {
    kind: 'behind',
    message: message('{0} needs a faster pace to be there on {1}', title, facts.by ?? ''),
    place: { note, range },
    weight: 0,
  };
}

function pastReason({ title, by, place }: GoalPastItsDate): WordReason {
  return { kind: 'behind', message: message('The day of {0} has passed: {1}', title, by), place, weight: 1 };
}

/** Why an athlete may need a word, the gravest reason first; empty when nothing asks for one. */
export function wordReasons(facts: AthleteFacts, findings: AthleteFindings): readonly WordReason[] {
  const reasons = [
    ...facts.pains.map(painReason),
    ...slippingReasons(findings),
    ...silentReasons(facts),
    ...findingReasons(findings),
    ...facts.goalsPast.map(pastReason),
    ...findings.behind.map(behindReason),
  ];
  const rank = ({ kind }: WordReason) => wordReasonKinds.indexOf(kind);
  return reasons.sort((one, other) => rank(one) - rank(other) || other.weight - one.weight);
}
