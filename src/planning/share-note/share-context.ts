import type { DayNumber, IsoDate } from '../../notation/time/iso-date';
import { dayNumber } from '../../notation/time/iso-date';
import type { Message } from '../../training/finding';
import type { CheckContext } from '../../training/week-under-check';
import { message, weekdayName } from '../../training/wording';
import { plainText } from './markdown-text';
import type { SharePart } from './share-parts';

/** What the sections of a share note are made with. */
export interface ShareContext {
  readonly check: CheckContext;
  /** The parts that may leave. */
  readonly parts: ReadonlySet<SharePart>;
  /** A sentence in the reader's language, as plain Markdown text. */
  readonly say: (message: Message) => string;
}

/** First and last day of what is shared, both included. */
export interface SharedDays {
  readonly first: DayNumber;
  readonly last: DayNumber;
}

/** What the sections of a share note are made with; `say` makes sentences of messages. */
export function shareContext(
  check: CheckContext,
  parts: ReadonlySet<SharePart>,
  say: (message: Message) => string,
): ShareContext {
  return { check, parts, say: (one) => plainText(say(one)) };
}

/** `Monday, 2026-02-23`. */
export function dayWords(date: IsoDate): string {
  return `${weekdayName(dayNumber(date))}, ${date}`;
}

/** The remark of a tag, when remarks may leave. */
export function remarkLines(
  { parts, say }: ShareContext,
  { remark }: { readonly remark?: { readonly value: string } },
): readonly string[] {
  return parts.has('remarks') && remark ? [say(message('Remark: {0}', remark.value))] : [];
}
