import type { Finding } from './finding';

function compareText(one: string, other: string): number {
  if (one === other) return 0;
  return one < other ? -1 : 1;
}

/** The findings by note, place and code; the sentence decides between what is otherwise alike. */
export function inOrder(findings: readonly Finding[]): readonly Finding[] {
  return [...findings].sort(
    (one, other) =>
      compareText(one.note, other.note) ||
      one.range.start - other.range.start ||
      one.range.end - other.range.end ||
      compareText(one.code, other.code) ||
      compareText(JSON.stringify(one.message), JSON.stringify(other.message)),
  );
}
