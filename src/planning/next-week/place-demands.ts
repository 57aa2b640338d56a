import type { IsoWeek } from '../../notation/time/iso-week';
import type { FindingCode, Message } from '../../training/finding';
import type { CheckContext } from '../../training/week-under-check';
import { message } from '../../training/wording';
import { type ChangeChecker, speaksAgainst } from '../findings-added';
import type { Demand } from './demand';
import type { Habits } from './habits';
import { daysLeft, type Numbering, type Place, placesFor } from './place';
import { type PlacementRules, placementRules } from './placement-rules';
import { type Found, type Group, placeAll } from './search';

/** How many places one search tries; ordinary weeks need a few dozen. */
const searchLimit = 1500;

/** How often the week check may find fault with a session before it is left out. */
const mostStrikes = 3;

/** A demand that has found its place. */
export interface PlacedDemand {
  readonly demand: Demand;
  readonly place: Place;
}

/** A demand without a place, and what stands in its way. */
export interface LeftOutDemand {
  readonly demand: Demand;
  readonly why: Message;
}

export interface Placement {
  readonly placed: readonly PlacedDemand[];
  readonly leftOut: readonly LeftOutDemand[];
}

/** Demands that are the same in everything, in their order, with the places of each. */
interface Choice {
  readonly demands: readonly Demand[];
  readonly first: Demand;
  /** Every place that the hours allow, those that a rule forbids included. */
  readonly all: readonly Place[];
  /** Those that no rule forbids beside what stands already. */
  readonly places: readonly Place[];
}

/** The codes, the most frequent first. */
function byFrequency(codes: readonly FindingCode[]): readonly FindingCode[] {
  const counts = new Map<FindingCode, number>();
  for (const code of codes) counts.set(code, (counts.get(code) ?? 0) + 1);
  return [...counts].sort(([, one], [, other]) => other - one).map(([code]) => code);
}

function whyLeftOut(
  choice: Choice,
  placed: readonly Place[],
  rules: PlacementRules,
  days: number,
  faults: readonly FindingCode[],
): Message {
  const { minutes, session } = choice.first;
  const { kind } = session;
  if (days === 0) return message('The week is over');
  if (choice.all.length === 0)
    return message('No open hours of the week hold {0} for {1} min', kind, minutes);
  if (faults.length > 0) return message('Another {0} session breaks a rule: {1}', kind, faults.join(', '));
  const codes = choice.all.flatMap((place) => {
    const clash = placed.map((other) => rules.between(place, other)).find((code) => code !== undefined);
    return rules.besideStanding(place) ?? rules.inWeek(place, placed) ?? clash ?? [];
  });
  return codes.length < choice.all.length
    ? message('No place was found for {0} together with the other sessions', kind)
    : message('Every place for {0} breaks a rule: {1}', kind, byFrequency(codes).join(', '));
}

/** Like demands together, in the order of the first of each. */
function choicesOf(
  demands: readonly Demand[],
  placesOf: (demand: Demand) => readonly Place[],
  rules: PlacementRules,
): readonly Choice[] {
  const names = [...new Set(demands.map(({ group }) => group))];
  return names.flatMap((name): Choice[] => {
    const own = demands.filter(({ group }) => group === name);
    const first = own[0];
    if (!first) return [];
    const all = placesOf(first);
    return [{ demands: own, first, all, places: all.filter((place) => !rules.besideStanding(place)) }];
  });
}

function groupsOf(choices: readonly Choice[], counts: ReadonlyMap<Choice, number>): readonly Group[] {
  return choices.map((choice) => ({
    name: choice.first.group,
    count: counts.get(choice) ?? 0,
    places: choice.places,
  }));
}

function placedBy(choices: readonly Choice[], found: Found): readonly PlacedDemand[] {
  return choices.flatMap(({ first, demands }) =>
    (found.get(first.group) ?? []).map((place, index) => ({ demand: demands[index] ?? first, place })),
  );
}

