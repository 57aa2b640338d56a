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

/**
 * Which of two athletes comes first: the one with the graver first reason, then the graver second one, and so on; one
 * with more reasons before one with fewer. Of those with reasons of the same kinds, the heavier ones come first; then
 * the order is that of their names.
 */
export function compareRows(one: RosterRow, other: RosterRow): number {
  const most = Math.max(one.reasons.length, other.reasons.length);
  const rank = ({ reasons }: RosterRow, index: number) => {
    const kind = reasons[index]?.kind;
    return kind === undefined ? wordReasonKinds.length : wordReasonKinds.indexOf(kind);
  };
  for (let index = 0; index < most; index += 1) {
    const difference = rank(one, index) - rank(other, index);
    if (difference !== 0) return difference;
  }
  for (let index = 0; index < most; index += 1) {
    const difference = (other.reasons[index]?.weight ?? 0) - (one.reasons[index]?.weight ?? 0);
    if (difference !== 0) return difference;
  }
  return compareText(one.name, other.name) || compareText(one.id, other.id);
}

/** The athletes of a coach: those who need a word first. */
export function rosterOf(athletes: readonly Athlete[]): readonly RosterRow[] {
  return athletes.map(rosterRow).sort(compareRows);
}
