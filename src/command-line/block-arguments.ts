import { type IsoWeek, parseIsoWeek } from '../notation/time/iso-week';
import {
  blockSettingRanges,
  defaultBlockSettings,
  fewestBlockWeeks,
  mostBlockWeeks,
} from '../planning/block/block-settings';
import type { FolderOptions } from './folder-options';

/** What `block` is asked beside. */
export interface BlockOptions extends FolderOptions {
  /** Plan the block that stands again, by its table. */
  readonly again: boolean;
  /** The first week; the one after that of today when left out. */
  readonly first?: IsoWeek;
  readonly count: number;
  /** The name or the date of the event that the block leads to, as it was typed. */
  readonly event?: string;
  /** What is wanted at the top, in percent of what the needs ask. */
  readonly top: number;
  /** The most that a building week holds above those before it, in percent. */
  readonly limit: number;
  /** Every how many weeks one is lighter; 0 for none. */
  readonly lighter: number;
  /** Whether the note of the block is written. */
  readonly write: boolean;
  /** Whether the day notes of its weeks are written with it. */
  readonly days: boolean;
}

/** What `block` is given beside, as it was typed. */
export interface BlockWords {
  readonly again?: boolean | undefined;
  readonly from?: string | undefined;
  readonly weeks?: string | undefined;
  readonly event?: string | undefined;
  readonly top?: string | undefined;
  readonly limit?: string | undefined;
  readonly lighter?: string | undefined;
  readonly write?: boolean | undefined;
  readonly days?: boolean | undefined;
}

/** Eight to twelve weeks are usual. */
const usualBlockWeeks = 10;

const topRange = [50, 150] as const;

function whole(text: string | undefined, fallback: number): number {
  return text === undefined ? fallback : /^\d{1,3}$/.test(text) ? Number(text) : Number.NaN;
}

function isWithin(value: number, [least, most]: readonly [number, number]): boolean {
  return value >= least && value <= most;
}

/** The options of `block`, or in one line why they cannot be understood. */
export function readBlockOptions(asked: FolderOptions, words: BlockWords): BlockOptions | string {
  const { again = false, from, weeks, event, write = false, days = false } = words;
  if (days && !write) return 'Say --write beside --days.';
  const misplaced = (['from', 'weeks', 'event', 'top', 'lighter'] as const).find(
    (name) => again && words[name] !== undefined,
  );
  if (misplaced !== undefined) return `--${misplaced} does not go with --again: the table says it.`;
  const first = from === undefined ? undefined : parseIsoWeek(from);
  if (from !== undefined && first === undefined) return `"${from}" is not a week such as 2026-W10.`;
  const count = whole(weeks, usualBlockWeeks);
  if (!isWithin(count, [fewestBlockWeeks, mostBlockWeeks]))
    return `"${weeks}" is not a number of weeks from ${fewestBlockWeeks} to ${mostBlockWeeks}.`;
  const top = whole(words.top, 100);
  if (!isWithin(top, topRange)) return `"${words.top}" is not a percentage from ${topRange.join(' to ')}.`;
  const limit = whole(words.limit, defaultBlockSettings.mostIncrease);
  if (!isWithin(limit, blockSettingRanges.mostIncrease))
    return `"${words.limit}" is not a percentage from ${blockSettingRanges.mostIncrease.join(' to ')}.`;
  const lighter = whole(words.lighter, defaultBlockSettings.lighterEvery);
  if (lighter !== 0 && !isWithin(lighter, blockSettingRanges.lighterEvery))
    return `"${words.lighter}" is not a number of weeks from ${blockSettingRanges.lighterEvery.join(' to ')}, or 0 for none.`;
  return {
    ...asked,
    again,
    ...(first === undefined ? {} : { first }),
    count,
    ...(event === undefined ? {} : { event }),
    top,
    limit,
    lighter,
    write,
    days,
  };
}
