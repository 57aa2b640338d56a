import type { IsoWeek } from '../../notation/time/iso-week';
import type { Finding, FindingCode, Message } from '../../training/finding';
import type { CheckContext } from '../../training/week-under-check';
import { message } from '../../training/wording';
import { type ChangeChecker, speaksAgainst } from '../findings-added';
import type { Demand } from './demand';
import type { Habits } from './habits';
import { daysLeft, type Numbering, type Place, placesFor } from './place';
import { type PlacementRules, placementRules } from './placement-rules';
import { placeAll, type ToPlace } from './search';

/** How many places one search tries; ordinary weeks need a few dozen. */
const searchLimit = 1500;

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

interface Choice extends ToPlace {
  readonly demand: Demand;
  /** Every place that the hours allow, those that a rule forbids included. */
  readonly all: readonly Place[];
}

/** The codes, the most frequent first. */
function byFrequency(codes: readonly FindingCode[]): readonly FindingCode[] {
  const counts = new Map<FindingCode, number>();
  for (const code of codes) counts.set(code, (counts.get(code) ?? 0) + 1);
  return [...counts].sort(([, one], [, other]) => other - one).map(([code]) => code);
}

function whyLeftOut(choice: Choice, placed: readonly Place[], rules: PlacementRules, days: number): Message {
  const { minutes, session } = choice.demand;
  const { kind } = session;
  if (days === 0) return message('The week is over');
  if (choice.all.length === 0)
    return message('No open hours of the week hold {0} for {1} min', kind, minutes);
  const codes = choice.all.flatMap((place) => {
    const clash = placed.map((other) => rules.between(place, other)).find((code) => code !== undefined);
    return rules.besideStanding(place) ?? clash ?? rules.inWeek(place, placed) ?? [];
  });
  const found = byFrequency(codes);
  return found.length === 0
    ? message('No place was found for {0} together with the other sessions', kind)
    : message('Every place for {0} breaks a rule: {1}', kind, found.join(', '));
}

/** The places that the week check finds fault with. */
function faultyPlaces(placed: readonly PlacedDemand[], findings: readonly Finding[]): ReadonlySet<Place> {
  const notes = new Set(findings.flatMap(({ note, related }) => [note, ...related.map((one) => one.note)]));
  return new Set(
    placed.map(({ place }) => place).filter((place) => notes.has(place.timed.facts.session.note)),
  );
}

/**
 * Gives each demand a place in `week`. All of them when that can be; otherwise one after the other in their order,
 * each kept when it finds a place with those before it. The training layer's check has the last word: a place
 * that it finds fault with is given up.
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
  const choices = demands.map((demand): Choice => {
    const all = placesFor(context, habits, demand, days, number);
    const places = all.filter((place) => rules.besideStanding(place) === undefined);
    return { demand, group: demand.group, all, places };
  });
  const search = (some: readonly Choice[]) => placeAll(some, rules, standing, searchLimit);

  let kept: readonly Choice[] = choices;
  let places = search(choices);
  if (!places) {
    kept = [];
    places = [];
    for (const choice of choices) {
      const more = choice.places.length > 0 ? search([...kept, choice]) : undefined;
      if (!more) continue;
      kept = [...kept, choice];
      places = more;
    }
  }
  let placed = kept.flatMap(({ demand }, index): PlacedDemand[] => {
    const place = places?.[index];
    return place ? [{ demand, place }] : [];
  });
  for (;;) {
    const added = placed.map(({ place }) => place.timed.facts.session);
    const findings = check({ without: [], added }).filter(speaksAgainst);
    const faulty = faultyPlaces(placed, findings);
    if (faulty.size === 0) break;
    const [first] = [...faulty];
    placed = placed.filter(({ place }) => place !== first);
  }
  const chosen = placed.map(({ place }) => place);
  const leftOut = choices
    .filter((choice) => !choice.all.some((place) => chosen.includes(place)))
    .map((choice) => ({ demand: choice.demand, why: whyLeftOut(choice, chosen, rules, days.length) }));
  return { placed, leftOut };
}
