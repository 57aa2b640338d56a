/**
 * A planning problem as a mixed-integer programme for HiGHS (https://highs.dev, the `highs` package), used
 * as an outside judge. It is written from the meaning of the problem alone and shares nothing with the
 * solver but the types.
 *
 * One binary variable for each need and candidate (interchangeable sessions share it). Two formulations
 * of what excludes what: `pairs` writes one row for each two candidates that cannot both stand, straight
 * from the definition; `cliques` writes one row for each moment and each set of labels whose sessions
 * pairwise keep at least some distance, which is far tighter and is the one to race against.
 */
import type { Level } from '../../../src/planning/solver/order';
import type { Label, Need, PlanningProblem, StandingSession } from '../../../src/planning/solver/problem';

/** Which rows say that two sessions exclude each other. */
export type Formulation = 'pairs' | 'cliques';

interface Term {
  readonly column: number;
  readonly factor: number;
}

/** A row of the programme: `low <= terms <= high`. */
export interface MipRow {
  readonly terms: readonly Term[];
  readonly low: number;
  readonly high: number;
}

/** A linear expression: terms and a constant. */
interface Sum {
  readonly terms: Term[];
  constant: number;
}

interface Session {
  readonly labels: readonly Label[];
  readonly start: number;
  readonly end: number;
  readonly day: number;
}

interface Variable extends Session {
  readonly column: number;
  readonly need: Need;
}

/** One figure of the objective as a linear expression to minimise. */
export interface MipFigure {
  readonly level: Level;
  readonly importance: number | undefined;
  readonly sum: Sum;
  /** No plan has more. */
  readonly largest: number;
}

const has = (labels: readonly Label[], wanted: readonly Label[]) => wanted.every((l) => labels.includes(l));

/** The programme while it is being written. */
export class MipModel {
  readonly lower: number[] = [];
  readonly upper: number[] = [];
  readonly integer: boolean[] = [];
  readonly rows: MipRow[] = [];
  readonly variables: Variable[] = [];
  readonly figures: MipFigure[] = [];
  /** Rows that demand every needed session, every minimum and every rest day. */
  readonly strictRows: { readonly terms: readonly Term[]; readonly low: number; readonly high: number }[] =
    [];

  constructor(
    readonly problem: PlanningProblem,
    formulation: Formulation,
  ) {
    // HiGHS gives no answer for a programme without any column.
    this.column(0, 0, false);
    this.#addVariables();
    this.#addExclusions(formulation);
    this.#addCounts();
    this.#addCaps();
    this.#addFigures();
  }

  column(low: number, high: number, integer: boolean): number {
    this.lower.push(low);
    this.upper.push(high);
    this.integer.push(integer);
    return this.lower.length - 1;
  }

  atMost(terms: readonly Term[], high: number): void {
    if (terms.length > 0) this.rows.push({ terms, low: -Infinity, high });
  }

  gap(earlier: readonly Label[], later: readonly Label[]): number {
    let gap = 0;
    for (const rule of this.problem.rules) {
      if (rule.type === 'gap' && has(earlier, rule.earlier) && has(later, rule.later)) {
        gap = Math.max(gap, rule.minutes);
      }
    }
    return gap;
  }

  /** Whether the two cannot both stand. */
  clash(a: Session, b: Session): boolean {
    const [first, second] = a.start <= b.start ? [a, b] : [b, a];
    if (second.start < first.end + this.gap(first.labels, second.labels)) return true;
    return this.problem.rules.some(
      (rule) =>
        rule.type === 'day-gap' &&
        has(first.labels, rule.earlier) &&
        has(second.labels, rule.later) &&
        second.day < first.day + rule.days,
    );
  }

