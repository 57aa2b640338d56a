import { TAPER_META_ANALYSIS } from '../../training/statistics/taper';
import type { WeekRole } from './block-roles';
import type { BlockSettings } from './block-settings';

/** What a week holds of a kind. */
export interface KindVolume {
  readonly sessions: number;
  /** Of one session. */
  readonly length: number;
}

/** What the needs ask of a kind in a week by themselves. */
export interface KindAsked {
  readonly sessions: number;
  /** Of all sessions together. */
  readonly minutes: number;
}

/** Nothing of a kind. */
export const noVolume: KindVolume = { sessions: 0, length: 0 };

/** Minutes of a week. */
export function minutesOf({ sessions, length }: KindVolume): number {
  return sessions * length;
}

/** How many building weeks before are compared with, as {@link WEEKS_COMPARED} of the load. */
export const weeksCompared = 3;

/** Lengths are given in steps of five minutes, where such a step is not more than the limit allows at once. */
const coarse = 5;

function roundedDown(minutes: number, step: number): number {
  return Math.floor(minutes / step + 1e-9) * step;
}

/** Below this share of the asked length there is rather a session fewer. No source. */
const shortest = 0.5;

/** As many of the asked sessions as `minutes` fill with at least half of the asked length each, one at the least. */
function filled(minutes: number, asked: KindAsked, settings: BlockSettings): KindVolume {
  const usual = asked.minutes / asked.sessions;
  const sessions = Math.max(1, Math.min(asked.sessions, Math.floor(minutes / (shortest * usual))));
  const length = minutes / sessions;
  if (minutes === asked.minutes) return { sessions, length: roundedDown(length, 1) };
  const step = coarse <= (length * settings.mostIncrease) / 100 ? coarse : 1;
  return { sessions, length: roundedDown(length, step) };
}

/**
 * The same sessions with a share of their length. In steps of five minutes, unless that would cut much more than asked,
 * or more than any taper that was studied.
 */
function shortened({ sessions, length }: KindVolume, share: number): KindVolume {
  const wanted = length * share;
  const rounded = roundedDown(wanted, coarse);
  const least = Math.min(wanted, (length * (100 - TAPER_META_ANALYSIS.mostReduction)) / 100);
  const isNear = rounded >= 0.85 * wanted && rounded >= least;
  return { sessions, length: Math.max(1, isNear ? rounded : roundedDown(wanted, 1)) };
}

/**
 * The weeks that a building week of one kind is compared with: the last three building weeks. The time before a block
 * stands for all three at its beginning; without any, the first building week does.
 */
export class WeeksCompared {
  #minutes: readonly number[];

  /** @param before minutes of a week before the block; 0 where there were none */
  constructor(before: number) {
    this.#minutes = before > 0 ? Array.from({ length: weeksCompared }, () => before) : [];
  }

  /** Minutes of a week; `undefined` while there is nothing to compare with. */
  get mean(): number | undefined {
    const sum = this.#minutes.reduce((all, value) => all + value, 0);
    return sum === 0 ? undefined : sum / this.#minutes.length;
  }

  /** Goes on to the next week. A kind that was not asked yet is not compared with nothing. */
  add(minutes: number): void {
    if (this.#minutes.length > 0) this.#minutes = [...this.#minutes.slice(1), minutes];
    else if (minutes > 0) this.#minutes = Array.from({ length: weeksCompared }, () => minutes);
  }
}

/** What the weeks of one kind go by. */
export interface KindVolumeOptions {
  /** Minutes of a week of late; 0 where the notes have none. */
  readonly before: number;
  /** What a kind without any minutes before begins with, as a share of what is asked. */
  readonly start: number;
  /** What is wanted at the top, as a share of what is asked. */
  readonly top: number;
  readonly settings: BlockSettings;
}

/**
 * The volumes of one kind, week by week. A building week holds at most the limit above the mean of the three building
 * weeks before it, in whole sessions rounded down, until it holds what is asked at the top; it never holds less than
 * the one before while that is asked. Lighter weeks and tapers have the sessions of the last building week, shorter.
 * @param asked What the needs ask in each week; `undefined` where they ask nothing.
 */
export function kindVolumes(
  roles: readonly WeekRole[],
  asked: readonly (KindAsked | undefined)[],
  { before, start, top, settings }: KindVolumeOptions,
): readonly KindVolume[] {
  const limit = 1 + settings.mostIncrease / 100;
  const compared = new WeeksCompared(before);
  let last: KindVolume | undefined;
  const building = (wanted: KindAsked): KindVolume => {
    const { mean } = compared;
    const most = wanted.minutes * top;
    const allowed =
      mean === undefined ? Math.min(most, start * wanted.minutes) : Math.min(most, mean * limit);
    const found = filled(allowed, wanted, settings);
    if (!last || last.sessions > wanted.sessions) return found;
    return minutesOf(last) > minutesOf(found) && minutesOf(last) <= allowed ? last : found;
  };
  return roles.map(({ role, share }, index) => {
    const wanted = asked[index];
    if (!wanted || wanted.sessions === 0 || wanted.minutes === 0) {
      if (role === 'building') compared.add(0);
      return noVolume;
    }
    if (role !== 'building') {
      const base = last ?? building(wanted);
      return shortened({ ...base, sessions: Math.min(base.sessions, wanted.sessions) }, share);
    }
    last = building(wanted);
    compared.add(minutesOf(last));
    return last;
  });
}
