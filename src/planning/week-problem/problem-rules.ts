import type { Need } from '../../journal/journal';
import type { PerWeek } from '../../notation/entries';
import type { LengthOfTime } from '../../notation/time/length-of-time';
import { loads } from '../../training/open-pain';
import { ruleSubject } from '../../training/rule-subject';
import type { CheckContext } from '../../training/week-under-check';
import { belongsTo, type Label, type Rule, type SessionClass } from '../solver/problem';
import type { ProblemSource, RuleAspect } from './problem-source';
import {
  classKeepingGap,
  classUnder,
  hard,
  ofKind,
  ofNeed,
  ofRegion,
  ofWeek,
  timed,
  timeless,
  training,
} from './session-labels';

/** A gap that is wanted beyond what the rules ask: learned from the notes, or given. */
export interface ComfortableGap {
  /** As in a rule: a kind, a goal, a region, `hard` or `any`. */
  readonly subject: string;
  readonly minutes: number;
}

/** A session as far as the rules are concerned. */
export interface LabelledSession {
  readonly labels: readonly Label[];
  /** How long it lasts. */
  readonly minutes: number;
  /** The week in which it lies, 0 for the first. */
  readonly week: number;
}

/** What the rules are made for. */
export interface RulesInput {
  readonly context: CheckContext;
  readonly weeks: number;
  /** The sessions to place, each as often as it is wanted. */
  readonly asked: readonly LabelledSession[];
  readonly standing: readonly LabelledSession[];
  readonly comfortable: readonly ComfortableGap[];
  /** The end of the time axis. */
  readonly end: number;
}

/** The rules of the journal as the solver reads them. */
export interface ProblemRules {
  readonly rules: readonly Rule[];
  readonly sources: ReadonlyMap<string, ProblemSource>;
  /** Whether a limit in minutes was put as one of sessions that may be too strict. */
  readonly isApproximate: boolean;
}

const minutesADay = 1440;

/** Air is counted in half days: finer, it would outweigh every habit. An assumption. */
const airStep = minutesADay / 2;

/** Collects rules with what they stand for; those that touch no session to place are left out. */
class RuleList {
  readonly rules: Rule[] = [];
  readonly sources = new Map<string, ProblemSource>();
  isApproximate = false;

  constructor(private readonly input: RulesInput) {}

  add(rule: Rule, source: ProblemSource): void {
    const classes = 'of' in rule ? [rule.of] : [rule.earlier, rule.later];
    if (!classes.some((one) => this.input.asked.some(({ labels }) => belongsTo(labels, one)))) return;
    this.rules.push(rule);
    this.sources.set(rule.id, source);
  }

  /**
   * A gap, counted as the training layer counts it: in days where it is written in days or a session has no time,
   * else in real minutes.
   */
  addGap(id: string, sessions: SessionClass, asked: LengthOfTime, source: ProblemSource): void {
    const days = Math.ceil(asked.minutes / minutesADay);
    const inDays = (earlier: SessionClass, later: SessionClass, part: string) =>
      this.add({ type: 'day-gap', id: `${id}${part}`, earlier, later, days }, source);
    if (asked.unit === 'd') {
      inDays(sessions, sessions, '');
      return;
    }
    const minutes = Math.ceil(asked.minutes);
    if (!this.hasTimeless()) {
      this.add({ type: 'gap', id, earlier: sessions, later: sessions, minutes }, source);
      return;
    }
    const withTime = [...sessions, timed];
    this.add({ type: 'gap', id, earlier: withTime, later: withTime, minutes }, source);
    inDays([...sessions, timeless], sessions, ':after-timeless');
    inDays(withTime, [...sessions, timeless], ':before-timeless');
  }

  private hasTimeless(): boolean {
    const { asked, standing } = this.input;
    return [...asked, ...standing].some(({ labels }) => labels.includes(timeless));
  }

  /** A weekly maximum. One in minutes becomes one of sessions in each week, as these sessions have a length. */
  addMaximum(id: string, of: SessionClass, most: PerWeek, source: ProblemSource): void {
    if (most.count !== undefined) {
      this.add({ type: 'count', id, of, max: most.count }, source);
      return;
    }
    const { asked, standing, weeks } = this.input;
    for (let week = 0; week < weeks; week += 1) {
      const within = ({ labels, week: own }: LabelledSession) => own === week && belongsTo(labels, of);
      const lengths = asked.filter(within).map(({ minutes }) => minutes);
      if (lengths.length === 0) continue;
      const stands = standing.filter(within);
      const held = stands.reduce((sum, { minutes }) => sum + minutes, 0);
      const longest = Math.max(1, ...lengths);
      if (lengths.some((one) => one < longest)) this.isApproximate = true;
      const room = Math.max(0, Math.floor((most.minutes - held) / longest));
      const max = stands.length + room;
      this.add({ type: 'count', id: `${id}:week ${week}`, of: [...of, ofWeek(week)], max }, source);
    }
  }
}