  #addVariables(): void {
    for (const need of this.problem.needs) {
      for (const candidate of need.candidates) {
        const session = {
          labels: need.labels,
          start: candidate.start,
          end: candidate.end,
          day: candidate.day,
        };
        const blocked =
          (candidate.blockedBy ?? []).length > 0 ||
          this.problem.standing.some((other) => this.clash(session, other)) ||
          this.problem.rules.some(
            (rule) =>
              rule.type === 'block' &&
              has(need.labels, rule.of) &&
              candidate.start < rule.to &&
              candidate.end > rule.from,
          );
        this.variables.push({ ...session, need, column: this.column(0, blocked ? 0 : 1, true) });
      }
      this.atMost(
        this.#placed(need).map((column) => ({ column, factor: 1 })),
        need.count,
      );
    }
  }

  #placed(need: Need): number[] {
    return this.variables.filter((variable) => variable.need === need).map((variable) => variable.column);
  }

  #addExclusions(formulation: Formulation): void {
    const open = this.variables.filter((variable) => this.upper[variable.column] === 1);
    if (formulation === 'pairs') {
      for (const [index, a] of open.entries()) {
        for (const b of open.slice(index + 1)) {
          if (!this.clash(a, b)) continue;
          this.atMost(
            [
              { column: a.column, factor: 1 },
              { column: b.column, factor: 1 },
            ],
            1,
          );
        }
      }
      return;
    }
    this.#addCliques(open);
  }

  #addCliques(open: readonly Variable[]): void {
    const labelSets = [...new Map(open.map((v) => [JSON.stringify(v.need.labels), v.need.labels])).values()];
    const gaps = labelSets.map((a) => labelSets.map((b) => Math.min(this.gap(a, b), this.gap(b, a))));
    const distances = [...new Set(gaps.flat())].sort((a, b) => b - a);
    const starts = [...new Set(open.map((variable) => variable.start))].sort((a, b) => a - b);
    const written = new Set<string>();
    for (const distance of distances) {
      for (const members of cliques(labelSets.length, (a, b) => (gaps[a]?.[b] ?? 0) >= distance)) {
        const keys = new Set(members.map((member) => JSON.stringify(labelSets[member])));
        const sessions = open.filter((variable) => keys.has(JSON.stringify(variable.need.labels)));
        for (const moment of starts) {
          const together = sessions.filter((v) => v.start <= moment && moment < v.end + distance);
          const key = together.map((variable) => variable.column).join();
          if (together.length < 2 || written.has(key)) continue;
          written.add(key);
          this.atMost(
            together.map((variable) => ({ column: variable.column, factor: 1 })),
            1,
          );
        }
      }
    }
    // What no clique covers: gaps that differ by order, or exceed what a set of labels keeps from itself.
    for (const x of open) {
      for (const y of open) {
        if (x === y || y.start < x.start || (y.start === x.start && y.column < x.column)) continue;
        if (!this.clash(x, y)) continue;
        const distance = Math.min(this.gap(x.labels, y.labels), this.gap(y.labels, x.labels));
        const alone = Math.min(this.gap(x.labels, x.labels), this.gap(y.labels, y.labels));
        if (alone >= distance && y.start < x.end + distance) continue;
        this.atMost(
          [
            { column: x.column, factor: 1 },
            { column: y.column, factor: 1 },
          ],
          1,
        );
      }
    }
  }

  #standingIn(week: number, wanted: readonly Label[]): StandingSession[] {
    return this.problem.standing.filter((s) => Math.floor(s.day / 7) === week && has(s.labels, wanted));
  }

  #inWeek(week: number, wanted: readonly Label[]): Variable[] {
    return this.variables.filter((v) => Math.floor(v.day / 7) === week && has(v.labels, wanted));
  }

  #addCounts(): void {
    for (const rule of this.problem.rules) {
      if (rule.type !== 'count' || rule.max === undefined) continue;
      for (let week = 0; week < this.problem.weeks; week += 1) {
        const standing = this.#standingIn(week, rule.of).length;
        this.atMost(
          this.#inWeek(week, rule.of).map((v) => ({ column: v.column, factor: 1 })),
          Math.max(rule.max - standing, 0),
        );
      }
    }
  }

  #addCaps(): void {
    for (const rule of this.problem.rules) {
      if (rule.type !== 'cap') continue;
      for (let day = 0; day < 7 * this.problem.weeks; day += 1) {
        const standing = this.problem.standing
          .filter((s) => s.day === day && has(s.labels, rule.of))
          .reduce((sum, s) => sum + s.end - s.start, 0);
        this.atMost(
          this.variables
            .filter((v) => v.day === day && has(v.labels, rule.of))
            .map((v) => ({ column: v.column, factor: v.end - v.start })),
          Math.max(rule.minutes - standing, 0),
        );
      }
    }
  }

  /** For each day from -1 on, a variable (or a constant) that is 1 when the day holds a session of the class. */
  #dayHolds(wanted: readonly Label[]): Map<number, Sum> {
    const days = new Map<number, Sum>();
    for (let day = -1; day < 7 * this.problem.weeks; day += 1) {
      const standing = this.problem.standing.some((s) => s.day === day && has(s.labels, wanted));
      const sessions = this.variables.filter(
        (v) => v.day === day && has(v.labels, wanted) && this.upper[v.column] === 1,
      );
      if (standing || sessions.length === 0) {
        days.set(day, { terms: [], constant: standing ? 1 : 0 });
        continue;
      }
      const column = this.column(0, 1, false);
      for (const group of this.#exclusiveGroups(sessions)) {
        this.atMost([...group.map((v) => ({ column: v.column, factor: 1 })), { column, factor: -1 }], 0);
      }
      days.set(day, { terms: [{ column, factor: 1 }], constant: 0 });
    }
    return days;
  }

  /** Splits sessions into groups of which at most one can stand, greedily. */
  #exclusiveGroups(sessions: readonly Variable[]): Variable[][] {
    const groups: Variable[][] = [];
    for (const session of sessions) {
      const group = groups.find((members) => members.every((other) => this.clash(session, other)));
      if (group) group.push(session);
      else groups.push([session]);
    }
    return groups;
  }

  #addFigures(): void {
    for (const level of this.problem.order) {
      if (level === 'leftOutByImportance') {
        const importances = new Set(this.problem.needs.flatMap((need) => need.importance ?? []));
        for (const importance of [...importances].sort((a, b) => a - b)) {
          const needs = this.problem.needs.filter((need) => need.importance === importance);
          this.figures.push({ level, importance, sum: this.#leftOut(needs), largest: sessionsIn(needs) });
        }
        continue;
      }
      const sum = this.#figure(level);
      this.figures.push({ level, importance: undefined, sum, largest: this.#largest(sum) });
    }
    this.strictRows.push(...this.#strict());
  }

  #largest(sum: Sum): number {
    return sum.terms.reduce(
      (total, term) => total + Math.max(0, term.factor * (this.upper[term.column] ?? 0)),
      sum.constant,
    );
  }

  #leftOut(needs: readonly Need[]): Sum {
    const terms = needs.flatMap((need) => this.#placed(need).map((column) => ({ column, factor: -1 })));
    return { terms, constant: sessionsIn(needs) };
  }

  #strict() {
    const needed = this.#leftOut(this.problem.needs.filter((need) => need.importance !== undefined));
    const short = this.#figure('shortfall');
    return [needed, short].map((sum) => ({ terms: sum.terms, low: -Infinity, high: -sum.constant }));
  }

  #figure(level: Exclude<Level, 'leftOutByImportance'>): Sum {
    switch (level) {
      case 'leftOut':
        return this.#leftOut(this.problem.needs.filter((need) => need.importance !== undefined));
      case 'shortfall':
        return this.#shortfall();
      case 'row':
        return this.#rows();
      case 'air':
        return this.#air();
      case 'moved': {
        const terms: Term[] = [];
        let constant = 0;
        for (const need of this.problem.needs) {
          const stands = need.candidates.map((candidate) => candidate.standsHere === true);
          constant += Math.min(need.count, stands.filter(Boolean).length);
          this.#placed(need).forEach((column, index) => {
            if (stands[index] === true) terms.push({ column, factor: -1 });
          });
        }
        return { terms, constant };
      }
      case 'deviation':
      case 'preference':
        return {
          terms: this.problem.needs.flatMap((need) =>
            this.#placed(need).map((column, index) => ({
              column,
              factor: need.candidates[index]?.[level] ?? 0,
            })),
          ),
          constant: 0,
        };
    }
  }

  #shortfallSum: Sum | undefined;

  #shortfall(): Sum {
    if (this.#shortfallSum) return this.#shortfallSum;
    const terms: Term[] = [];
    for (const rule of this.problem.rules) {
      for (let week = 0; week < this.problem.weeks; week += 1) {
        if (rule.type === 'count' && rule.min !== undefined) {
          const missing = this.column(0, rule.min, false);
          const standing = this.#standingIn(week, rule.of).length + (rule.countedAlready?.[week] ?? 0);
          const placed = this.#inWeek(week, rule.of).map((v) => ({ column: v.column, factor: -1 }));
          this.rows.push({
            terms: [...placed, { column: missing, factor: -1 }],
            low: -Infinity,
            high: standing - rule.min,
          });
          terms.push({ column: missing, factor: 1 });
        }
        if (rule.type === 'rest') {
          const holds = this.#dayHolds(rule.of);
          const week7 = Array.from({ length: 7 }, (_, d) => holds.get(7 * week + d));
          const trained = week7.flatMap((sum) => sum?.terms ?? []);
          const standing = week7.reduce((sum, day) => sum + (day?.constant ?? 0), 0);
          const allowed = Math.max(7 - rule.days, 0);
          if (rule.required) this.atMost(trained, Math.max(allowed - standing, 0));
          const missing = this.column(0, Math.max(rule.days, 7 - allowed), false);
          this.rows.push({
            terms: [...trained, { column: missing, factor: -1 }],
            low: -Infinity,
            high: allowed - standing,
          });
          terms.push({ column: missing, factor: 1 });
        }
      }
    }
    this.#shortfallSum = { terms, constant: 0 };
    return this.#shortfallSum;
  }

  #rows(): Sum {
    const terms: Term[] = [];
    let constant = 0;
    for (const rule of this.problem.rules) {
      if (rule.type !== 'row') continue;
      const holds = this.#dayHolds(rule.of);
      for (let day = 0; day < 7 * this.problem.weeks; day += 1) {
        const [before, today] = [holds.get(day - 1), holds.get(day)];
        if (before === undefined || today === undefined) continue;
        const both = [...before.terms, ...today.terms];
        const certain = before.constant + today.constant;
        if (both.length === 0) {
          if (certain === 2) constant += 1;
          continue;
        }
        if (both.length + certain < 2) continue;
        const column = this.column(0, 1, false);
        this.atMost([...both, { column, factor: -1 }], 1 - certain);
        terms.push({ column, factor: 1 });
      }
    }
    return { terms, constant };
  }

  #air(): Sum {
    const terms: Term[] = [];
    let constant = 0;
    const sessions: (Session & { readonly column?: number })[] = [
      ...this.variables.filter((v) => this.upper[v.column] === 1),
      ...this.problem.standing,
    ];
    for (const rule of this.problem.rules) {
      if (rule.type !== 'air') continue;
      for (const later of sessions) {
        if (later.day < 0 || !has(later.labels, rule.later)) continue;
        const earlier = sessions.flatMap((session) => {
          if (!has(session.labels, rule.earlier) || session.start >= later.start) return [];
          const gap = Math.max(0, later.start - session.end);
          const missing = Math.ceil((rule.comfortable - gap) / rule.step);
          return missing > 0 ? [{ session, missing }] : [];
        });
        const certain = earlier
          .filter(({ session }) => session.column === undefined)
          .reduce((most, { missing }) => Math.max(most, missing), 0);
        // `certain` steps are missing whenever the later session stands; each further step is a variable.
        if (later.column === undefined) constant += certain;
        else if (certain > 0) terms.push({ column: later.column, factor: certain });
        const most = earlier.reduce((largest, { missing }) => Math.max(largest, missing), 0);
        for (let step = certain + 1; step <= most; step += 1) {
          const near = earlier.flatMap(({ session, missing }) =>
            missing >= step && session.column !== undefined ? [session as Variable] : [],
          );
          if (near.length === 0) continue;
          const column = this.column(0, 1, false);
          for (const group of this.#exclusiveGroups(near)) {
            const together = group.map((v) => ({ column: v.column, factor: 1 }));
            if (later.column === undefined) this.atMost([...together, { column, factor: -1 }], 0);
            else {
              this.atMost([...together, { column: later.column, factor: 1 }, { column, factor: -1 }], 1);
            }
          }
          terms.push({ column, factor: 1 });
        }
      }
    }
    return { terms, constant };
  }
}

function sessionsIn(needs: readonly Need[]): number {
  return needs.reduce((sum, need) => sum + need.count, 0);
}

/** All maximal sets of indices in which every two, and each with itself, are related. */
function cliques(size: number, related: (a: number, b: number) => boolean): number[][] {
  const members = Array.from({ length: size }, (_, index) => index).filter((index) => related(index, index));
  const found: number[][] = [];
  for (let bits = 1; bits < 2 ** members.length; bits += 1) {
    const set = members.filter((_, index) => (bits >> index) & 1);
    if (!set.every((a) => set.every((b) => related(a, b)))) continue;
    if (members.some((other) => !set.includes(other) && set.every((a) => related(a, other)))) continue;
    found.push(set);
  }
  return found;
}
