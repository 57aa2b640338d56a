import type { Proportion } from '../training/statistics/proportion';
import { printedValue } from './printed-values';
import type { JournalsToRead, JournalToRead } from './read-journals';
import { terminalJson, terminalLine } from './terminal-text';

/** A number without more decimals than it needs. */
export function number(value: number, decimals = 2): string {
  return String(Number(value.toFixed(decimals)) + 0);
}

/** `7 of 9 (78 %, 45 to 94 %)` */
export function shareWords({ successes, n, proportion, lower, upper }: Proportion): string {
  const percent = (value: number): string => number(100 * value, 0);
  return `${successes} of ${n} (${percent(proportion)} %, ${percent(lower)} to ${percent(upper)} %)`;
}

/** `1 session`, `3 sessions`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** The lines of every journal, its folder above them when there are several. */
export function journalLines(
  read: JournalsToRead,
  linesOf: (one: JournalToRead) => readonly string[],
): string {
  const lines = read.journals.flatMap((one) => [
    ...(read.journals.length > 1 ? [`${one.journal.root === '' ? '.' : one.journal.root}/`] : []),
    ...linesOf(one),
  ]);
  return `${lines.map(terminalLine).join('\n')}\n`;
}

/** `{ today, journals: [{ journal, today, ... }] }`, one entry a journal. */
export function journalsJson(read: JournalsToRead, contentOf: (one: JournalToRead) => object): string {
  const journals = read.journals.map((one) => ({
    journal: one.journal.root,
    today: one.today,
    ...(printedValue(contentOf(one), one) as object),
  }));
  return `${terminalJson({ today: read.today, journals })}\n`;
}
