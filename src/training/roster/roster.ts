import type { JournalPlan } from '../../journal/journal';
import type { Finding } from '../finding';
import type { AthleteFacts } from './athlete-facts';
import { type AthleteFindings, athleteFindings } from './athlete-findings';
import { type WordReason, wordReasonKinds, wordReasons } from './word-reasons';

/** An athlete, and what a coach sees of them at a glance. */
export interface RosterRow {
  /** Tells athletes of one name apart. */
  readonly id: string;
  readonly name: string;
  readonly facts: AthleteFacts;
  readonly findings: AthleteFindings;
  /** The gravest first; empty when nothing asks for a word. */
  readonly reasons: readonly WordReason[];
}

/** What a row of the roster is made from. */
export interface Athlete {
  readonly id: string;
  readonly name: string;
  readonly plan: JournalPlan;
  readonly facts: AthleteFacts;
  /** The findings of the weeks in view. */
  readonly findings: readonly Finding[];
}

/** The row of an athlete. */
export function rosterRow({ id, name, plan, facts, findings }: Athlete): RosterRow {
  const found = athleteFindings(findings, plan);
  return { id, name, facts, findings: found, reasons: wordReasons(facts, found) };
}

function compareText(one: string, other: string): number {
  return one === other ? 0 : one < other ? -1 : 1;
}

/** Behind all that is a reason. */
const noReason: { readonly rank: number; readonly weight: number } = {
  rank: wordReasonKinds.length,
  weight: 0,
};

function gravity(reason: WordReason | undefined): typeof noReason {
  return reason ? { rank: wordReasonKinds.indexOf(reason.kind), weight: reason.weight } : noReason;
}

/**
 * Which of two athletes comes first: the one whose first reason is of the graver kind, or heavier of one kind; then the
 * second reasons decide, and so on, any reason before none; then the names.
 */
export function compareRows(one: RosterRow, other: RosterRow): number {
  const most = Math.max(one.reasons.length, other.reasons.length);
  for (let index = 0; index < most; index += 1) {
    const [own, others] = [gravity(one.reasons[index]), gravity(other.reasons[index])];
    const difference = own.rank - others.rank || others.weight - own.weight;
    if (difference !== 0) return difference;
  }
  return compareText(one.name, other.name) || compareText(one.id, other.id);
}

/** The athletes of a coach: those who need a word first. */
export function rosterOf(athletes: readonly Athlete[]): readonly RosterRow[] {
  return athletes.map(rosterRow).sort(compareRows);
}