function addWritten(list: RuleList, { context }: RulesInput): void {
  const { plan, rules } = context;
  let restDays: { readonly days: number; readonly source: ProblemSource } | undefined;
  for (const [index, rule] of rules.entries()) {
    const subject = ruleSubject(rule.subject, plan);
    const source = (aspect: RuleAspect): ProblemSource => ({ about: 'rule', rule, aspect });
    const id = (aspect: RuleAspect) => `rule ${index}:${aspect}`;
    const keeps = classKeepingGap(subject);
    const under = classUnder(subject);
    if (rule.gap && keeps) list.addGap(id('gap'), keeps, rule.gap, source('gap'));
    if (rule.max && under) list.addMaximum(id('max'), under, rule.max, source('max'));
    if (rule.cap && under) {
      const minutes = Math.floor(rule.cap.minutes);
      list.add({ type: 'cap', id: id('cap'), of: under, minutes }, source('cap'));
    }
    if (rule.subject === 'recovery' && rule.min?.count !== undefined) {
      const of = [ofKind('recovery')];
      list.add({ type: 'count', id: id('min'), of, min: rule.min.count }, source('min'));
    }
    const days = subject.about === 'rest-day' ? (rule.min?.count ?? 0) : 0;
    if (days > (restDays?.days ?? 0)) restDays = { days: Math.min(7, days), source: source('rest-day') };
  }
  if (!restDays) return;
  const { days, source } = restDays;
  list.add({ type: 'rest', id: 'rest-day', of: [training], days, required: true }, source);
}

function addNeeds(list: RuleList, needs: readonly Need[], { context }: RulesInput): void {
  for (const need of needs) {
    const of = ofNeed(need, context.plan);
    const source = (aspect: RuleAspect): ProblemSource => ({ about: 'need', need, aspect });
    if (need.gap) list.addGap(`${of}:gap`, [of], need.gap, source('gap'));
    if (need.max) list.addMaximum(`${of}:max`, [of], need.max, source('max'));
  }
}

function addPain(list: RuleList, { context, end }: RulesInput): void {
  const regions = new Set([...context.plan.routines.values()].flatMap((routine) => routine.regions));
  for (const report of context.openPains()) {
    for (const region of regions) {
      if (!loads(region, report.region)) continue;
      const id = `pain ${report.region}:${region}`;
      const of = [ofRegion(region), hard];
      list.add({ type: 'block', id, of, from: 0, to: end }, { about: 'pain', report });
    }
  }
}

/** What is wanted beyond the rules: no hard days in a row, comfortable gaps, and no kind twice within half a day. */
function addWishes(list: RuleList, { context, asked, standing, comfortable }: RulesInput): void {
  list.add({ type: 'row', id: 'hard days in a row', of: [hard] }, { about: 'wish' });
  const air = (name: string, sessions: SessionClass, minutes: number) => {
    const ends = { earlier: sessions, later: sessions };
    list.add(
      { type: 'air', id: `air ${name}`, ...ends, comfortable: Math.ceil(minutes), step: airStep },
      { about: 'wish' },
    );
  };
  for (const { subject, minutes } of comfortable) {
    const sessions = classKeepingGap(ruleSubject(subject, context.plan));
    if (sessions) air(subject, sessions, minutes);
  }
  const kinds = new Map<Label, number>();
  for (const { labels, week } of [...asked, ...standing]) {
    for (const label of labels.filter((one) => one.startsWith('kind:'))) {
      const key = `${week} ${label}`;
      kinds.set(key, (kinds.get(key) ?? 0) + 1);
    }
  }
  const repeated = new Set(
    [...kinds].filter(([, count]) => count > 1).map(([key]) => key.slice(key.indexOf(' ') + 1)),
  );
  for (const label of [...repeated].sort()) air(`of one ${label}`, [label], airStep);
}

/**
 * The rules of the journal and of its needs, the pain that is open, and what is wanted beyond: each as the training
 * layer judges it.
 */
export function problemRules(input: RulesInput): ProblemRules {
  const list = new RuleList(input);
  addWritten(list, input);
  addNeeds(list, input.context.plan.needs, input);
  addPain(list, input);
  addWishes(list, input);
  return { rules: list.rules, sources: list.sources, isApproximate: list.isApproximate };
}