/** A placed session with which the week check finds fault, and what it finds. */
interface Fault {
  readonly faulty: PlacedDemand;
  /** How many like sessions stand before it without fault. */
  readonly fine: number;
  readonly codes: readonly FindingCode[];
}

/** The first of the placed sessions that breaks a rule beside those before it. */
function firstFault(placed: readonly PlacedDemand[], check: ChangeChecker): Fault | undefined {
  const codesWith = (some: readonly PlacedDemand[]) =>
    check({ without: [], added: some.map(({ place }) => place.timed.facts.session) })
      .filter(speaksAgainst)
      .map(({ code }) => code);
  if (codesWith(placed).length === 0) return undefined;
  for (const [index, faulty] of placed.entries()) {
    const codes = codesWith(placed.slice(0, index + 1));
    if (codes.length === 0) continue;
    const fine = placed.slice(0, index).filter(({ demand }) => demand.group === faulty.demand.group).length;
    return { faulty, fine, codes: byFrequency(codes) };
  }
  return undefined;
}

/**
 * Places for all demands, or else for as many as find one when each is added to those before it in their order.
 */
function arrange(choices: readonly Choice[], search: (groups: readonly Group[]) => Found | undefined): Found {
  const everything = search(groupsOf(choices, new Map(choices.map((one) => [one, one.demands.length]))));
  if (everything) return everything;
  const counts = new Map<Choice, number>();
  let found: Found = new Map();
  for (const choice of choices) {
    for (let count = 1; count <= choice.demands.length; count += 1) {
      const more = search(groupsOf(choices, new Map([...counts, [choice, count]])));
      // What one of like sessions cannot have the next cannot have either.
      if (!more) break;
      found = more;
      counts.set(choice, count);
    }
  }
  return found;
}

/**
 * Gives each demand a place in `week`. All of them when that can be; otherwise one after the other in their order,
 * each kept when it finds a place with those before it. The training layer's check has the last word: a session
 * with which it finds fault is placed elsewhere, or left out.
 * @param number Numbers places through; the same for everything that is planned into one week.
 */
export function placeDemands(
  context: CheckContext,
  week: IsoWeek,
  demands: readonly Demand[],
  habits: Habits,
  check: ChangeChecker,
  number: Numbering,
): Placement {
  const rules = placementRules(context, week);
  const { monday, standing } = context.weeks(week);
  const days = daysLeft(context, monday);
  const wanted = choicesOf(demands, (one) => placesFor(context, habits, one, days, number), rules);
  let choices = wanted;
  let placed: readonly PlacedDemand[] = [];
  const faults = new Map<string, readonly FindingCode[]>();
  const strikes = new Map<string, number>();
  for (;;) {
    placed = placedBy(
      choices,
      arrange(choices, (groups) => placeAll(groups, rules, standing, searchLimit)),
    );
    const fault = firstFault(placed, check);
    if (!fault) break;
    // A session can count for another need than the one it was meant for. Other places are tried, and then given up.
    const { group } = fault.faulty.demand;
    const strike = (strikes.get(group) ?? 0) + 1;
    strikes.set(group, strike);
    if (strike >= mostStrikes) faults.set(group, fault.codes);
    choices = choices.map((one) => {
      if (one.first.group !== group) return one;
      if (strike >= mostStrikes) return { ...one, demands: one.demands.slice(0, fault.fine) };
      return { ...one, places: one.places.filter((place) => place !== fault.faulty.place) };
    });
  }
  const chosen = placed.map(({ place }) => place);
  const leftOut = wanted.flatMap((choice): LeftOutDemand[] => {
    const missing = choice.demands.slice(
      placed.filter(({ demand }) => choice.demands.includes(demand)).length,
    );
    if (missing.length === 0) return [];
    const why = whyLeftOut(choice, chosen, rules, days.length, faults.get(choice.first.group) ?? []);
    return missing.map((demand) => ({ demand, why }));
  });
  return { placed, leftOut };
}
