import type { JournalEvent, JournalPlan } from '../../journal/journal';
import { type IsoWeek, weeksInRow } from '../../notation/time/iso-week';
import { needMinutes, needSessions } from '../../training/block/asked-in-week';
import { kindsOf } from '../../training/kinds';
import { openNeeds } from '../../training/open-needs';
import type { CheckContext } from '../../training/week-under-check';
import { rolesOf, type WeekRole } from './block-roles';
import type { BlockSettings } from './block-settings';
import { type KindAsked, type KindVolume, kindVolumes, noVolume } from './kind-volumes';
import { totalOf, type VolumeBefore, volumeBefore } from './volume-before';

/**
 * What a kind begins with that was not trained before, beside others that were, as a share of what is asked. In a journal
 * that knows of no training before, all begin with what is asked. No source.
 */
const newKindShare = 0.5;

/** What a block is laid out for. */
export interface OutlineOptions {
  readonly first: IsoWeek;
  readonly count: number;
  readonly event?: JournalEvent;
  /** What is wanted at the top, in percent of what the needs ask. */
  readonly top: number;
  readonly settings: BlockSettings;
}

/** A week of an outline. */
export interface OutlineWeek extends WeekRole {
  /** In the order of the kinds. */
  readonly volumes: readonly KindVolume[];
}

/** The weeks of a block, before any session has a place. */
export interface BlockOutline {
  readonly kinds: readonly string[];
  readonly weeks: readonly OutlineWeek[];
  readonly before: VolumeBefore;
  readonly event?: JournalEvent;
}

/** What the needs of `week` ask by themselves, by kind; recovery is asked for as ever and has no column. */
export function askedByKind(plan: JournalPlan, week: IsoWeek): ReadonlyMap<string, KindAsked> {
  const asked = new Map<string, KindAsked>();
  for (const need of openNeeds(plan, week)) {
    if (kindsOf(need.kind, plan.kinds).includes('recovery')) continue;
    const known = asked.get(need.kind) ?? { sessions: 0, minutes: 0 };
    const sessions = needSessions(need, plan);
    asked.set(need.kind, {
      sessions: known.sessions + sessions,
      minutes: known.minutes + sessions * needMinutes(need, plan),
    });
  }
  return asked;
}

/** The volumes of a block by week and kind, from what the needs ask and what was done before. */
export function outlineBlock(context: CheckContext, options: OutlineOptions): BlockOutline {
  const { first, count, event, top, settings } = options;
  const weeks = weeksInRow(first, count);
  const asked = weeks.map((week) => askedByKind(context.plan, week));
  const kinds = [...new Set(asked.flatMap((one) => [...one.keys()]))];
  const before = volumeBefore(context, first, kinds);
  const isKnown = totalOf(before.minutes) > 0;
  const roles = rolesOf(weeks, event, settings);
  const columns = kinds.map((kind) =>
    kindVolumes(
      roles,
      asked.map((one) => one.get(kind)),
      { before: before.minutes.get(kind) ?? 0, start: isKnown ? newKindShare : 1, top: top / 100, settings },
    ),
  );
  return {
    kinds,
    before,
    ...(event ? { event } : {}),
    weeks: roles.map((role, index) => ({
      ...role,
      volumes: columns.map((column) => column[index] ?? noVolume),
    })),
  };
}
