/** Small planning problems in a few words. */
import { PLANNING } from '../../../src/planning/solver/order';
import type { PlacedSession } from '../../../src/planning/solver/plan';
import type { Candidate, Need, PlanningProblem, StandingSession } from '../../../src/planning/solver/problem';

const DAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

/** Minutes of a number of hours. */
export function hours(count: number): number {
  return count * 60;
}

/** `thu 18:30`, and `thu+1 18:30` in the week after; minutes and day on the axis of the problem. */
export function moment(text: string): { readonly start: number; readonly day: number } {
  const [, name = '', week = '0', hour = '0', minute = '0'] =
    /^(\w{3})(?:([+-]\d+))? (\d+):(\d+)$/.exec(text) ?? [];
  const day = DAYS.indexOf(name) + 7 * Number(week);
  return { day, start: (day * 24 + Number(hour)) * 60 + Number(minute) };
}

/** A candidate of 60 minutes unless told otherwise. */
export function at(text: string, more: Partial<Candidate> & { readonly minutes?: number } = {}): Candidate {
  const { start, day } = moment(text);
  const { minutes = 60, ...rest } = more;
  return { start, end: start + minutes, day, deviation: 0, preference: 0, ...rest };
}

/** A need of one session a week, of importance 0, in week 0, unless told otherwise. */
export function need(id: string, candidates: readonly Candidate[], more: Partial<Need> = {}): Need {
  return { id, week: 0, count: 1, importance: 0, labels: [id], candidates, ...more };
}

/** A standing session of 60 minutes. */
export function standing(id: string, text: string, labels: readonly string[]): StandingSession {
  const { start, day } = moment(text);
  return { id, labels, start, end: start + 60, day };
}

/** A problem of one week, unless told otherwise. */
export function problemOf(parts: Partial<PlanningProblem>): PlanningProblem {
  return {
    weeks: 1,
    needs: [],
    standing: [],
    rules: [],
    order: PLANNING,
    standingMayBreakRules: false,
    ...parts,
  };
}

/** `flexibility thu 18:30`, a line for each placed session. */
export function linesOf(placed: readonly PlacedSession[]): string[] {
  return placed.map(({ need, start, day }) => {
    const clock = start - day * 24 * 60;
    const week = Math.floor(day / 7);
    const minute = String(clock % 60).padStart(2, '0');
    return `${need} ${DAYS[day - 7 * week]}${week > 0 ? `+${week}` : ''} ${Math.floor(clock / 60)}:${minute}`;
  });
}
