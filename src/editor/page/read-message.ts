import type { FromAnyPage, PagePlace } from '../../pages/page-parts';

/** Whether a value that came from outside is an object. */
export function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}

/** Whether a value that came from outside names characters of a note. */
export function isPlace(value: unknown): value is PagePlace {
  return (
    isRecord(value) &&
    typeof value.note === 'string' &&
    isRecord(value.range) &&
    Number.isInteger(value.range.start) &&
    Number.isInteger(value.range.end)
  );
}

/** What every page may ask for, or `undefined` when it is nothing of that. */
export function readCommonMessage(value: unknown): FromAnyPage | undefined {
  if (!isRecord(value)) return undefined;
  const { type, place } = value;
  if (type === 'ready' || type === 'guide') return { type };
  return type === 'open' && isPlace(place) ? { type, place } : undefined;
}
